// The server against who would hold it up: slow, large, malformed and too many requests, in the clear and over TLS.
#include "station/server.h"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <QElapsedTimer>
#include <QProcess>
#include <QTemporaryDir>
#include <atomic>
#include <stdexcept>
#include <thread>

#include "show.h"

using namespace lardiner;
using namespace lardiner::station;

namespace {

constexpr qsizetype kLarge = 3'000'000;

// A station that answers with what it was asked, on a port of its own.
class Running {
 public:
  explicit Running(Listening listening = {}) {
    listening.port = 0;
    server_ = std::make_unique<Server>(
        listening, [this](const Request& request) { return answer(request); },
        [this](const QString& page, const QString& what) {
          at = page;
          fault = what;
        });
    const auto bound = server_->bind();
    REQUIRE(bound);
    port = *bound;
    thread_ = std::thread([this] { server_->run(); });
  }
  ~Running() {
    server_->stop();
    thread_.join();
  }

  int port = 0;
  std::atomic<int> asked = 0;
  QString at, fault;

 private:
  Reply answer(const Request& request) {
    ++asked;
    if (request.path == QLatin1String("/throw")) throw std::logic_error("a secret\nforged");
    Reply reply;
    if (request.path == QLatin1String("/away")) return redirection(request.query.value("to"));
    if (request.path == QLatin1String("/late")) std::this_thread::sleep_for(std::chrono::milliseconds(1500));
    if (request.path == QLatin1String("/large")) {
      reply.body = QByteArray(kLarge, 'x');
      return reply;
    }
    reply.body = (request.method == Request::Method::Post ? "POST " : "GET ") + request.path.toUtf8() + ' ' +
                 request.form.value("a").toUtf8() + ' ' + QByteArray::number(request.uploads.size()) + ' ' +
                 request.session.toUtf8();
    return reply;
  }

  std::unique_ptr<Server> server_;
  std::thread thread_;
};

// A browser that says what it likes.
class Wire {
 public:
  explicit Wire(const Running& station) : socket_(::socket(AF_INET, SOCK_STREAM, 0)) {
    sockaddr_in to{};
    to.sin_family = AF_INET;
    to.sin_port = htons(static_cast<uint16_t>(station.port));
    to.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    REQUIRE(::connect(socket_, reinterpret_cast<sockaddr*>(&to), sizeof to) == 0);
  }
  ~Wire() { ::close(socket_); }
  Wire(const Wire&) = delete;
  Wire& operator=(const Wire&) = delete;

  void send(const QByteArray& bytes) {
    for (qsizetype sent = 0; sent < bytes.size();) {
      const ssize_t done =
          ::send(socket_, bytes.constData() + sent, static_cast<size_t>(bytes.size() - sent), MSG_NOSIGNAL);
      if (done <= 0) return;
      sent += done;
    }
  }
  // All that comes until the other end closes, or `awaited` was among it, or nothing has come for so long.
  QByteArray receive(const QByteArray& awaited = {}, int milliseconds = 10'000) {
    QByteArray all;
    char buffer[4096];
    while (awaited.isEmpty() || !all.contains(awaited)) {
      pollfd asked{socket_, POLLIN, 0};
      if (::poll(&asked, 1, milliseconds) <= 0) return all;
      const ssize_t got = ::recv(socket_, buffer, sizeof buffer, 0);
      if (got <= 0) return all;
      all.append(buffer, got);
    }
    return all;
  }
  QByteArray answer(const QByteArray& bytes) {
    send(bytes);
    return receive();
  }

 private:
  int socket_;
};

QByteArray get(const QByteArray& address, const QByteArray& headers = {}) {
  return "GET " + address + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n" + headers + "\r\n";
}

QByteArray post(const QByteArray& type, const QByteArray& body) {
  return "POST /form HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: " + type +
         "\r\nContent-Length: " + QByteArray::number(body.size()) + "\r\n\r\n" + body;
}

constexpr const char* kForm = "application/x-www-form-urlencoded";

}  // namespace

