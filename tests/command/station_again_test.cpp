// A form whose session has ended: it goes along while somebody signs in, is shown to them, and recorded as theirs.
#include "station.h"

using namespace lardiner;
using namespace lardiner::command;

namespace {

using Form = QList<QPair<QString, QString>>;

// The hidden fields of a page, as a browser sends them with a form.
Form hidden(const Answer& page) {
  static const QRegularExpression field("<input type=\"hidden\" name=\"([^\"]*)\" value=\"([^\"]*)\">");
  Form form;
  for (auto found = field.globalMatch(page.body); found.hasNext();) {
    const auto one = found.next();
    if (const QString name = one.captured(1); name != "csrf" || one.captured(2) != "")
      form.append({name, QString(one.captured(2))
                             .replace("&quot;", "\"")
                             .replace("&lt;", "<")
                             .replace("&#39;", "'")
                             .replace("&gt;", ">")
                             .replace("&amp;", "&")});
  }
  return form;
}

}  // namespace

TEST_CASE("a form that comes after its session has ended is kept while somebody signs in, and recorded as theirs",
          "[command][ledger][station]") {
  const Station station;
  const Browser tablet = station.browser("tablet");
  const QString before = station.heads();
  const Answer asked = tablet.post("/happened/" + kButter, {{"item", "chilli-lime-butter"},
                                                            {"event", "hold"},
                                                            {"at", "2026-11-25 21:49"},
                                                            {"reason", "a lid was off \"<b>\""},
                                                            {"csrf", "of the session that ended"}});
  CHECK(asked.status == 401);
  CHECK(asked.body.contains("Sign in first"));
  CHECK_FALSE(asked.body.contains("<b>\""));
  CHECK_FALSE(asked.body.contains("of the session that ended"));

  const Answer wrong = tablet.post("/sign-in", hidden(asked) + Form{{"name", "JO"}, {"pin", "918273"}});
  CHECK(wrong.status == 403);
  CHECK(hidden(wrong) == hidden(asked));
  CHECK(station.heads() == before);

  const Answer shown = tablet.post("/sign-in", hidden(wrong) + Form{{"name", "JO"}, {"pin", kPin}});
  CHECK(shown.status == 200);
  CHECK(shown.body.contains("Nothing of this is recorded yet"));
  CHECK(shown.body.contains("reason: <strong>a lid was off &quot;&lt;b&gt;&quot;</strong>"));
  CHECK(shown.body.contains("action=\"/happened/" + kButter + "\""));
  CHECK(station.heads() == before);

  Form again = hidden(shown);
  again.removeIf([](const auto& one) { return one.first == "csrf"; });
  CHECK(again.size() == 4);
  CHECK(tablet.post("/happened/" + kButter, again).status == 403);  // the token of the new session is asked for
  CHECK(station.heads() == before);
  const Answer done = tablet.send("/happened/" + kButter, again);
  CHECK(done.status == 200);
  CHECK(done.body.contains("On hold: a lid was off &quot;&lt;b&gt;&quot;"));
  CHECK(done.body.contains("· JO ·"));
}

TEST_CASE("a form that is kept leads nowhere else, and a program or a page elsewhere has none kept",
          "[command][ledger][station][attack]") {
  const Station station;
  const Browser tablet = station.browser("tablet");
  const Answer away =
      tablet.post("/sign-in", {{"name", "JO"}, {"pin", kPin}, {"kept_for", "//evil.example/x"}, {"kept.reason", "x"}});
  CHECK(away.status == 200);
  CHECK(away.body.contains("action=\"/\""));
  CHECK_FALSE(away.body.contains("evil.example"));
  const Browser stranger = station.browser("stranger");
  CHECK(stranger.post("/api/records", {{"event", "hold"}}).body.startsWith("{"));
  const Answer elsewhere =
      stranger.post("/happened/" + kButter, {{"reason", "x"}}, {"-H", "Origin: http://evil.example"});
  CHECK(elsewhere.status == 403);
  CHECK_FALSE(elsewhere.body.contains("kept."));
}
