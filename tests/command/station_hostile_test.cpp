// Hostile text in every field and every parameter of the station: it stays text, and nothing breaks.
#include "station.h"

using namespace lardiner::command;

namespace {

using Form = QList<QPair<QString, QString>>;

struct Sent {
  QString address;
  Form fields;
};

// Every form of the station, each filled in as it would be taken.
std::vector<Sent> forms() {
  return {{"/happened/" + kButter,
           {{"item", "chilli-lime-butter"},
            {"event", "hold"},
            {"at", "2026-11-25 21:46"},
            {"containers", ""},
            {"temperature", ""},
            {"held", ""},
            {"left", ""},
            {"place", ""},
            {"reason", "a smell"},
            {"site", ""},
            {"note", ""},
            {"quantity", ""},
            {"count", ""},
            {"kind", ""},
            {"of", ""},
            {"action", ""},
            {"what", ""},
            {"order", ""},
            {"accepted", ""}}},
          {"/make/chilli-lime-butter",
           {{"quantity", "6 kg"},
            {"containers", "12 tub 500 g"},
            {"made_at", "2026-11-25 19:00"},
            {"number", "9"},
            {"lot.butter-unsalted", "MB-5521"},
            {"use_by.butter-unsalted", "2026-12-20"},
            {"core", ""},
            {"held", ""},
            {"cooked_at", ""},
            {"site", ""},
            {"order", ""},
            {"step", "look"}}},
          {"/open/MD-8841", {{"item", "milk-whole"}, {"what", "opened"}, {"made_at", "2026-11-25 26:30"}}},
          {"/labels/" + kButter, {{"item", "chilli-lime-butter"}, {"containers", "99"}, {"medium", "side"}}},
          {"/recall/MB-5521", {{"item", "butter-unsalted"}, {"step", "open"}, {"reason", "x"}, {"of", ""}}},
          {"/scan", {{"picture", ""}}},
          {"/dispatch",
           {{"q", ""},
            {"site", "harbour-street-cafe"},
            {"order", "HS-1"},
            {"note", "N-1"},
            {"at", "2026-11-25 21:47"},
            {"temperature", "38 °F"},
            {"codes", ""},
            {"step", "look"}}},
          {"/rounds", {{"step", "temperatures"}, {"at", "2026-11-25 21:47"}, {"reads.walk-in 1", "38 °F"}}},
          {"/rounds",
           {{"step", "check"},
            {"at", "2026-11-25 21:47"},
            {"what", "sanitizer"},
            {"in_order", "yes"},
            {"place", "pot wash"},
            {"note", "x"}}},
          {"/rounds",
           {{"step", "action"},
            {"at", "2026-11-25 21:47"},
            {"action", "made anew"},
            {"place", ""},
            {"lot", ""},
            {"reason", "x"}}},
          {"/receive/butter-unsalted",
           {{"supplier_item", "meadowfold-butter-25"},
            {"lot", "MB-9001"},
            {"quantity", "10 lb"},
            {"count", "1"},
            {"kind", "case"},
            {"state", "chilled"},
            {"temperature", "38 °F"},
            {"place", "walk-in 1"},
            {"date", "2026-12-20"},
            {"ends", "use_by"},
            {"at", "2026-11-25 21:47"},
            {"from", "Meadowfold"},
            {"note", "1"},
            {"order", "2"},
            {"accepted", "yes"},
            {"reason", ""}}},
          {"/correct/" + kButter,
           {{"item", "chilli-lime-butter"}, {"step", "date"}, {"ends", "use_by"}, {"date", ""}, {"reason", "x"}}},
          {"/correct/MB-5521",
           {{"item", "butter-unsalted"},
            {"step", "allergen"},
            {"supplier_item", "meadowfold-butter-25"},
            {"adds", "milk"},
            {"only", "yes"},
            {"reason", "x"}}},
          {"/correct/MB-5521", {{"item", "butter-unsalted"}, {"step", "remark"}, {"of", "A-1"}, {"reason", "x"}}},
          {"/close", {{"place", "walk-in 1"}, {"codes", ""}, {"all", ""}, {"unseen", ""}, {"step", "look"}}},
          {"/day/2026-11-25", {{"note", "seen"}}},
          {"/note/N-1",
           {{"event", "arrived"},
            {"at", "2026-11-25 21:48"},
            {"lot", ""},
            {"containers", ""},
            {"temperature", "38 °F"},
            {"reason", ""},
            {"accepted", "yes"}}},
          {"/printers", {{"printer", "none"}, {"medium", "side"}, {"step", "test"}}},
          {"/print/A-1", {{"good", "2"}, {"step", "again"}}},
          {"/sign-in", {{"name", "nobody"}, {"pin", "1"}, {"strong", "2"}, {"back", "/"}}}};
}

const QStringList kHostile{"\"'><script>alert(1)</script>", "x' OR '1'='1'; DROP TABLE lot; --",
                           "\"); DELETE FROM event; --", "{{#PROBLEM}}{{WHAT}}", "%s%n$(id)`id`|id"};

bool has_markup(const Answer& answer) { return answer.body.contains("<script>alert") || answer.body.contains("uid="); }

}  // namespace