TEST_CASE("a request is answered, with the headers that keep a page to itself", "[station][server]") {
  Running station;
  const QByteArray answer = Wire(station).answer(get("/lot/A%20B?x=1", "Cookie: other=1; session=abc; c=2\r\n"));
  CHECK(answer.startsWith("HTTP/1.1 200 OK\r\n"));
  CHECK(answer.endsWith("\r\n\r\nGET /lot/A B  0 abc"));
  for (const char* header :
       {"Content-Security-Policy: default-src 'none'", "frame-ancestors 'none'", "X-Content-Type-Options: nosniff",
        "X-Frame-Options: DENY", "Referrer-Policy: same-origin", "Cache-Control: no-store"})
    CHECK(answer.contains(header));
  CHECK_FALSE(answer.contains("Strict-Transport-Security"));
  CHECK(Wire(station).answer(post(kForm, "a=one+two")).endsWith("POST /form one two 0 "));
}

TEST_CASE("several requests come over one connection", "[station][server]") {
  Running station;
  Wire wire(station);
  wire.send("GET /1 HTTP/1.1\r\nHost: localhost\r\n\r\n");
  CHECK(wire.receive("GET /1").contains("GET /1"));
  wire.send(get("/2"));
  CHECK(wire.receive().contains("GET /2"));
}

TEST_CASE("requests that come at once are each answered, a large answer whole", "[station][server]") {
  Running station;
  const QByteArray answers =
      Wire(station).answer("GET /1 HTTP/1.1\r\nHost: localhost\r\n\r\n" +
                           QByteArray("GET /large HTTP/1.1\r\nHost: localhost\r\n\r\n") + get("/3"));
  CHECK(answers.count("HTTP/1.1 200 OK\r\n") == 3);
  CHECK(answers.count('x') >= kLarge);
  CHECK(answers.contains("GET /1 "));
  CHECK(answers.contains("GET /3 "));
}

TEST_CASE("who asks whether it may send gets its answer before it sends", "[station][server]") {
  Running station;
  Wire wire(station);
  wire.send(
      "POST /form HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nExpect: 100-continue\r\n"
      "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 5\r\n\r\n");
  CHECK(wire.receive("\r\n\r\n").startsWith("HTTP/1.1 100 Continue"));
  CHECK(station.asked == 0);
  wire.send("a=one");
  CHECK(wire.receive().endsWith("POST /form one 0 "));
}

