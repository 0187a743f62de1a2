// Making a batch at the station: what went in by tap or by code, what replaces it with a named yes, and what is
// recorded on hold.
#include "station.h"

using namespace lardiner::command;

namespace {

using Form = QList<QPair<QString, QString>>;

Form butter(const QString& step, const Form& more = {}) {
  return Form{{"quantity", "4 kg"}, {"containers", "8 tub 500 g"},      {"made_at", "2026-11-25 21:00"},
              {"number", "51"},     {"lot.butter-unsalted", "MB-5521"}, {"step", step}} +
         more;
}

}  // namespace

TEST_CASE("a lot's label that is scanned into the form is what went in", "[command][ledger][station][make]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  Form form = butter("look", {{"code.butter-unsalted", "MB-5521"}});
  form.removeIf([](const auto& field) { return field.first.startsWith("lot."); });
  const Answer look = tablet.send("/make/chilli-lime-butter", form);
  CHECK(look.status == 200);
  CHECK(look.body.simplified().contains("<span class=\"code\">MB-5521</span>"));
  form.removeIf([](const auto& field) { return field.first == "step"; });
  const Answer made = tablet.send("/make/chilli-lime-butter", form + Form{{"step", "record"}});
  INFO(made.body.toStdString());
  REQUIRE(made.status == 303);
  const QString lot = made.to.section("/lot/", 1).section('?', 0, 0);
  CHECK(station.evening({"trace", lot}).out.contains("MB-5521"));
}

TEST_CASE("what replaces an input shows what it adds, and is recorded with a named yes alone",
          "[command][ledger][station][make]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const Form instead{{"instead.smoked-pepper-seasoning", "White sesame seeds"},
                     {"use_by.smoked-pepper-seasoning", "2027-03-01"}};
  const Answer look = tablet.send("/make/chilli-lime-butter", butter("look", instead));
  INFO(look.body.toStdString());
  CHECK(look.body.simplified().contains("adds SESAME"));
  CHECK(look.body.contains("I agree to this difference"));
  const QString before = station.heads();
  const Answer refused = tablet.send("/make/chilli-lime-butter", butter("record", instead));
  CHECK(refused.status == 422);
  CHECK(refused.body.contains("nobody agreed to it"));
  CHECK(station.heads() == before);
  const Answer made = tablet.send("/make/chilli-lime-butter", butter("record", instead + Form{{"agreed", "yes"}}));
  INFO(made.body.toStdString());
  REQUIRE(made.status == 303);
  const QString lot = made.to.section("/lot/", 1).section('?', 0, 0);
  CHECK(tablet.get("/lot/" + lot).body.simplified().contains("sesame"));
}

TEST_CASE("something that is not in the book replaces nothing", "[command][ledger][station][make]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const Answer look =
      tablet.send("/make/chilli-lime-butter", butter("look", {{"instead.smoked-pepper-seasoning", "moon dust"}}));
  CHECK(look.status == 422);
  CHECK(look.body.contains("moon dust"));
}

TEST_CASE("a batch that gets no date is recorded on hold, and not otherwise", "[command][ledger][station][make]") {
  const Station station;
  const Browser tablet = station.signed_in("MK");
  const Form salsa{
      {"quantity", "2 kg"}, {"containers", "2 tub 1 kg"}, {"made_at", "2026-11-25 21:00"}, {"number", "52"}};
  const Answer look = tablet.send("/make/tomatillo-salsa", salsa + Form{{"step", "look"}});
  CHECK(look.body.contains("value=\"hold\""));
  CHECK(tablet.send("/make/tomatillo-salsa", salsa + Form{{"step", "record"}}).status == 422);
  const Answer held = tablet.send("/make/tomatillo-salsa", salsa + Form{{"step", "hold"}});
  INFO(held.body.toStdString());
  REQUIRE(held.status == 303);
  const QString lot = held.to.section("/lot/", 1).section('?', 0, 0);
  const QString page = tablet.get("/lot/" + lot).body;
  CHECK(page.contains("DO NOT USE"));
  CHECK(tablet.send("/labels/" + lot, {{"medium", "lid"}, {"step", "pdf"}}).status == 422);
  CHECK(tablet.send("/labels/" + lot, {{"medium", "lid"}, {"hold", "yes"}, {"step", "pdf"}}).body.startsWith("%PDF-"));
}
