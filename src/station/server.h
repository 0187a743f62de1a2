// The station's server: connections, deadlines, limits and the headers of every answer; what is answered is not its
// business.
#pragma once

#include <QHash>
#include <QString>
#include <memory>

#include "problem/error.h"
#include "station/exchange.h"
#include "station/rates.h"

namespace lardiner::station {

struct Listening {
  QString address = QStringLiteral("127.0.0.1");
  int port = 8420;           ///< 0: any that is free
  QString certificate, key;  ///< PEM files; both empty: in the clear
  int threads = 128;         ///< connections that are served at the same time: phones keep theirs open between pages
  int request_seconds = 20;  ///< for a request, from its first byte to the last of its answer
  int idle_seconds = 15;     ///< that a connection stays open without a request
  Rate rate = kRate;         ///< of one address; of this machine's own:
  Rate loopback_rate = kLoopbackRate;
};

/// What a request may take.
constexpr qint64 kMostForm = 8 * 1024;            ///< bytes of a form without a picture; the library takes no more
constexpr qint64 kMostBody = 64 * 1024;           ///< of JSON
constexpr qint64 kMostUpload = 12 * 1024 * 1024;  ///< of a picture or PDF that is sent
constexpr int kMostConnections = 96;              ///< of one address at the same time

/// Answers every request with `answer`, in threads of its own, until it is stopped. A request that is malformed, too
/// large, too slow, one too many of its address or of a method that no page has is answered without asking. What
/// `answer` throws is a fault of the program: who asked gets 500 and is told nothing, `tell_fault` is told what it was.
class Server {
 public:
  using TellFault = std::function<void(const QString& address, const QString& what)>;

  Server(const Listening& listening, Answer answer, TellFault tell_fault);
  ~Server();
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  /// Takes the port. Errors (Machine): it is in use, not allowed; a certificate that cannot be used.
  problem::Expected<int> bind();

  /// Serves until `stop`. REQUIRES: bound.
  void run();
  /// From any thread, also a signal's handler thread; `run` then returns once what is being answered is.
  void stop();

 private:
  class Listener;
  std::unique_ptr<Listener> listener_;
};

}  // namespace lardiner::station
