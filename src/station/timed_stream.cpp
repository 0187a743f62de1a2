// A connection whose every request has a deadline, in the clear or over TLS.
#include "station/timed_stream.h"

#include <fcntl.h>
#include <netdb.h>
#include <openssl/err.h>
#include <poll.h>
#include <sys/socket.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <string_view>

namespace lardiner::station {

namespace {

constexpr size_t kSmall = 65'536;          // an answer of so many bytes goes out at once
constexpr std::chrono::seconds kGrace{5};  // at least so long for an answer, also a late one

using Name = int (*)(int, sockaddr*, socklen_t*);

void name_of(socket_t socket, Name ask, std::string& ip, int& port) {
  sockaddr_storage address{};
  socklen_t length = sizeof address;
  std::array<char, NI_MAXHOST> host{};
  std::array<char, NI_MAXSERV> service{};
  auto* const any = reinterpret_cast<sockaddr*>(&address);
  if (ask(socket, any, &length) != 0) return;
  if (getnameinfo(any, length, host.data(), host.size(), service.data(), service.size(),
                  NI_NUMERICHOST | NI_NUMERICSERV) != 0)
    return;
  ip = host.data();
  port = std::atoi(service.data());
}

}  // namespace

TimedStream::TimedStream(socket_t socket, SSL* tls) : socket_(socket), tls_(tls) {
  fcntl(socket_, F_SETFL, fcntl(socket_, F_GETFL, 0) | O_NONBLOCK);
}

bool TimedStream::ready(short events, Clock::time_point until) const {
  using std::chrono::milliseconds;
  constexpr milliseconds kMost{60'000};
  for (;;) {
    const auto now = Clock::now();
    if (now >= until) return false;
    const auto left = std::chrono::duration_cast<milliseconds>(std::min<Clock::duration>(until - now, kMost));
    pollfd asked{socket_, events, 0};
    const int found = poll(&asked, 1, static_cast<int>(left.count()) + 1);
    if (found > 0) return true;
    if (found < 0 && errno != EINTR) return false;
  }
}

bool TimedStream::again(ssize_t done) {
  if (!tls_) return (errno == EAGAIN || errno == EINTR) && ready(POLLIN, deadline_);
  switch (SSL_get_error(tls_, static_cast<int>(done))) {
    case SSL_ERROR_WANT_READ:
      return ready(POLLIN, deadline_);
    case SSL_ERROR_WANT_WRITE:
      return ready(POLLOUT, deadline_);
    default:
      return false;
  }
}

bool TimedStream::shake_hands(Clock::time_point deadline) {
  deadline_ = deadline;
  for (;;) {
    ERR_clear_error();
    const int done = SSL_accept(tls_);
    if (done == 1) return true;
    if (!again(done)) return false;
  }
}

bool TimedStream::wait(Clock::duration most) {
  if (from_ < to_ || (tls_ && SSL_pending(tls_) > 0)) return true;
  return ready(POLLIN, Clock::now() + most);
}

bool TimedStream::is_readable() const { return from_ < to_ || ready(POLLIN, deadline_); }

bool TimedStream::is_writable() const { return unsent_.size() < kSmall || ready(POLLOUT, deadline_); }

ssize_t TimedStream::fill() {
  for (;;) {
    if (out_of_time()) return -1;
    ERR_clear_error();
    const ssize_t done = tls_ ? SSL_read(tls_, buffer_.data(), static_cast<int>(buffer_.size()))
                              : recv(socket_, buffer_.data(), buffer_.size(), 0);
    if (done > 0) return done;
    if (done == 0 && !tls_) return 0;
    if (!again(done)) return -1;
  }
}

ssize_t TimedStream::read(char* ptr, size_t size) {
  if (from_ == to_) {
    if (!flush()) return -1;
    const ssize_t got = fill();
    if (got <= 0) return got;
    from_ = 0;
    to_ = static_cast<size_t>(got);
  }
  const size_t count = std::min(size, to_ - from_);
  std::memcpy(ptr, buffer_.data() + from_, count);
  from_ += count;
  return static_cast<ssize_t>(count);
}

ssize_t TimedStream::write_some(const char* ptr, size_t size) {
  for (;;) {
    if (out_of_time()) return -1;
    ERR_clear_error();
    constexpr size_t kMost = 1 << 20;
    const ssize_t done =
        tls_ ? SSL_write(tls_, ptr, static_cast<int>(std::min(size, kMost))) : send(socket_, ptr, size, MSG_NOSIGNAL);
    if (done > 0) return done;
    if (!tls_ && (errno == EAGAIN || errno == EINTR)) {
      if (!ready(POLLOUT, deadline_)) return -1;
    } else if (!tls_ || !again(done)) {
      return -1;
    }
  }
}

ssize_t TimedStream::write(const char* ptr, size_t size) {
  constexpr std::string_view kBegin = "HTTP/1.1 ";
  if (status_ < 200 && std::string_view(ptr, size).starts_with(kBegin)) answer_begun(std::atoi(ptr + kBegin.size()));
  if (out_of_time()) return -1;
  if (unsent_.size() + size <= kSmall) {
    unsent_.append(ptr, size);
    return static_cast<ssize_t>(size);
  }
  return flush() && write_all(ptr, size) ? static_cast<ssize_t>(size) : -1;
}

// What was asked for may have been done, however late: who asked has to know. Of a request that did not come in time
// the library says 400.
void TimedStream::answer_begun(int status) {
  if (out_of_time() && status == 400) return;
  status_ = status;
  deadline_ = std::max(deadline_, Clock::now() + kGrace);
}

bool TimedStream::flush() {
  const bool sent = write_all(unsent_.data(), unsent_.size());
  unsent_.clear();
  return sent;
}

bool TimedStream::write_all(const char* ptr, size_t size) {
  for (size_t sent = 0; sent < size;) {
    const ssize_t done = write_some(ptr + sent, size - sent);
    if (done <= 0) return false;
    sent += static_cast<size_t>(done);
  }
  return true;
}

void TimedStream::get_remote_ip_and_port(std::string& ip, int& port) const { name_of(socket_, getpeername, ip, port); }

void TimedStream::get_local_ip_and_port(std::string& ip, int& port) const { name_of(socket_, getsockname, ip, port); }

std::string other_end(socket_t socket) {
  std::string ip;
  int port = 0;
  name_of(socket, getpeername, ip, port);
  return ip;
}

}  // namespace lardiner::station
