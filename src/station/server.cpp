// The station's server: connections, deadlines, limits and the headers of every answer.
#include "station/server.h"

#include <httplib.h>
#include <openssl/err.h>
#include <openssl/ssl.h>

#include <QUrl>
#include <atomic>
#include <map>
#include <mutex>

#include "station/timed_stream.h"

namespace lardiner::station {

using problem::Code;
using problem::Error;
using Clock = TimedStream::Clock;

namespace {

constexpr int kBacklog = 511;

// No script but ours, nothing from elsewhere, in no frame. OWASP Secure Headers Project; CSP Level 3 (W3C).
constexpr const char* kPolicy =
    "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' data:; font-src 'self'; connect-src "
    "'self';"
    " form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

httplib::Headers headers_of_all(bool secure) {
  httplib::Headers headers{{"Content-Security-Policy", kPolicy},
                           {"X-Content-Type-Options", "nosniff"},
                           {"X-Frame-Options", "DENY"},
                           {"Referrer-Policy", "same-origin"},
                           {"Cross-Origin-Opener-Policy", "same-origin"},
                           {"Cross-Origin-Resource-Policy", "same-origin"},
                           {"Permissions-Policy", "geolocation=(), microphone=()"}};
  if (secure) headers.emplace("Strict-Transport-Security", "max-age=31536000");
  return headers;
}

QString text(const std::string& value) { return QString::fromUtf8(value.data(), static_cast<qsizetype>(value.size())); }
QByteArray bytes(const std::string& value) { return {value.data(), static_cast<qsizetype>(value.size())}; }
std::string plain(const QByteArray& value) { return {value.constData(), static_cast<size_t>(value.size())}; }

// The value of a cookie out of "a=1; b=2".
QString cookie(const std::string& header, const QByteArray& name) {
  for (const QByteArray& part : bytes(header).split(';')) {
    const QByteArray trimmed = part.trimmed();
    if (trimmed.startsWith(name + '=')) return QString::fromLatin1(trimmed.mid(name.size() + 1));
  }
  return {};
}

void take_form(const httplib::Request& from, Request& to) {
  const QByteArray type = bytes(from.get_header_value("Content-Type")).toLower();
  to.type = type.split(';').front().trimmed();
  if (type.startsWith("application/x-www-form-urlencoded")) {
    to.form = Fields::read(bytes(from.body));
  } else if (type.startsWith("multipart/form-data")) {
    for (const auto& [name, part] : from.files) {
      if (part.filename.empty())
        to.form.add(text(name), text(part.content));
      else
        to.uploads.push_back({text(part.filename), bytes(part.content)});
    }
  } else {
    to.body = bytes(from.body);
  }
}

Request request_of(const httplib::Request& from, bool secure) {
  Request to;
  to.method = from.method == "POST" ? Request::Method::Post : Request::Method::Get;
  to.address = bytes(from.target);
  to.path = text(from.path);
  const qsizetype query = to.address.indexOf('?');
  if (query >= 0) to.query = Fields::read(to.address.mid(query + 1));
  to.host = text(from.get_header_value("Host"));
  to.origin = text(from.get_header_value("Origin"));
  to.csrf = text(from.get_header_value("X-CSRF-Token"));
  to.language = cookie(from.get_header_value("Cookie"), "language");
  to.session = cookie(from.get_header_value("Cookie"), "session");
  to.from = text(from.remote_addr);
  to.secure = secure;
  if (to.method == Request::Method::Post) take_form(from, to);
  return to;
}

void give(const Reply& reply, httplib::Response& to) {
  to.status = reply.status;
  to.set_header("Cache-Control", reply.kept ? "public, max-age=3600" : "no-store");
  if (!reply.to.isEmpty()) to.set_header("Location", plain(QUrl(reply.to).toEncoded()));
  if (reply.refresh_seconds > 0) to.set_header("Refresh", std::to_string(reply.refresh_seconds));
  for (const QByteArray& value : reply.cookies) to.set_header("Set-Cookie", plain(value));
  if (!reply.file_name.isEmpty())
    to.set_header("Content-Disposition", "attachment; filename=\"" + plain(reply.file_name) + "\"");
  to.set_content(reply.body.constData(), static_cast<size_t>(reply.body.size()), plain(reply.type));
}

// In words for whom no page was made.
std::string refused(int status) {
  switch (status) {
    case 413:
      return "This is more than the station takes at once.\n";
    case 429:
      return "These are too many requests at once. Wait a little.\n";
    case 404:
    case 405:
      return "There is no such page.\n";
    default:
      return "The request could not be answered.\n";
  }
}

// What others sent could else write lines of its own among those of the station.
QString on_one_line(QString said) {
  for (QChar& sign : said)
    if (!sign.isPrint()) sign = QChar::ReplacementCharacter;
  return said;
}

QString what_of(const std::exception_ptr& thrown) {
  try {
    std::rethrow_exception(thrown);
  } catch (const std::exception& exception) {
    return QString::fromUtf8(exception.what());
  } catch (...) {
    return QStringLiteral("something that is no exception was thrown");
  }
}

struct FreeContext {
  void operator()(SSL_CTX* context) const { SSL_CTX_free(context); }
};
struct FreeTls {
  void operator()(SSL* tls) const { SSL_free(tls); }
};
using Context = std::unique_ptr<SSL_CTX, FreeContext>;

Error not_usable(const QString& what, const QString& file) {
  return {Code::Machine,
          what,
          {file, 0, 0, {}, 1, 1},
          QStringLiteral("name the kitchen's certificate and its key, as PEM files that this user may read")};
}

problem::Expected<Context> context_of(const Listening& listening) {
  Context context(SSL_CTX_new(TLS_server_method()));
  SSL_CTX_set_min_proto_version(context.get(), TLS1_2_VERSION);
  SSL_CTX_set_mode(context.get(), SSL_MODE_ENABLE_PARTIAL_WRITE | SSL_MODE_ACCEPT_MOVING_WRITE_BUFFER);
  if (SSL_CTX_use_certificate_chain_file(context.get(), listening.certificate.toUtf8().constData()) != 1)
    return tl::unexpected(not_usable(QStringLiteral("the certificate cannot be read"), listening.certificate));
  if (SSL_CTX_use_PrivateKey_file(context.get(), listening.key.toUtf8().constData(), SSL_FILETYPE_PEM) != 1)
    return tl::unexpected(not_usable(QStringLiteral("the certificate's key cannot be read"), listening.key));
  if (SSL_CTX_check_private_key(context.get()) != 1)
    return tl::unexpected(not_usable(QStringLiteral("the key is not that of the certificate"), listening.key));
  return context;
}

// How many connections each address has open.
class Open {
 public:
  bool enter(const std::string& from) {
    const std::lock_guard lock(mutex_);
    int& count = count_[from];
    if (count >= kMostConnections) return false;
    ++count;
    return true;
  }
  void leave(const std::string& from) {
    const std::lock_guard lock(mutex_);
    if (--count_[from] == 0) count_.erase(from);
  }

