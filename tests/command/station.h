// A station that serves the demo kitchen's evening, and browsers that ask it, each with cookies of its own.
#pragma once

#include <QProcess>
#include <QRegularExpression>

#include "recorded_day.h"

namespace lardiner::command {

inline const QString kButter = QStringLiteral("A26329CLB03L");
inline const QString kPin = QStringLiteral("482913");

struct Answer {
  int status = 0;
  QString body;
  QString to;  // of a redirection
};

// What curl was sent to ask.
struct Asked {
  Running curl;
  Answer wait() {
    const Ran ran = curl.wait();
    const QString last = ran.out.section('\n', -1);
    return {last.section(' ', 0, 0).toInt(), ran.out.section('\n', 0, -2), last.section(' ', 1)};
  }
};

// One browser: its cookies are its own.
class Browser {
 public:
  Browser(const Folder& folder, QString name, QString at)
      : folder_(folder), name_(std::move(name)), at_(std::move(at)) {}

  Answer get(const QString& address, const QStringList& more = {}) const {
    return ask(QStringList{at_ + address} + more);
  }
  Answer post(const QString& address, const QList<QPair<QString, QString>>& form, const QStringList& more = {}) const {
    return ask(posted(at_ + address, form) + more);
  }
  // With what a form of this browser's session carries.
  Answer send(const QString& address, const QList<QPair<QString, QString>>& form) const {
    return begin_send(address, form).wait();
  }
  // As send, but goes on before it is answered.
  Asked begin_send(const QString& address, QList<QPair<QString, QString>> form) const {
    form.append({"csrf", csrf()});
    return {begin(posted(at_ + address, form))};
  }
  Answer sign_in(const QString& initials, const QString& pin) const {
    return post("/sign-in", {{"name", initials}, {"pin", pin}});
  }
  QString csrf() const {
    static const QRegularExpression field("name=\"csrf\" value=\"([^\"]*)\"");
    return field.match(get("/").body).captured(1);
  }
  QString cookie() const {
    return QString::fromUtf8(folder_.read(name_ + ".jar")).section("session\t", 1).section('\n', 0, 0);
  }

 private:
  Answer ask(const QStringList& arguments) const { return Asked{begin(arguments)}.wait(); }
  Running begin(const QStringList& arguments) const {
    const QString jar = folder_.path(name_ + ".jar");
    return folder_.begin(
        "curl", QStringList{"-s", "-b", jar, "-c", jar, "--max-time", "60", "-w", "\n%{http_code} %{redirect_url}"} +
                    arguments);
  }
  static QStringList posted(const QString& address, const QList<QPair<QString, QString>>& form) {
    QStringList arguments{address};
    for (const auto& [name, value] : form) arguments << "--data-urlencode" << name + u'=' + value;
    return arguments;
  }

  const Folder& folder_;
  QString name_, at_;
};

struct Station : RecordedDay {
  QProcess program;
  QString at;

  /// `more`: further options of the station.
  explicit Station(const QStringList& more = {}) : RecordedDay(kept()) { serve(more); }
  ~Station() { stop(); }

  void serve(const QStringList& more, const QString& clock = "2026-11-25T21:50") {
    program.setWorkingDirectory(folder.path("."));
    program.start(QStringLiteral(LARDINER_PROGRAM),
                  QStringList{"--kitchen", "kitchen", "--at", clock, "station", "--port", "0"} + more);
    REQUIRE(program.waitForReadyRead(60'000));
    at = QString::fromUtf8(program.readLine()).section(" is served at ", 1).section("/ until", 0, 0);
    REQUIRE(at.startsWith("http://127.0.0.1:"));
  }
  void stop() {
    program.terminate();
    if (!program.waitForFinished(30'000)) program.kill();
    program.waitForFinished();
  }
  Browser browser(const QString& name) const { return {folder, name, at}; }
  Browser signed_in(const QString& initials) const {
    Browser one = browser(initials);
    REQUIRE(one.sign_in(initials, kPin).status == 303);
    return one;
  }
  /// Signed in with the strong word too, which is set for it: a session that MK had before ends.
  Browser strong() const {
    const QString word = QStringLiteral("marble stair lantern ox");
    REQUIRE(folder.lardiner({"--kitchen", "kitchen", "pin", "--strong", "MK"}, word.toUtf8()).status == 0);
    Browser one = browser("strong");
    REQUIRE(one.post("/sign-in", {{"name", "MK"}, {"pin", kPin}, {"strong", word}}).status == 303);
    return one;
  }
  QString heads() const { return evening({"--json", "verify"}).out; }

 private:
  static const RecordedDay& kept() {
    static const std::unique_ptr<const RecordedDay> evening = [] {
      auto made = std::make_unique<RecordedDay>();
      REQUIRE(made->evening({"record", kDemoKitchen + "/events/evening.csv"}).status == 0);
      for (const QString& initials : {QString("MK"), QString("JO")})
        REQUIRE(made->folder.lardiner({"--kitchen", "kitchen", "pin", initials}, kPin.toUtf8()).status == 0);
      return made;
    }();
    return *evening;
  }
};

/// Whether a body is as templates/station/openapi.json says that the path answers; what is wrong with it.
inline QString unlike(const Station& station, const QString& path, int status, const QString& body,
                      const QString& method = "get") {
  station.folder.write("body.json", body.toUtf8());
  const QString program =
      "import json,sys,jsonschema\n"
      "d=json.load(open(sys.argv[1])); b=json.load(open('body.json'))\n"
      "assert d['openapi'].startswith('3.1')\n"
      "s=d['paths'][sys.argv[2]][sys.argv[4]]['responses'][sys.argv[3]]['content']['application/json']['schema']\n"
      "jsonschema.validate(b,dict(s,components=d['components']))\n";
  return station.folder
      .run("python3", {"-c", program, QStringLiteral(LARDINER_SOURCE_DIR "/templates/station/openapi.json"), path,
                       QString::number(status), method})
      .err;
}

}  // namespace lardiner::command
