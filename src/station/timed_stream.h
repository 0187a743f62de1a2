// A connection whose every request has a deadline, in the clear or over TLS.
#pragma once

#include <httplib.h>
#include <openssl/ssl.h>

#include <array>
#include <chrono>
#include <string>

namespace lardiner::station {

/// Reads and writes until the deadline and not beyond: a library that waits for each read alone would give a slow
/// sender all the time it wants. The socket is the caller's to close.
class TimedStream : public httplib::Stream {
 public:
  using Clock = std::chrono::steady_clock;

  /// `tls`: null in the clear.
  TimedStream(socket_t socket, SSL* tls);

  /// The TLS handshake, until `deadline`.
  bool shake_hands(Clock::time_point deadline);
  /// Whether something comes within so long.
  bool wait(Clock::duration most);
  void set_deadline(Clock::time_point deadline) { deadline_ = deadline; }
  bool out_of_time() const { return Clock::now() >= deadline_; }
  /// Of the answer that was begun since `begin_answer`, as its first line has it; 0: none was.
  int status() const { return status_; }
  void begin_answer() { status_ = 0; }

  /// Sends what was written and not sent: of a small answer all at once. Nobody need call it before a read.
  bool flush();

  bool is_readable() const override;
  bool is_writable() const override;
  ssize_t read(char* ptr, size_t size) override;
  ssize_t write(const char* ptr, size_t size) override;
  void get_remote_ip_and_port(std::string& ip, int& port) const override;
  void get_local_ip_and_port(std::string& ip, int& port) const override;
  socket_t socket() const override { return socket_; }

 private:
  bool ready(short events, Clock::time_point until) const;
  bool again(ssize_t done);  ///< after an attempt that did nothing: waits for what it lacked
  ssize_t fill();
  void answer_begun(int status);
  ssize_t write_some(const char* ptr, size_t size);
  bool write_all(const char* ptr, size_t size);

  socket_t socket_;
  SSL* tls_;
  Clock::time_point deadline_ = Clock::time_point::max();
  std::array<char, 16384> buffer_;
  size_t from_ = 0, to_ = 0;
  std::string unsent_;
  int status_ = 0;
};

/// "192.0.2.7" of the other end.
std::string other_end(socket_t socket);

}  // namespace lardiner::station
