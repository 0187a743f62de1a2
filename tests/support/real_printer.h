// A real IPP printer on the loopback interface, on a free port: ippeveprinter, with what it needs to start.
#pragma once

#include <netinet/in.h>
#include <signal.h>
#include <sys/prctl.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <algorithm>
#include <functional>

#include "show.h"

namespace lardiner {

/// A socket of the loopback interface, closed with it.
class Loopback {
 public:
  Loopback() : socket_(::socket(AF_INET, SOCK_STREAM, 0)) { REQUIRE(socket_ >= 0); }
  Loopback(const Loopback&) = delete;
  Loopback& operator=(const Loopback&) = delete;
  ~Loopback() { ::close(socket_); }

  /// A port that nobody else has; as long as this lives, it takes connections and says nothing.
  int listen() const {
    sockaddr_in address = at(0);
    REQUIRE(::bind(socket_, general(&address), sizeof address) == 0);
    REQUIRE(::listen(socket_, 8) == 0);
    socklen_t size = sizeof address;
    REQUIRE(::getsockname(socket_, general(&address), &size) == 0);
    return ntohs(address.sin_port);
  }
  bool reaches(int port) const {
    sockaddr_in address = at(port);
    return ::connect(socket_, general(&address), sizeof address) == 0;
  }

 private:
  static sockaddr_in at(int port) {
    sockaddr_in out{};
    out.sin_family = AF_INET;
    out.sin_port = htons(static_cast<uint16_t>(port));
    out.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    return out;
  }
  static sockaddr* general(sockaddr_in* address) { return reinterpret_cast<sockaddr*>(address); }

  int socket_;
};

/// Whether anybody takes connections at the Unix socket `path`: its file is there a little sooner.
inline bool answers(const QString& path) {
  sockaddr_un address{};
  address.sun_family = AF_UNIX;
  const QByteArray name = QFile::encodeName(path);
  REQUIRE(name.size() < qsizetype(sizeof address.sun_path));
  std::copy(name.begin(), name.end(), address.sun_path);
  const int socket = ::socket(AF_UNIX, SOCK_STREAM, 0);
  REQUIRE(socket >= 0);
  const bool out = ::connect(socket, reinterpret_cast<sockaddr*>(&address), sizeof address) == 0;
  ::close(socket);
  return out;
}

/// A port at which nobody answers.
inline int free_port() { return Loopback().listen(); }

class RealPrinter {
 public:
  /// `script`: what it does with each job, as a shell; "$1" is the document, `$KEPT` the folder of what it keeps, and
  /// `wait_for NAME` waits until it is told so. A
  /// line "STATE: +media-empty-error" or "ATTR: job-impressions-completed=2" on its standard error says how the printer
  /// and the job stand.
  explicit RealPrinter(const QByteArray& script = "exit 0") : port_(free_port()) {
    REQUIRE(folder_.isValid());
    REQUIRE(QDir(folder_.path()).mkdir(QStringLiteral("kept")));
    write("job", "#!/bin/sh\nKEPT='" + kept().toUtf8() + "'\n" + kWaitFor + "env | grep ^IPP_ >\"$KEPT/terms\"\n" +
                     script + "\n");
    REQUIRE(QFile::setPermissions(path("job"), QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner));
    start_bus();
    start_printer();
  }
  ~RealPrinter() {
    stop(printer_);
    stop(bus_);
  }

  QString address() const { return QStringLiteral("ipp://localhost:%1/ipp/print").arg(port_); }
  /// Every document that it kept, by name.
  QStringList documents() const { return QDir(kept()).entryList({QStringLiteral("*.pdf")}, QDir::Files, QDir::Name); }
  QByteArray document(const QString& name) const { return read(kept() + u'/' + name); }
  /// What the last job asked for: "IPP_COPIES=3" among its lines.
  QByteArray terms() const { return read(kept() + QStringLiteral("/terms")); }
  /// Makes a file in the folder of what it keeps, for a script that waits for one.
  void tell(const char* name) const { write(("kept/" + QByteArray(name)).constData(), "x"); }
  /// It is switched off.
  void end() { stop(printer_); }