TEST_CASE("script, SQL, marks of a template and of a shell stay text in every field of every form",
          "[command][ledger][station][attack]") {
  const Station station;
  const Browser tablet = station.strong();
  const QString csrf = tablet.csrf();
  for (const Sent& sent : forms())
    for (qsizetype at = 0; at < sent.fields.size(); ++at)
      for (const QString& hostile : kHostile) {
        Form form = sent.fields;
        form[at].second = hostile;
        INFO((sent.address + ' ' + form[at].first + '=' + hostile).toStdString());
        form.append({"csrf", csrf});
        const Answer answer = tablet.post(sent.address, form);
        CHECK((answer.status == 200 || answer.status == 303 || (answer.status >= 400 && answer.status < 500)));
        CHECK_FALSE(has_markup(answer));
        if (sent.address == "/sign-in") break;  // what stands in it is looked at for long
      }
  for (const QString& page :
       {QString("/"), QString("/wall"), "/lot/" + kButter, "/recall/" + kButter + "?item=chilli-lime-butter",
        QString("/find?q=butter"), QString("/open"), QString("/dispatch"), QString("/rounds"), QString("/receive"),
        "/correct/" + kButter + "?item=chilli-lime-butter", QString("/close"), QString("/day/2026-11-25")}) {
    INFO(page.toStdString());
    const Answer answer = tablet.get(page);
    CHECK(answer.status == 200);
    CHECK_FALSE(has_markup(answer));
  }
  CHECK(tablet.get("/lot/" + kButter).body.contains("DROP TABLE lot"));  // a reason, as it was typed
  CHECK(station.evening({"verify"}).status == 0);
  CHECK(QString::fromUtf8(const_cast<QProcess&>(station.program).readAllStandardError()) == "");
}

TEST_CASE("script and SQL stay text in every parameter of every address", "[command][ledger][station][attack]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const QString before = station.heads();
  const QStringList addresses{"/lot/%1",
                              "/lot/" + kButter + "?item=%1",
                              "/lot/" + kButter + "?container=%1",
                              "/recall/%1?item=butter-unsalted",
                              "/recall/MB-5521?item=%1",
                              "/recall-sheet/MB-5521?item=%1",
                              "/make/%1",
                              "/make?q=%1",
                              "/open/%1?item=milk-whole",
                              "/open/MD-8841?item=%1",
                              "/find?q=%1",
                              "/sign-in?name=%1",
                              "/sign-in?name=MK&back=%1",
                              "/language?language=%1&back=/",
                              "/language?language=en&back=%1",
                              "/01/%1",
                              "/01/04170000000018/10/%1",
                              "/receive?q=%1",
                              "/receive?from=%1",
                              "/receive/%1",
                              "/receive/butter-unsalted?from=%1",
                              "/receive/butter-unsalted?supplier_item=%1",
                              "/rounds?place=%1",
                              "/correct/%1?item=chilli-lime-butter",
                              "/correct/" + kButter + "?item=%1",
                              "/lineage/%1?item=x",
                              "/lineage/" + kButter + "?item=%1",
                              "/day/%1",
                              "/day?day=%1",
                              "/note/%1",
                              "/note?number=%1",
                              "/dispatch?q=%1",
                              "/dispatch?site=%1",
                              "/close?place=%1",
                              "/sheets?product=%1",
                              "/print/%1",
                              "/print/A-1?end=%1",
                              "/printers?medium=%1",
                              "/api/lots/%1",
                              "/api/lots/" + kButter + "?item=%1",
                              "/%1"};
  for (const QString& address : addresses)
    for (const QString& hostile : kHostile) {
      const QString asked = address.arg(QString::fromLatin1(hostile.toUtf8().toPercentEncoding()));
      INFO(asked.toStdString());
      const Answer answer = tablet.get(asked);
      CHECK((answer.status == 200 || answer.status == 303 || (answer.status >= 400 && answer.status < 500)));
      const bool json = asked.startsWith("/api/");
      CHECK_FALSE((!json && has_markup(answer)));
    }
  CHECK(tablet.get("/api/lots/<x>", {"-i"}).body.contains("Content-Type: application/json"));
  CHECK(station.heads() == before);
}

