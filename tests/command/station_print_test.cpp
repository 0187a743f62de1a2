// Printing from the station on a real IPP printer: a medium proven by a test label, a print followed to its end, what
// is done when it stops, and a station that is killed in the middle.
#include <QElapsedTimer>
#include <QThread>

#include "real_printer.h"
#include "station.h"

using namespace lardiner;
using namespace lardiner::command;

namespace {

// A script for the printer: so many labels came out when it ran out of them; it waits to be refilled.
const QByteArray kOutAfterTwo =
    "case $IPP_JOB_NAME in test*) exit 0;; esac\n"
    "echo 'ATTR: job-impressions-completed=2' >&2\necho 'STATE: +media-empty-error' >&2\n"
    "wait_for refilled\n"
    "echo 'STATE: -media-empty-error' >&2\necho 'ATTR: job-impressions-completed=3' >&2\n";

const QList<QPair<QString, QString>> kThree{
    {"containers", "5-7"}, {"medium", "side"}, {"printer", "labels"}, {"step", "print"}};

struct Printing : Station {
  explicit Printing(const RealPrinter& printer) : Station({"--printer", "labels=" + printer.address()}) {}

  void load(const Browser& tablet, const QString& medium = "side") const {
    const Answer tested = tablet.send("/printers", {{"printer", "labels"}, {"medium", medium}, {"step", "test"}});
    INFO(tested.body.toStdString());
    REQUIRE(tested.status == 200);
    REQUIRE(tested.body.contains("Did the test label come out"));
    REQUIRE(tablet.send("/printers", {{"printer", "labels"}, {"medium", medium}, {"step", "loaded"}}).status == 303);
  }
  // The address of the print's page.
  QString ask(const Browser& tablet, const QList<QPair<QString, QString>>& form = kThree) const {
    const Answer asked = tablet.send("/labels/" + kButter, form);
    INFO(asked.body.toStdString());
    REQUIRE(asked.status == 303);
    return "/print/" + asked.to.section("/print/", 1);
  }
  // Waits until its page says it.
  QString wait_for(const Browser& tablet, const QString& print, const QString& said) const {
    QString body;
    for (int tenth = 0; tenth < 300; ++tenth) {
      body = tablet.get(print).body;
      if (body.contains(said)) return body;
      QThread::msleep(100);
    }
    FAIL("not said: " << said.toStdString() << " but\n" << body.toStdString());
    return body;
  }
  QString history() const { return evening({"history", kButter}).out; }
  static int labels_jobs(const RealPrinter& printer) {
    int jobs = 0;
    for (const QString& one : printer.documents()) jobs += one.contains("test") ? 0 : 1;
    return jobs;
  }
  void kill() {
    program.kill();
    program.waitForFinished();
  }
};

}  // namespace

TEST_CASE("labels are printed once a test label proved what is in the printer, and the job is done at its end",
          "[command][ledger][station][print]") {
  const RealPrinter printer("echo 'ATTR: job-impressions-completed=3' >&2");
  const Printing station(printer);
  const Browser tablet = station.signed_in("MK");
  const QString print = station.ask(tablet);
  station.wait_for(tablet, print, "THESE LABELS ARE NOT IN THE PRINTER");
  CHECK(printer.documents().isEmpty());
  CHECK(tablet.send("/printers", {{"printer", "labels"}, {"medium", "side"}, {"step", "loaded"}}).status == 422);
  station.load(tablet);
  station.wait_for(tablet, print, "PRINTED");
  CHECK(station.labels_jobs(printer) == 1);
  CHECK(printer.terms().contains("IPP_JOB_NAME=A-"));
  CHECK(printer.terms().contains("IPP_COPIES=1"));
  const QString history = station.history();
  CHECK(history.contains("print-asked"));
  CHECK(history.contains("print-sent"));
  CHECK(history.contains("printed, lot A26329CLB03L, containers 5-7"));
  CHECK(history.contains("3 came out"));
  CHECK(station.evening({"verify"}).status == 0);
}