 private:
  QString path(const char* name) const { return folder_.filePath(QString::fromUtf8(name)); }
  QString kept() const { return path("kept"); }

  void write(const char* name, const QByteArray& bytes) const {
    QFile file(path(name));
    REQUIRE(file.open(QIODevice::WriteOnly));
    REQUIRE(file.write(bytes) == bytes.size());
  }
  static QByteArray read(const QString& name) {
    QFile file(name);
    INFO(name.toStdString());
    REQUIRE(file.open(QIODevice::ReadOnly));
    return file.readAll();
  }

  // A job outlives the printer that gave it the document: it ends when the folder is gone.
  static constexpr const char* kWaitFor =
      "wait_for() { while [ -d \"$KEPT\" ] && [ ! -e \"$KEPT/$1\" ]; do sleep 0.1; done; }\n";

  // A process that ends with this one, however that ends.
  void start(QProcess& process, const QString& program, const QStringList& arguments) {
    const QString found =
        QStandardPaths::findExecutable(program, {QStringLiteral("/usr/bin"), QStringLiteral("/usr/sbin")});
    if (found.isEmpty()) FAIL("samples/packages names the Debian package that brings " << program.toStdString());
    process.setProcessChannelMode(QProcess::MergedChannels);
    process.setStandardOutputFile(path("log"), QIODevice::Append);
    process.setChildProcessModifier([] { ::prctl(PR_SET_PDEATHSIG, SIGKILL); });
    process.start(found, arguments);
    REQUIRE(process.waitForStarted());
  }
  static void stop(QProcess& process) {
    process.terminate();
    if (!process.waitForFinished(5000)) process.kill();
    process.waitForFinished();
  }
  void wait_until(QProcess& process, const std::function<bool()>& ready) const {
    for (int tenth = 0; tenth < 300; ++tenth) {
      if (ready()) return;
      if (process.waitForFinished(100)) break;
    }
    FAIL("the printer did not start: " << read(path("log")).toStdString());
  }

  // ippeveprinter asks the system's message bus for DNS-SD even when it shall not use it: a bus of its own, with nobody
  // on it.
  void start_bus() {
    write("bus.conf", "<busconfig><type>session</type><listen>unix:path=" + path("bus").toUtf8() +
                          "</listen><policy context=\"default\"><allow send_destination=\"*\" "
                          "eavesdrop=\"true\"/><allow eavesdrop=\"true\"/><allow own=\"*\"/>"
                          "<allow user=\"*\"/></policy></busconfig>\n");
    start(bus_, QStringLiteral("dbus-daemon"),
          {QStringLiteral("--config-file=") + path("bus.conf"), QStringLiteral("--nofork"),
           QStringLiteral("--nopidfile")});
    wait_until(bus_, [this] { return answers(path("bus")); });
  }
  void start_printer() {
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("DBUS_SYSTEM_BUS_ADDRESS"), QStringLiteral("unix:path=") + path("bus"));
    printer_.setProcessEnvironment(environment);
    start(printer_, QStringLiteral("ippeveprinter"),
          {QStringLiteral("-r"), QStringLiteral("off"), QStringLiteral("-n"), QStringLiteral("localhost"),
           QStringLiteral("-p"), QString::number(port_), QStringLiteral("-k"), QStringLiteral("-d"), kept(),
           QStringLiteral("-a"), QStringLiteral(LARDINER_SOURCE_DIR "/tests/printer/label-printer.conf"),
           QStringLiteral("-c"), path("job"), QStringLiteral("labels")});
    wait_until(printer_, [this] { return Loopback().reaches(port_); });
  }

  QTemporaryDir folder_;
  QProcess bus_, printer_;
  int port_;
};

}  // namespace lardiner
