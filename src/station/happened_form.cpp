// The form of what happened to a lot.
#include "station/happened_form.h"

namespace lardiner::station {

namespace {

struct Choice {
  const char* value;
  const char* word;
};

constexpr Choice kDeeds[] = {{"opened", "page.opened"},
                             {"frozen", "page.into_freezer"},
                             {"thawed", "page.out_of_freezer"},
                             {"moved", "page.moved"},
                             {"cooled", "page.cooled"},
                             {"hot-held", "page.hot_held"},
                             {"time-control", "page.time_control"},
                             {"reheated", "page.reheated"},
                             {"finished", "page.finished"},
                             {"split", "page.split"},
                             {"reading", "page.temperature_taken"},
                             {"part-used", "page.part_used"},
                             {"counted", "page.counted"},
                             {"corrective-action", "page.corrective"},
                             {"hold", "page.hold"},
                             {"discarded", "page.discarded"}};

constexpr Choice kLeft[] = {
    {"full", "page.full"}, {"half", "page.half"}, {"quarter", "page.quarter"}, {"none", "page.none"}};

constexpr Choice kHeld[] = {{"cold-held", "page.held_cold"}, {"hot-held", "page.hot_held"}, {"served", "page.served"}};

template <size_t N>
void add_choices(const Visit& visit, Part& page, const Choice (&all)[N], std::string_view name, const QString& chosen,
                 const QString& mark) {
  for (const Choice& one : all) {
    const QString value = QString::fromLatin1(one.value);
    Part& row = page.add(name);
    row.set("VALUE", value).set("WORD", visit.word(one.word)).set("CHOSEN", value == chosen ? mark : QString());
  }
}

}  // namespace

void add_happened_form(const Visit& visit, Part& page, const problem::Errors& refused) {
  const Fields& form = visit.request().form;
  const auto typed = [&](const char* name, const QString& otherwise = {}) {
    return refused.empty() ? otherwise : form.values(QString::fromLatin1(name)).join(QStringLiteral(", "));
  };
  page.set("AT", typed("at", visit.now_text()));
  page.set("TYPED_CONTAINERS", typed("containers")).set("TYPED_TEMPERATURE", typed("temperature"));
  page.set("TYPED_COUNT", typed("count")).set("TYPED_KIND", typed("kind"));
  page.set("TYPED_QUANTITY", typed("quantity")).set("TYPED_ACTION", typed("action"));
  page.set("TYPED_HELD", typed("held")).set("TYPED_PLACE", typed("place")).set("TYPED_REASON", typed("reason"));
  add_choices(visit, page, kDeeds, "DEED", typed("event"), QStringLiteral("checked"));
  add_choices(visit, page, kLeft, "LEFT_CHOICE", typed("left"), QStringLiteral("selected"));
  add_choices(visit, page, kHeld, "HELD_CHOICE", typed("what"), QStringLiteral("selected"));
  for (const book::StoragePlace& place : visit.desk().book().places) page.add("STAND").set("PLACE_NAME", place.name);
  if (refused.empty()) return;
  Part& beside = page.add("REFUSED");
  add_problems(beside, refused);
}

}  // namespace lardiner::station
