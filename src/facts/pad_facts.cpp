// What a pad's label says besides the book's facts: blanks to write on, the rule that the hand follows, and its limits.
#include "batch/clock.h"
#include "batch/pad.h"
#include "facts/scene.h"

namespace lardiner::facts {

namespace {

// As wide as what a hand writes there: 26 NOV, 14:30, MK.
const QString kDay = QStringLiteral("____________");
const QString kTime = QStringLiteral("_______");
const QString kShort = QStringLiteral("____");

QString rule_text(const Scene& scene, const book::Length& length) {
  if (length.unit == book::Length::Unit::Months) return scene.sentence("pad_months", {QString::number(length.count)});
  return scene.sentence("pad_days", {QString::number(length.first_day), QString::number(length.count)});
}

void add_date(const Scene& scene, std::vector<Fact>& facts) {
  const auto rule = batch::hand_rule(scene.book, scene.batch, *scene.group);
  if (!rule) {
    scene.errors.push_back(rule.error());
    return;
  }
  const char* caption = rule->kind == book::EndKind::UseBy ? "use_by" : "best_before";
  facts.push_back({FactId::BlankDate, strong(scene.word(caption) + u' ' + kDay)});
  facts.push_back(
      {FactId::DateRule, {{Run{rule_text(scene, rule->length), true}}, {Run{scene.word("pad_never_later"), true}}}});
}

void add_blanks(const Scene& scene, std::vector<Fact>& facts) {
  facts.push_back({FactId::BlankMade, plain(scene.sentence("pad_made", {kDay, kTime}))});
  facts.push_back({FactId::BlankBy, plain(scene.sentence("initials", {kShort}))});
  if (scene.product()->tcs.is == book::TcsStatement::Is::Yes)
    facts.push_back({FactId::BlankFrozen, plain(scene.sentence("pad_frozen_before", {kShort}))});
}

QString cook_text(const Scene& scene, const book::TimeAtTemperature& cook) {
  const QString text = scene.sentence("cook_to", {both_scales(scene, cook.temperature)});
  return cook.seconds == 0 ? text : text + u' ' + scene.sentence("for_seconds", {QString::number(cook.seconds)});
}

// What must be read of food that is cooked or cooled here.
QStringList wanted_readings(const Scene& scene) {
  QStringList wanted;
  if (const auto* cook = batch::cook_by_hand(scene.book, *scene.product())) wanted << cook_text(scene, *cook);
  const std::vector<book::CoolingStage> stages = batch::cooling_by_hand(scene.book, *scene.product());
  if (!stages.empty() && !scene.product()->cooled_from_ambient)
    wanted << scene.sentence("pad_cool_from", {both_scales(scene, stages.front().from)});
  for (const book::CoolingStage& stage : stages)
    wanted << scene.sentence("pad_cool_to", {both_scales(scene, stage.to), lasting(scene, stage.within_seconds)});
  return wanted;
}

// It is not released before they are in: a line for each, once; a further language says them in its sentence.
void add_readings(const Scene& scene, std::vector<Fact>& facts) {
  const QStringList wanted = wanted_readings(scene);
  if (wanted.isEmpty()) return;
  const QString release = scene.word("pad_release");
  if (!scene.first_language) {
    facts.push_back({FactId::Release, strong(scene.sentence("heading", {release, scene.words.clauses(wanted)}))});
    return;
  }
  facts.push_back({FactId::Release, strong(release)});
  Fact readings{FactId::Readings, {}};
  for (const QString& reading : wanted)
    readings.paragraphs.push_back({Run{scene.sentence("pad_reading", {reading, kTime, kTime}), false}});
  facts.push_back(readings);
}

void add_book_day(const Scene& scene, std::vector<Fact>& facts) {
  const QDate day = batch::lot_day(scene.batch.record, scene.book.kitchen.zone);
  facts.push_back({FactId::BookDay, plain(scene.sentence("pad_book", {scene.words.date(day)}))});
}

}  // namespace

void add_pad_facts(const Scene& scene, std::vector<Fact>& facts) {
  add_date(scene, facts);
  add_blanks(scene, facts);
  add_readings(scene, facts);
  add_book_day(scene, facts);
}

}  // namespace lardiner::facts
