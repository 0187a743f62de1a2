// The station as a browser meets it, on the demo kitchen's day: what anybody sees, what a person who is signed in may
// change, and what nobody gets by asking otherwise.
#include "station.h"

#include <QElapsedTimer>
#include <QFile>
#include <QUrl>

using namespace lardiner::command;

namespace {

const QList<QPair<QString, QString>> kFrozen{
    {"event", "frozen"}, {"at", "2026-11-25 21:45"}, {"containers", "5"}, {"place", "freezer 1"}};

}  // namespace

TEST_CASE("anybody sees what a lot is and whether it is good, without a name of staff or of a supplier",
          "[command][ledger][station]") {
  const Station station;
  const Browser phone = station.browser("phone");
  const Answer ours = phone.get("/lot/" + kButter);
  CHECK(ours.status == 200);
  CHECK(ours.body.contains("Chilli-lime butter"));
  CHECK(ours.body.simplified().contains("USE BY TUE 01 DEC 2026"));
  CHECK(ours.body.contains("CONTAINS milk"));
  CHECK_FALSE(ours.body.contains("MK"));
  CHECK_FALSE(ours.body.contains("name=\"event\""));
  const Answer bought = phone.get("/lot/MB-5521");
  CHECK(bought.status == 200);
  CHECK_FALSE(bought.body.contains("Meadowfold"));
  CHECK(phone.get("/lot/A26329CLB03X").status == 404);
  CHECK(phone.get("/nothing").status == 404);
  CHECK(phone.get("/find?q=a26329clb03l").to.endsWith("/lot/A26329CLB03L?item=chilli-lime-butter"));
}

TEST_CASE("of a jar for sale the page has the ingredients too, as its label does", "[command][ledger][station]") {
  const Station station;
  const Browser phone = station.browser("phone");
  CHECK(phone.get("/lot/A26329SPS018?container=4").body.contains("Ingredients: "));
  CHECK_FALSE(phone.get("/lot/A26329SPS018?container=3").body.contains("Ingredients: "));
}

TEST_CASE("the address in a label's code opens its lot; an old label is told", "[command][ledger][station]") {
  const Station station;
  REQUIRE(station.evening({"labels", "--lot", kButter, "--containers", "5", "--medium", "side", "--out", "one.pdf"})
              .status == 0);
  REQUIRE(station.folder.run("pdftoppm", {"-r", "300", "-png", "-singlefile", "one.pdf", "one"}).status == 0);
  const QString code = station.folder.run("zbarimg", {"-q", "--raw", "one.png"}).out.trimmed();
  const QUrl address(code);
  const QString path = QString::fromUtf8(QUrl(code).toEncoded()).section(address.host(), 1);
  REQUIRE(path.startsWith("/01/"));
  const Browser phone = station.browser("phone");
  CHECK(phone.get(path).status == 200);
  CHECK_FALSE(phone.get(path).body.contains("UNTRUE"));
  REQUIRE(station.signed_in("MK").send("/happened/" + kButter, kFrozen).status == 200);
  CHECK(phone.get(path).body.contains("THIS LABEL HAS BECOME UNTRUE"));
}

TEST_CASE("what happens to a tub is recorded by who is signed in, and its new label printed",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const Answer frozen = tablet.send("/happened/" + kButter, kFrozen);
  CHECK(frozen.status == 200);
  CHECK(frozen.body.contains("Recorded:"));
  CHECK(frozen.body.contains("Needs a new label"));
  CHECK(station.evening({"history", kButter}).out.contains("frozen, lot A26329CLB03L, container 5, freezer 1, MK"));
  const Answer label = tablet.send("/labels/" + kButter, {{"containers", "5"}, {"medium", "side"}});
  CHECK(label.status == 200);
  CHECK(label.body.startsWith("%PDF-"));
  CHECK(station.evening({"history", kButter}).out.contains("printed"));
  const Answer wrong =
      tablet.send("/happened/" + kButter, {{"event", "frozen"}, {"at", "2026-11-25 21:46"}, {"containers", "99"}});
  CHECK(wrong.status == 422);
  CHECK(wrong.body.contains("there is no container 99"));
}