 private:
  std::mutex mutex_;
  std::map<std::string, int> count_;
};

}  // namespace

class Server::Listener : public httplib::Server {
 public:
  Listener(const Listening& listening, Answer answer, TellFault tell_fault)
      : listening_(listening),
        answer_(std::move(answer)),
        tell_fault_(std::move(tell_fault)),
        rates_(listening.rate, listening.loopback_rate) {
    set_tcp_nodelay(true);
    set_keep_alive_max_count(1'000'000);
    set_payload_max_length(kMostUpload);
    new_task_queue = [this] { return new Threads(*this); };
    set_idle_interval(0, 100'000);
    set_default_headers(headers_of_all(!listening_.certificate.isEmpty()));
    // The library would read all of it before it refuses it, and let two programs share a port.
    set_pre_routing_handler([this](const httplib::Request& from, httplib::Response& to) {
      if (!has_turn(from, to)) return HandlerResponse::Handled;
      const bool large = bytes(from.get_header_value("Content-Length")).toLongLong() > kMostUpload;
      if (large) to.status = 413;
      return large ? HandlerResponse::Handled : HandlerResponse::Unhandled;
    });
    set_socket_options([](socket_t socket) {
      const int yes = 1;
      ::setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    });
    const auto handler = [this](const httplib::Request& from, httplib::Response& to) { answer_one(from, to); };
    Get(".*", handler);
    Post(".*", handler);
    set_error_handler([](const httplib::Request&, httplib::Response& to) {
      if (to.body.empty()) to.set_content(refused(to.status), "text/plain; charset=utf-8");
    });
    set_exception_handler(
        [this](const httplib::Request& from, httplib::Response& to, const std::exception_ptr& thrown) {
          tell_fault_(on_one_line(text(from.target)), on_one_line(what_of(thrown)));
          to.status = 500;
          to.set_content(refused(500), "text/plain; charset=utf-8");
        });
  }

  problem::Expected<int> take_port() {
    if (!listening_.certificate.isEmpty() || !listening_.key.isEmpty()) {
      auto context = context_of(listening_);
      if (!context) return tl::unexpected(context.error());
      context_ = std::move(*context);
    }
    const std::string address = plain(listening_.address.toUtf8());
    const int port = listening_.port == 0                     ? bind_to_any_port(address)
                     : bind_to_port(address, listening_.port) ? listening_.port
                                                              : -1;
    if (port > 0) {
      ::listen(svr_sock_, kBacklog);
      return port;
    }
    return tl::unexpected(
        Error{Code::Machine,
              QStringLiteral("%1, port %2, cannot be listened on").arg(listening_.address).arg(listening_.port),
              {},
              QStringLiteral("see whether a station runs there already, or name another --port, from 1024 on")});
  }

  // Also before it runs.
  void stop_soon() {
    stopped_ = true;
    stop();
  }

 private:
  // While nobody comes the library asks what to do: to end, where a stop was asked for before it had begun.
  class Threads : public httplib::ThreadPool {
   public:
    explicit Threads(Listener& listener)
        : httplib::ThreadPool(static_cast<size_t>(listener.listening_.threads)), listener_(listener) {}
    void on_idle() override {
      if (listener_.stopped_) listener_.stop();
    }

   private:
    Listener& listener_;
  };

  bool has_turn(const httplib::Request& from, httplib::Response& to) {
    const auto wait = rates_.take(from.remote_addr, from.method == "POST" ? kPostTurns : 1, Clock::now());
    if (!wait) return true;
    to.status = 429;
    to.set_header("Retry-After", std::to_string(wait->count()));
    return false;
  }

  void answer_one(const httplib::Request& from, httplib::Response& to) {
    const Request request = request_of(from, context_ != nullptr);
    const bool large = request.uploads.empty() && from.body.size() > static_cast<size_t>(kMostBody);
    if (large) {
      to.status = 413;
      return;
    }
    give(answer_(request), to);
  }

  bool process_and_close_socket(socket_t socket) override {
    const std::string from = other_end(socket);
    // A handshake costs as much as a page.
    const bool has_turn = !context_ || !rates_.take(from, 1, Clock::now());
    if (has_turn && open_.enter(from)) {
      serve(socket);
      open_.leave(from);
    }
    ::shutdown(socket, SHUT_RDWR);
    ::close(socket);
    return true;
  }

  void serve(socket_t socket) {
    std::unique_ptr<SSL, FreeTls> tls;
    if (context_) {
      tls.reset(SSL_new(context_.get()));
      SSL_set_fd(tls.get(), socket);
    }
    TimedStream stream(socket, tls.get());
    const std::chrono::seconds most(listening_.request_seconds), idle(listening_.idle_seconds);
    if (tls && !stream.shake_hands(Clock::now() + most)) return;
    while (wait(stream, idle)) {
      stream.begin_answer();
      stream.set_deadline(Clock::now() + most);
      bool closed = false;
      const bool done = process_request(stream, false, closed, nullptr) && stream.flush();
      if (!done && stream.out_of_time() && stream.status() == 0) answer_slow(stream);
      if (!done || closed || is_cut_short(stream.status())) break;
    }
    if (tls) SSL_shutdown(tls.get());
  }

  // In slices, so that a stop is not held up by who says nothing.
  bool wait(TimedStream& stream, std::chrono::seconds most) const {
    const auto end = Clock::now() + most;
    while (is_running() && !stopped_ && Clock::now() < end)
      if (stream.wait(std::chrono::milliseconds(250))) return true;
    return false;
  }

  // Nobody knows where the next request would begin: what is left of this one was not read.
  static bool is_cut_short(int status) {
    return status == 400 || status == 408 || status == 413 || status == 414 || status == 429;
  }

  static void answer_slow(TimedStream& stream) {
    static const std::string kLate = "HTTP/1.1 408 Request Timeout\r\nConnection: close\r\nContent-Length: 0\r\n\r\n";
    stream.set_deadline(Clock::now() + std::chrono::seconds(1));
    stream.write(kLate.data(), kLate.size());
    stream.flush();
  }

  Listening listening_;
  Answer answer_;
  TellFault tell_fault_;
  Context context_;
  Open open_;
  Rates rates_;
  std::atomic<bool> stopped_ = false;
};

Server::Server(const Listening& listening, Answer answer, TellFault tell_fault)
    : listener_(std::make_unique<Listener>(listening, std::move(answer), std::move(tell_fault))) {}

Server::~Server() = default;

problem::Expected<int> Server::bind() { return listener_->take_port(); }

void Server::run() { listener_->listen_after_bind(); }

void Server::stop() { listener_->stop_soon(); }

}  // namespace lardiner::station