TEST_CASE("cookies and headers are as little believed", "[command][ledger][station][attack]") {
  const Station station;
  const Browser stranger = station.browser("stranger");
  for (const QString& hostile : kHostile)
    for (const char* header : {"Cookie: session=%1", "Cookie: language=%1", "Accept-Language: %1", "Referer: %1",
                               "User-Agent: %1", "X-Forwarded-For: %1", "X-CSRF-Token: %1"}) {
      INFO(header << ' ' << hostile.toStdString());
      const Answer answer = stranger.get("/find?q=butter", {"-H", QString::fromLatin1(header).arg(hostile)});
      CHECK(answer.status == 200);
      CHECK_FALSE(has_markup(answer));
      CHECK(answer.body.contains("Sign in"));
    }
  CHECK(stranger.get("/", {"-H", "Host: \"><script>alert(1)</script>"}).status == 421);
}

TEST_CASE("a line break in what is typed writes no line of its own in the ledger's reports",
          "[command][ledger][station][attack]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const QString before = station.heads();
  for (const char* line : {"x\nA-99  2026-11-25 21:00  made, JO", "x\rA-99", "x\x1b[2J"}) {
    const Answer held = tablet.send(
        "/happened/" + kButter, {{"event", "hold"}, {"at", "2026-11-25 21:46"}, {"reason", QString::fromLatin1(line)}});
    CHECK(held.status == 422);
  }
  CHECK(tablet.get("/find?q=x%0aforged%0d").status == 200);
  CHECK(station.heads() == before);
  CHECK(const_cast<QProcess&>(station.program).readAllStandardError().isEmpty());
}

TEST_CASE("a malformed form with a picture changes nothing and is answered", "[command][ledger][station][attack]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const QString csrf = tablet.csrf(), before = station.heads();
  const QString token = "--b\r\nContent-Disposition: form-data; name=\"csrf\"\r\n\r\n" + csrf + "\r\n";
  const QString picture = "Content-Disposition: form-data; name=\"picture\"; filename=\"";
  const auto send = [&](const QString& body, const QString& type = "multipart/form-data; boundary=b") {
    station.folder.write("body", body.toUtf8());
    return tablet.get("/scan", {"-H", "Content-Type: " + type, "--data-binary", "@" + station.folder.path("body")});
  };
  for (const QString& body :
       {token, QString(token).replace("\r\n\r\n", "\r\n"), QString(token + "--b\r\n\r\nnothing\r\n--b--\r\n"),
        QString(token + "--b\r\n" + picture + "../../etc/passwd\"\r\n\r\n"), QString("--b--\r\n"), QString("\r\n"),
        QString(token + "--b\r\nContent-Disposition: form-data; name=\"" + QString(9000, 'n') +
                "\"\r\n\r\nx\r\n--b--\r\n")}) {
    INFO(body.left(200).toStdString());
    const Answer answer = send(body);
    CHECK((answer.status >= 400 && answer.status < 500));
  }
  CHECK(send(token + "--b--\r\n", "multipart/form-data").status >= 400);
  CHECK(send(token + "--b--\r\n", "multipart/form-data; boundary=").status >= 400);
  const Answer named =
      send(token + "--b\r\n" + picture + "../../x\"><script>alert(1)</script>\"\r\n\r\nno picture\r\n--b--\r\n");
  CHECK(named.status < 500);
  CHECK_FALSE(has_markup(named));
  CHECK(station.heads() == before);
}