TEST_CASE("a batch is looked at, then recorded, and lands on its page", "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("JO");
  const QList<QPair<QString, QString>> form{{"made_at", "2026-11-25 21:00"},
                                            {"number", "41"},
                                            {"quantity", "2 kg"},
                                            {"containers", "4 tub 500 g"},
                                            {"lot.butter-unsalted", "MB-5521"}};
  auto with = [&](const char* step) { return form + QList<QPair<QString, QString>>{{"step", step}}; };
  const QString before = station.heads();
  const Answer look = tablet.send("/make/chilli-lime-butter", with("look"));
  INFO(look.body.toStdString());
  CHECK(station.heads() == before);
  CHECK(look.body.contains("A26329CLB419</span></h2>"));
  CHECK(look.body.contains("use by Tue 01 Dec 2026"));
  CHECK(look.body.contains("CONTAINS milk"));
  CHECK(look.body.contains("data:image/svg+xml;base64,") == false);  // not released: it has no dated label yet
  const Answer recorded = tablet.send("/make/chilli-lime-butter", with("record"));
  CHECK(recorded.to.endsWith("/lot/A26329CLB419?item=chilli-lime-butter"));
  const QString page = tablet.get("/lot/A26329CLB419").body.simplified();
  CHECK(page.contains("USE BY TUE 01 DEC 2026"));
  CHECK(page.contains("NOT RELEASED: DO NOT USE YET"));
  CHECK(tablet.send("/make/chilli-lime-butter", with("record")).body.contains("is recorded already"));
  const Answer missing = tablet.send("/make/chilli-lime-butter", {{"made_at", "2026-11-25 21:00"}, {"step", "look"}});
  CHECK(missing.status == 422);
}

TEST_CASE("a package is opened in two taps, dated by its receipt and the book", "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  CHECK(tablet.get("/open").body.contains("/open/MD-8841?item=milk-whole"));
  CHECK(tablet.get("/open/MD-8841?item=milk-whole").body.contains("Whole milk"));
  CHECK(tablet.get("/open/MD-8841?item=butter-unsalted").status == 404);
  const Answer opened =
      tablet.send("/open/MD-8841", {{"item", "milk-whole"}, {"what", "opened"}, {"made_at", "2026-11-25 21:30"}});
  REQUIRE(opened.status == 303);
  const QString lot = opened.to.section("/lot/", 1).section('?', 0, 0);
  CHECK(lot.startsWith("A26329MLK"));
  CHECK(tablet.get("/lot/" + lot).body.simplified().contains("USE BY SUN 29 NOV 2026"));
  CHECK(station.evening({"trace", lot}).out.contains("MD-8841"));
  const Answer cut =
      tablet.send("/open/MD-8841", {{"item", "milk-whole"}, {"what", "melted"}, {"made_at", "2026-11-25 21:30"}});
  CHECK(cut.status == 422);
}

TEST_CASE("nothing is changed without a session, its token, and a page of the station",
          "[command][ledger][station][attack]") {
  const Station station;
  const Browser stranger = station.browser("stranger"), mk = station.signed_in("MK"), jo = station.signed_in("JO");
  const QString before = station.heads();
  const QString address = "/happened/" + kButter;
  auto with = [&](const QString& csrf) { return kFrozen + QList<QPair<QString, QString>>{{"csrf", csrf}}; };
  CHECK(stranger.post(address, with(mk.csrf())).status == 401);
  CHECK(mk.post(address, kFrozen).status == 403);
  CHECK(mk.post(address, with("wrong")).status == 403);
  CHECK(mk.post(address, with(jo.csrf())).status == 403);
  CHECK(mk.post(address, with(mk.csrf()), {"-H", "Origin: http://elsewhere.example"}).status == 403);
  CHECK(mk.post("/sign-in", {{"name", "MK"}, {"pin", kPin}}, {"-H", "Origin: http://elsewhere.example"}).status == 403);
  CHECK(mk.get(address).status == 404);
  CHECK(mk.post(address, with(mk.csrf()), {"-H", "Host: elsewhere.example"}).status == 421);
  for (const char* word : {"release", " release", "Release\t", "recall", "correction", "recall-closed"}) {
    const Answer grave = mk.post(address, {{"event", word}, {"of", "A-1"}, {"reason", "x"}, {"csrf", mk.csrf()}});
    CHECK(grave.status == 403);
    CHECK(grave.body.contains("strong word"));
  }
  CHECK(station.heads() == before);
  CHECK(mk.send("/sign-out", {}).status == 303);
  CHECK(mk.send(address, kFrozen).status == 401);
  CHECK(station.heads() == before);
  CHECK(jo.send(address, kFrozen).status == 200);
  CHECK(station.heads() != before);
}