TEST_CASE("what cannot be printed is told where it was asked for, and nothing is recorded",
          "[command][ledger][station][print]") {
  const RealPrinter printer;
  const Printing station(printer);
  const Browser tablet = station.signed_in("MK");
  const QString before = station.heads();
  const auto refused = [&](const QList<QPair<QString, QString>>& form, const QString& why) {
    const Answer answer = tablet.send("/labels/" + kButter, form);
    CHECK(answer.status == 422);
    INFO(answer.body.toStdString());
    CHECK(answer.body.contains(why));
  };
  refused({{"printer", "other"}, {"step", "print"}}, "the station has no printer");
  refused({{"printer", "labels"}, {"copies", "0"}, {"step", "print"}}, "0 copies");
  refused({{"printer", "labels"}, {"medium", "none"}, {"step", "print"}}, "none");
  refused({{"printer", "labels"}, {"containers", "1;2"}, {"step", "print"}}, "are no numbers of containers");
  refused({{"printer", "labels"}, {"containers", "99"}, {"step", "print"}}, "has no container 99");
  const Answer sheet = tablet.send("/printers", {{"printer", "labels"}, {"medium", "sheet"}, {"step", "test"}});
  CHECK(sheet.status == 422);
  CHECK(sheet.body.contains("has no medium of"));
  CHECK(station.heads() == before);
  CHECK(printer.documents().isEmpty());
  CHECK(tablet.get("/print/A-1").status == 404);
  CHECK(tablet.get("/print/A-99999").status == 404);
  CHECK(tablet.send("/print/A-1", {{"go", "leave"}}).status == 422);
}

TEST_CASE("a printer that runs out of labels says so; it goes on when it is refilled, and what is in it is asked again",
          "[command][ledger][station][print]") {
  const RealPrinter printer(kOutAfterTwo);
  const Printing station(printer);
  const Browser tablet = station.signed_in("MK");
  station.load(tablet);
  const QString print = station.ask(tablet);
  station.wait_for(tablet, print, "STOPPED");
  const QString stopped = station.wait_for(tablet, print, "2 / 3");  // the printer may count a little later
  CHECK(stopped.contains("out of labels"));
  CHECK(stopped.contains("2 / 3"));
  printer.tell("refilled");
  station.wait_for(tablet, print, "PRINTED");
  CHECK(tablet.get("/printers").body.contains("Nobody knows which labels are in it"));
  const QString next =
      station.ask(tablet, {{"containers", "8"}, {"medium", "side"}, {"printer", "labels"}, {"step", "print"}});
  station.wait_for(tablet, next, "THESE LABELS ARE NOT IN THE PRINTER");
}

TEST_CASE("after the last good label the rest are voided and printed anew", "[command][ledger][station][print]") {
  const RealPrinter printer(kOutAfterTwo);
  const Printing station(printer);
  const Browser tablet = station.signed_in("MK");
  station.load(tablet);
  const QString print = station.ask(tablet);
  station.wait_for(tablet, print, "STOPPED");
  station.wait_for(tablet, print, "2 / 3");
  const QString asked = tablet.get(print + "?end=yes").body;
  CHECK(asked.contains("Last good label"));
  CHECK(asked.contains("<option value=\"2\" selected>6</option>"));
  CHECK(tablet.send(print, {{"good", "4"}, {"go", "again"}}).status == 422);
  const Answer ended = tablet.send(print, {{"good", "2"}, {"go", "again"}});
  REQUIRE(ended.status == 303);
  CHECK(tablet.get(print).body.contains("NOT ALL WERE PRINTED"));
  CHECK(tablet.send(print, {{"good", "2"}, {"go", "again"}}).status == 422);  // it is over
  const QString history = station.history();
  CHECK(history.contains("voided, lot A26329CLB03L, container 7"));
  CHECK(history.contains("print-asked, lot A26329CLB03L, container 7"));
  const QString next = "/print/" + ended.to.section("/print/", 1);
  printer.tell("refilled");
  station.wait_for(tablet, next, "THESE LABELS ARE NOT IN THE PRINTER");
  station.load(tablet);
  station.wait_for(tablet, next, "PRINTED");
  CHECK_FALSE(station.history().contains("reprinted"));
}

TEST_CASE("a printer that is switched off is told; labels that it may print yet are a reprint elsewhere",
          "[command][ledger][station][print]") {
  RealPrinter printer(kOutAfterTwo);
  const Printing station(printer);
  const Browser tablet = station.signed_in("MK");
  station.load(tablet);
  const QString print = station.ask(tablet);
  station.wait_for(tablet, print, "STOPPED");
  printer.end();
  station.wait_for(tablet, print, "THE PRINTER DOES NOT ANSWER");
  const Answer ended = tablet.send(print, {{"good", "2"}, {"go", "again"}});
  REQUIRE(ended.status == 303);
  CHECK(tablet.get(print).body.contains("the printer may print the others yet"));
  CHECK_FALSE(station.history().contains("voided"));
  CHECK(tablet.send("/labels/" + kButter, {{"containers", "7"}, {"medium", "side"}, {"step", "pdf"}})
            .body.startsWith("%PDF-"));
  CHECK(station.history().contains("reprinted, lot A26329CLB03L, container 7"));
}