TEST_CASE("what is no request that a page has is answered without asking", "[station][server][attack]") {
  Running station;
  CHECK(Wire(station)
            .answer("PUT /x HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Length: 0\r\n\r\n")
            .startsWith("HTTP/1.1 404"));
  CHECK(Wire(station)
            .answer("DELETE /x HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
            .startsWith("HTTP/1.1 404"));
  CHECK(Wire(station).answer("nonsense\r\n\r\n").startsWith("HTTP/1.1 400"));
  CHECK(Wire(station)
            .answer("GET /" + QByteArray(20'000, 'a') + " HTTP/1.1\r\nHost: x\r\n\r\n")
            .startsWith("HTTP/1.1 414"));
  CHECK(station.asked == 0);
}

TEST_CASE("a form or a picture that is too large is refused, and one within its size is not",
          "[station][server][attack]") {
  Running station;
  CHECK(Wire(station).answer(post(kForm, "a=" + QByteArray(kMostForm - 2, 'x'))).startsWith("HTTP/1.1 200"));
  CHECK(station.asked == 1);
  CHECK(Wire(station).answer(post(kForm, "a=" + QByteArray(kMostForm, 'x'))).startsWith("HTTP/1.1 413"));
  Wire huge(station);
  huge.send("POST /form HTTP/1.1\r\nHost: localhost\r\nContent-Length: 99999999999\r\n\r\n");
  CHECK(huge.receive().startsWith("HTTP/1.1 413"));
  CHECK(station.asked == 1);
}

TEST_CASE("a picture that is sent arrives; a malformed one is refused", "[station][server][attack]") {
  Running station;
  const QByteArray part =
      "--b\r\nContent-Disposition: form-data; name=\"p\"; filename=\"x.png\"\r\nContent-Type: image/png\r\n\r\nPNG\r\n";
  const QByteArray type = "multipart/form-data; boundary=b";
  CHECK(Wire(station).answer(post(type, part + "--b--\r\n")).endsWith("POST /form  1 "));
  for (const QByteArray& bad : {part, QByteArray("--c\r\n\r\n--c--"), QByteArray("--b\r\nnothing"), QByteArray()}) {
    const QByteArray answer = Wire(station).answer(post(type, bad));
    CHECK(answer.startsWith("HTTP/1.1 400"));
  }
  CHECK(station.asked == 1);
}

TEST_CASE("what a text would add to a header stays in its place", "[station][server][attack]") {
  Running station;
  const QByteArray answer = Wire(station).answer(get("/away?to=/x%0d%0aSet-Cookie:%20session=evil"));
  CHECK(answer.startsWith("HTTP/1.1 303"));
  CHECK_FALSE(answer.contains("\r\nSet-Cookie"));
}

TEST_CASE("a fault of the program is told here, and to nobody who asks", "[station][server][attack]") {
  Running station;
  const QByteArray answer = Wire(station).answer(get("/throw?a=%0d%0aforged\x1b[2J"));
  CHECK(answer.startsWith("HTTP/1.1 500"));
  CHECK_FALSE(answer.contains("secret"));
  CHECK(station.fault == "a secret\uFFFDforged");
  CHECK(station.at == "/throw?a=%0d%0aforged\uFFFD[2J");
}

TEST_CASE("a request has a deadline, and who is slow holds up nobody", "[station][server][attack]") {
  Listening listening;
  listening.threads = 8;
  listening.request_seconds = 2;
  Running station(listening);
  std::vector<std::unique_ptr<Wire>> slow;
  for (int i = 0; i < 8; ++i) {
    slow.push_back(std::make_unique<Wire>(station));
    slow.back()->send("GET /slow HTTP/1.1\r\nHost: local");
  }
  QElapsedTimer timer;
  timer.start();
  for (int i = 0; i < 15; ++i) {  // a byte now and then, which each read alone would take for progress
    slow.front()->send("h");
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
  }
  CHECK(slow.front()->receive().startsWith("HTTP/1.1 408"));
  CHECK(Wire(station).answer(get("/quick")).contains("GET /quick"));
  CHECK(timer.elapsed() < 60'000);
  CHECK(station.asked == 1);
}

TEST_CASE("what was done is answered, however late: nobody is to do it again", "[station][server]") {
  Listening listening;
  listening.request_seconds = 1;
  Running station(listening);
  CHECK(Wire(station).answer(get("/late")).endsWith("GET /late  0 "));
  CHECK(station.asked == 1);
}

TEST_CASE("one address does not take all connections", "[station][server][attack]") {
  Listening listening;
  listening.idle_seconds = 120;
  Running station(listening);
  std::vector<std::unique_ptr<Wire>> many;
  for (int i = 0; i < kMostConnections; ++i) {
    many.push_back(std::make_unique<Wire>(station));
    many.back()->send("GET /" + QByteArray::number(i) + " HTTP/1.1\r\nHost: localhost\r\n\r\n");
    REQUIRE(many.back()->receive("200 OK").contains("200 OK"));
  }
  CHECK(Wire(station).answer(get("/more")).isEmpty());
  many.pop_back();
  QByteArray again;
  for (int tenth = 0; again.isEmpty() && tenth < 100; ++tenth) {  // until the station has noticed
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
    again = Wire(station).answer(get("/again"));
  }
  CHECK(again.contains("GET /again"));
}

TEST_CASE("who asks too much is told how long to wait, and may then ask again", "[station][server][attack]") {
  Listening listening;
  listening.loopback_rate = {0.01, kPostTurns + 3};
  Running station(listening);
  for (int i = 0; i < 3; ++i) CHECK(Wire(station).answer(get("/page")).startsWith("HTTP/1.1 200"));
  CHECK(Wire(station).answer(post(kForm, "a=1")).startsWith("HTTP/1.1 200"));
  const QByteArray refused = Wire(station).answer(get("/page"));
  CHECK(refused.startsWith("HTTP/1.1 429"));
  CHECK(refused.contains("Retry-After: "));
  CHECK(refused.endsWith("Wait a little.\n"));
  CHECK(Wire(station).answer(post(kForm, "a=1")).startsWith("HTTP/1.1 429"));
  CHECK(station.asked == 4);
}

TEST_CASE("a port that is taken is told", "[station][server]") {
  Running station;
  Listening same;
  same.port = station.port;
  Server second(
      same, [](const Request&) { return Reply(); }, [](const QString&, const QString&) {});
  const auto bound = second.bind();
  REQUIRE_FALSE(bound);
  CHECK(problem::text(bound.error())
            .startsWith(QStringLiteral("127.0.0.1, port %1, cannot be listened on").arg(station.port)));
}

TEST_CASE("over TLS a request is answered and has its deadline too; a key that does not fit is told",
          "[station][server][attack]") {
  const QTemporaryDir folder;
  const QString certificate = folder.filePath("c.pem"), key = folder.filePath("k.pem"),
                other = folder.filePath("o.pem");
  const auto openssl = [](const QStringList& arguments) { return QProcess::execute("openssl", arguments); };
  REQUIRE(openssl({"req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes", "-days", "2",
                   "-subj", "/CN=localhost", "-keyout", key, "-out", certificate}) == 0);
  REQUIRE(openssl({"ecparam", "-name", "prime256v1", "-genkey", "-noout", "-out", other}) == 0);
  Listening listening;
  listening.certificate = certificate;
  listening.key = key;
  listening.request_seconds = 2;
  Running station(listening);
  QProcess curl;
  curl.start("curl", {"-si", "--cacert", certificate, QStringLiteral("https://localhost:%1/lot").arg(station.port)});
  REQUIRE(curl.waitForFinished(30'000));
  const QByteArray answer = curl.readAllStandardOutput();
  CHECK(answer.contains("Strict-Transport-Security"));
  CHECK(answer.endsWith("GET /lot  0 "));
  QProcess slow;  // shakes hands, then sends a byte now and then
  slow.start("openssl",
             {"s_client", "-quiet", "-no_ign_eof", "-connect", QStringLiteral("localhost:%1").arg(station.port)});
  REQUIRE(slow.waitForStarted(10'000));
  slow.write("GET /slow HTTP/1.1\r\nHost: local");
  for (int i = 0; i < 200 && slow.state() == QProcess::Running; ++i) {
    slow.write("h");
    slow.waitForFinished(100);
  }
  CHECK(slow.state() == QProcess::NotRunning);
  CHECK(slow.readAllStandardOutput().startsWith("HTTP/1.1 408"));
  CHECK(station.asked == 1);
  Wire silent(station);  // never shakes hands
  silent.send("\x16");
  QElapsedTimer timer;
  timer.start();
  CHECK(silent.receive({}, 20'000).isEmpty());
  CHECK(timer.elapsed() < 15'000);
  listening.key = other;
  Server wrong(
      listening, [](const Request&) { return Reply(); }, [](const QString&, const QString&) {});
  const auto bound = wrong.bind();
  REQUIRE_FALSE(bound);
  CHECK(bound.error().what == "the certificate's key cannot be read");
}