TEST_CASE("PINs cannot be guessed: the person waits, and nobody else does", "[command][ledger][station][attack]") {
  const Station station;
  const Browser guesser = station.browser("guesser");
  for (int guess = 0; guess < 5; ++guess) CHECK(guesser.sign_in("MK", "900" + QString::number(guess)).status == 403);
  const Answer locked = guesser.sign_in("MK", kPin);
  CHECK(locked.status == 403);
  CHECK(locked.body.contains("Too many wrong PINs. Wait until 21:51."));
  CHECK(guesser.sign_in("nobody", kPin).status == 403);
  CHECK(guesser.sign_in("JO", kPin).status == 303);
}

TEST_CASE("text that a person types is never markup, a statement, a path or a header",
          "[command][ledger][station][attack]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const QString script = "<script>alert(1)</script>";
  const Answer held =
      tablet.send("/happened/" + kButter, {{"event", "hold"}, {"at", "2026-11-25 21:46"}, {"reason", script}});
  CHECK(held.status == 200);
  const QStringList addresses{"/lot/" + kButter, "/find?q=%3Cscript%3Ealert(1)%3C/script%3E",
                              "/sign-in?name=%22%3E%3Cscript%3E&back=%22%3E%3Cscript%3E", "/make?q=%3Cscript%3E",
                              "/lot/%3Cscript%3E"};
  for (const QString& address : addresses) {
    INFO(address.toStdString());
    CHECK_FALSE(tablet.get(address).body.contains("<script>"));
  }
  const QString before = station.heads();
  for (const char* statement : {"'%20OR%201=1--", "%27;DROP%20TABLE%20lot;--", "%22%29;--", "%00", "%25"}) {
    const QString text = QString::fromLatin1(statement);
    CHECK(tablet.get("/lot/" + text).status == 404);
    CHECK(tablet.get("/find?q=" + text).status == 200);
    CHECK(tablet.get("/lot/" + kButter + "?item=" + text).status == 404);
  }
  for (const char* path : {"/../../../../etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "/style.css/../../kitchen.toml",
                           "//etc/passwd", "/A.pins", "/ledger/A.sqlite"}) {
    const Answer answer = tablet.get(QString::fromLatin1(path), {"--path-as-is"});
    CHECK(answer.status == 404);
    CHECK_FALSE(answer.body.contains("root:"));
  }
  CHECK(tablet.get("/language?language=es&back=//elsewhere.example").to == station.at + "/");
  CHECK(tablet.get("/language?language=es&back=https://elsewhere.example").to == station.at + "/");
  CHECK(station.heads() == before);
}

TEST_CASE("a picture that a phone sends opens what it shows, and one that is none is told",
          "[command][ledger][station]") {
  const Station station;
  const Browser phone = station.signed_in("MK");
  REQUIRE(station.evening({"labels", "--lot", kButter, "--containers", "5", "--medium", "side", "--out", "one.pdf"})
              .status == 0);
  REQUIRE(station.folder.run("pdftoppm", {"-r", "203", "-png", "-singlefile", "one.pdf", "one"}).status == 0);
  const QString csrf = phone.csrf();
  const auto send = [&](const QString& file) {
    return phone.get("/scan", {"-F", "csrf=" + csrf, "-F", "picture=@" + station.folder.path(file)});
  };
  CHECK(send("one.png").body.contains("/lot/A26329CLB03L?item=chilli-lime-butter"));
  station.folder.write("no.png", "no picture");
  CHECK(send("no.png").body.contains("role=\"alert\""));
}