TEST_CASE("why a print waits is told to who is signed in, and to nobody else", "[command][ledger][station][print]") {
  const RealPrinter printer;
  const Printing station(printer);
  const Browser tablet = station.signed_in("MK");
  const QString print = station.ask(tablet);
  REQUIRE(tablet.send("/happened/" + kButter, {{"event", "hold"}, {"at", "2026-11-25 21:50"}, {"reason", "JO was ill"}})
              .status == 200);
  station.load(tablet);
  station.wait_for(tablet, print, "JO was ill");
  const Answer stranger = station.browser("phone").get(print);
  CHECK(stranger.status == 200);
  CHECK_FALSE(stranger.body.contains("JO"));
  CHECK(printer.documents().size() == 1);  // the test label
}

TEST_CASE("a printer that is silent holds up one who asked it, and nobody else", "[command][ledger][station][print]") {
  QProcess silent;  // takes connections, and says nothing
  silent.start("python3", {"-c",
                           "import socket, time\ns = socket.socket()\ns.bind(('127.0.0.1', 0))\ns.listen(20)\n"
                           "print(s.getsockname()[1], flush=True)\ntime.sleep(300)\n"});
  REQUIRE(silent.waitForReadyRead(30'000));
  const QString port = QString::fromUtf8(silent.readLine()).trimmed();
  const Station station({"--printer", "silent=ipp://127.0.0.1:" + port + "/ipp/print"});
  const Browser one = station.signed_in("MK"), other = station.signed_in("JO");
  const QList<QPair<QString, QString>> test{{"printer", "silent"}, {"medium", "side"}, {"step", "test"}};
  Asked asking = one.begin_send("/printers", test);
  const Answer second = other.send("/printers", test);
  CHECK(other.get("/").status == 200);
  const Answer first = asking.wait();
  silent.kill();
  silent.waitForFinished();
  const auto held_up = [](const Answer& answer) { return answer.body.contains("does not answer"); };
  const auto refused = [](const Answer& answer) {
    return answer.body.contains("the station waits for an answer of a printer already");
  };
  INFO(first.body.toStdString() << second.body.toStdString());
  CHECK(((held_up(first) && refused(second)) || (held_up(second) && refused(first))));
  CHECK(first.status == 422);
  CHECK(second.status == 422);
}

TEST_CASE("killed in the middle of a print, the next station follows the same job and prints nothing twice",
          "[command][ledger][station][print]") {
  const RealPrinter printer(kOutAfterTwo);
  Printing station(printer);
  const QStringList named{"--printer", "labels=" + printer.address()};
  QString print;
  {
    const Browser tablet = station.signed_in("MK");
    station.load(tablet);
    print = station.ask(tablet);
    station.wait_for(tablet, print, "STOPPED");
  }
  station.kill();
  station.serve(named);
  const Browser after = station.signed_in("JO");
  station.wait_for(after, print, "STOPPED");
  printer.tell("refilled");
  station.wait_for(after, print, "PRINTED");
  CHECK(station.labels_jobs(printer) == 1);
  CHECK(station.history().count("print-sent") == 1);
  CHECK(station.evening({"verify"}).status == 0);
}

TEST_CASE("sent and unknown to the printer: the next station asks which labels came out, and never sends it again",
          "[command][ledger][station][print]") {
  QString print;
  auto first = std::make_unique<RealPrinter>(kOutAfterTwo);
  Printing station(*first);
  {
    const Browser tablet = station.signed_in("MK");
    station.load(tablet);
    print = station.ask(tablet);
    station.wait_for(tablet, print, "STOPPED");
  }
  station.kill();
  first.reset();
  const RealPrinter second;  // it remembers nothing
  station.serve({"--printer", "labels=" + second.address()});
  const Browser after = station.signed_in("JO");
  const QString lost = station.wait_for(after, print, "COUNT THE LABELS");
  CHECK(lost.contains("Last good label"));
  CHECK(second.documents().isEmpty());
  REQUIRE(after.send(print, {{"good", "1"}, {"go", "leave"}}).status == 303);
  CHECK(after.get(print).body.contains("NOT ALL WERE PRINTED"));
  CHECK(station.history().contains("voided, lot A26329CLB03L, containers 6-7"));
  CHECK(second.documents().isEmpty());
}

TEST_CASE("killed before a print was sent, the next station sends it, once", "[command][ledger][station][print]") {
  const RealPrinter printer("echo 'ATTR: job-impressions-completed=3' >&2");
  Printing station(printer);
  QString print;
  {
    const Browser tablet = station.signed_in("MK");
    print = station.ask(tablet);
    station.wait_for(tablet, print, "THESE LABELS ARE NOT IN THE PRINTER");
  }
  station.kill();
  station.serve({"--printer", "labels=" + printer.address()});
  const Browser after = station.signed_in("JO");
  station.load(after);
  station.wait_for(after, print, "PRINTED");
  CHECK(station.labels_jobs(printer) == 1);
}

TEST_CASE("a batch is recorded and its labels are printed in one press; while it cools they say HOLD",
          "[command][ledger][station][print]") {
  const RealPrinter printer("echo 'ATTR: job-impressions-completed=2' >&2");
  const Printing station(printer);
  const Browser tablet = station.signed_in("MK");
  station.load(tablet, "lid");
  const Answer made = tablet.send("/make/tomatillo-salsa", {{"quantity", "2 kg"},
                                                            {"containers", "2 tub 1 kg"},
                                                            {"made_at", "2026-11-25 21:00"},
                                                            {"number", "40"},
                                                            {"core", "170 °F"},
                                                            {"cooked_at", "2026-11-25 21:30"},
                                                            {"printer", "labels"},
                                                            {"step", "print"}});
  INFO(made.body.toStdString());
  REQUIRE(made.status == 303);
  const QString print = "/print/" + made.to.section("/print/", 1);
  station.wait_for(tablet, print, "PRINTED");
  CHECK(station.evening({"history", "A26329TSL40"}).status != 0);
  CHECK(tablet.get(print).body.contains("2 / 2"));
}

TEST_CASE("printers that have no name of their own are refused when the station starts", "[command][station][print]") {
  const RecordedDay day;
  for (const QStringList& printers :
       {QStringList{"--printer", "a=ipp://localhost:9/ipp/print", "--printer", "a=ipp://localhost:8/ipp/print"},
        QStringList{"--printer", "=ipp://localhost:9/ipp/print"}}) {
    const Ran ran = day.evening(QStringList{"station", "--port", "0"} + printers);
    CHECK(ran.status == 2);
    CHECK(ran.err.contains("has no name of its own"));
  }
}

TEST_CASE("a program asks for labels and ends a print as the description says",
          "[command][ledger][station][print][api]") {
  const RealPrinter printer(kOutAfterTwo);
  const Printing station(printer);
  const Browser stranger = station.browser("stranger"), program = station.signed_in("MK");
  const auto post = [&](const Browser& from, const QString& path, const QString& body) {
    return from.get(
        path, {"-H", "Content-Type: application/json", "-H", "X-CSRF-Token: " + program.csrf(), "--data-binary", body});
  };
  const auto told = [&](const Answer& answer, const QString& path, int status, const QString& method = "get") {
    CHECK(answer.status == status);
    CHECK(unlike(station, path, status, answer.body, method) == "");
    return answer.body;
  };
  for (const char* path : {"/api/printers", "/api/prints"}) told(stranger.get(path), path, 401);
  CHECK(told(program.get("/api/printers"), "/api/printers", 200).contains(R"("medium":"")"));
  station.load(program);
  CHECK(told(program.get("/api/printers"), "/api/printers", 200).contains(R"("medium":"side")"));
  const QString wish = R"({"lot": "A26329CLB03L", "containers": "5-7", "medium": "side", "printer": "labels"})";
  told(post(stranger, "/api/prints", wish), "/api/prints", 401, "post");
  told(post(program, "/api/prints", "[]"), "/api/prints", 400, "post");
  told(post(program, "/api/prints", QString(wish).replace("5-7", "x")), "/api/prints", 422, "post");
  told(post(program, "/api/prints", QString(wish).replace("\"labels\"", "\"no\"")), "/api/prints", 422, "post");
  CHECK(told(program.get("/api/prints"), "/api/prints", 200).contains("\"prints\":[]"));
  const QString id = told(post(program, "/api/prints", wish), "/api/prints", 201, "post").section('"', 3, 3);
  const QString address = "/api/prints/" + id;
  station.wait_for(program, address, R"("state":"stopped")");
  station.wait_for(program, address, R"("pages_done":2)");
  CHECK(told(program.get(address), "/api/prints/{id}", 200).contains(R"("pages_done":2)"));
  told(program.get("/api/prints"), "/api/prints", 200);
  told(program.get("/api/prints/A-1"), "/api/prints/{id}", 404);
  told(post(program, address, R"({"again": true})"), "/api/prints/{id}", 400, "post");
  told(post(program, address, R"({"good": 4})"), "/api/prints/{id}", 422, "post");
  told(post(program, address, R"({"good": 2})"), "/api/prints/{id}", 200, "post");
  CHECK(told(program.get(address), "/api/prints/{id}", 200).contains(R"("came_out":2)"));
  told(post(program, address, R"({"good": 2})"), "/api/prints/{id}", 422, "post");
}