TEST_CASE("a station that others can reach without a certificate says what that means", "[command][ledger][station]") {
  const RecordedDay day;
  for (const auto& [address, told] : {std::pair("0.0.0.0", true), std::pair("127.0.0.1", false)}) {
    QProcess program;
    program.setWorkingDirectory(day.folder.path("."));
    program.start(QStringLiteral(LARDINER_PROGRAM),
                  {"--kitchen", "kitchen", "--at", "2026-11-25T21:50", "station", "--port", "0", "--address", address});
    REQUIRE(program.waitForReadyRead(60'000));
    program.terminate();
    REQUIRE(program.waitForFinished(30'000));
    CHECK(program.readAllStandardError().contains("without a certificate PINs can be read by others") == told);
  }
}

TEST_CASE("a station that cannot begin says why", "[command][ledger][station]") {
  const RecordedDay day;
  const Ran taken = day.evening({"station", "--address", "203.0.113.9", "--port", "8420"});
  CHECK(taken.status == 4);
  CHECK(taken.err.contains("203.0.113.9, port 8420, cannot be listened on"));
  CHECK(day.evening({"station", "--certificate", "none.pem", "--key", "none.pem", "--port", "0"}).status == 4);
  CHECK(day.evening({"station", "--certificate", "none.pem"}).status == 2);
  const Ran weak = day.folder.lardiner({"--kitchen", "kitchen", "pin", "MK"}, "1234\n");
  CHECK(weak.status == 1);
  CHECK(day.folder.lardiner({"--kitchen", "kitchen", "pin", "XX"}, "482913\n").status == 1);
  REQUIRE(day.folder.lardiner({"--kitchen", "kitchen", "pin", "MK"}, "482913\n").out == "the PIN of MK is set\n");
  const QStringList remove{"--kitchen", "kitchen", "pin", "MK", "--remove"};
  CHECK(day.folder.lardiner(remove).out == "the PIN of MK is taken out\n");
  CHECK(day.folder.lardiner(remove).out == "MK had no PIN\n");
}

TEST_CASE("a program asks and records as its description says", "[command][ledger][station][api]") {
  const Station station;
  const Browser stranger = station.browser("stranger"), program = station.signed_in("MK");
  const Answer described = stranger.get("/openapi.json");
  CHECK(described.body.startsWith("{\n \"openapi\": \"3.1.0\""));
  const Answer due = stranger.get("/api/due");
  CHECK(unlike(station, "/api/due", due.status, due.body) == "");
  CHECK(unlike(station, "/api/session", 401, stranger.get("/api/session").body) == "");
  const Answer session = program.get("/api/session");
  CHECK(unlike(station, "/api/session", session.status, session.body) == "");
  CHECK(session.body.contains(program.csrf()));
  CHECK(stranger.get("/api/lots/" + kButter).status == 401);
  const Answer lot = program.get("/api/lots/" + kButter);
  CHECK(lot.status == 200);
  CHECK(unlike(station, "/api/lots/{code}", lot.status, lot.body) == "");
  CHECK(unlike(station, "/api/lots/{code}", 404, program.get("/api/lots/XX").body) == "");
  const auto record = [&](const Browser& from, const QString& body, const QString& csrf) {
    return from.get("/api/records",
                    {"-H", "Content-Type: application/x-ndjson", "-H", "X-CSRF-Token: " + csrf, "--data-binary", body});
  };
  const QString frozen =
      R"({"event": "frozen", "at": "2026-11-25 21:45", "by": "MK", "lot": "A26329CLB03L", "containers": "5"})";
  const QString before = station.heads();
  CHECK(unlike(station, "/api/records", 401, record(stranger, frozen, program.csrf()).body, "post") == "");
  CHECK(unlike(station, "/api/records", 403, record(program, frozen, "wrong").body, "post") == "");
  for (const auto& [body, status] : {std::pair(QString("{"), 400), std::pair(QString(), 400),
                                     std::pair(QString(frozen).replace("\"5\"", "\"99\""), 422)}) {
    const Answer refused = record(program, body, program.csrf());
    CHECK(refused.status == status);
    CHECK(unlike(station, "/api/records", status, refused.body, "post") == "");
  }
  CHECK(record(program, R"({"event": "release", "of": "A-1"})", program.csrf()).status == 403);
  CHECK(record(program, QString(frozen).replace("MK", "JO"), program.csrf()).body.contains("leave it out"));
  CHECK(station.heads() == before);
  const Answer recorded = record(program, QString(frozen).remove(R"("by": "MK", )"), program.csrf());
  CHECK(recorded.status == 201);
  CHECK(unlike(station, "/api/records", 201, recorded.body, "post") == "");
  CHECK(station.heads() != before);
}
