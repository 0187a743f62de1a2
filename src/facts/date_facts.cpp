// What a label says of time: the use-by band, frozen containers' days left, and when it was made.
#include "batch/clock.h"
#include "facts/scene.h"

namespace lardiner::facts {

namespace {

void add_band(const Scene& scene, const char* caption, QDate date, std::vector<Fact>& facts) {
  facts.push_back({FactId::DateCaption, plain(scene.word(caption))});
  facts.push_back({FactId::Date, plain(scene.words.day_month(date))});
  facts.push_back({FactId::Year, plain(scene.words.year(date))});
}

const char* caption(book::EndKind kind) { return kind == book::EndKind::UseBy ? "use_by" : "best_before"; }

void add_frozen(const Scene& scene, std::vector<Fact>& facts) {
  const batch::UseBy& use_by = *scene.use_by;
  add_band(scene, "frozen", *use_by.frozen_on, facts);
  if (use_by.days_left > 0) {
    const QString left = scene.words.counted(QStringLiteral("days_left"), QString::number(use_by.days_left));
    facts.push_back({FactId::DaysLeft,
                     strong(scene.sentence(use_by.days_left == 1 ? "use_on_thaw_day" : "thaw_day_is_day_1", {left}))});
  }
  Fact limits{FactId::FrozenLimits, {}};
  if (use_by.never_past)
    limits.paragraphs.push_back({Run{scene.sentence("never_past", {scene.words.date(*use_by.never_past)}), true}});
  if (use_by.frozen_best_before)
    limits.paragraphs.push_back(
        {Run{scene.sentence("best_before_frozen", {scene.words.date(*use_by.frozen_best_before)}), false}});
  facts.push_back(limits);
  facts.push_back({FactId::WriteDates,
                   {{Run{unbroken(scene.sentence("thawed_blank", {kDayBlank})), false}},
                    {Run{unbroken(scene.sentence("use_by_blank", {kDayBlank})), false}}}});
}

void add_instant(const Scene& scene, std::vector<Fact>& facts) {
  const QDateTime local = scene.use_by->end.toTimeZone(scene.book.kitchen.zone);
  add_band(scene, caption(scene.use_by->kind), local.date(), facts);
  QString time = scene.words.time(local.time());
  if (batch::shows_twice(scene.use_by->end, scene.book.kitchen.zone))  // clocks go back: say which of the two it is
    time += u' ' + batch::offset_text(local.offsetFromUtc());
  facts.push_back({FactId::Time, plain(time)});
}

const char* deed_key(batch::Deed deed) {
  switch (deed) {
    case batch::Deed::Made:
      return "made";
    case batch::Deed::Opened:
      return "opened";
    case batch::Deed::Thawed:
      return "thawed_on";
    case batch::Deed::Cut:
      return "cut";
    case batch::Deed::Decanted:
      return "decanted";
  }
  return "made";
}

// "Without temperature control", and the warmth that its longer form may never pass.
QString time_control(const Scene& scene) {
  const QString words = scene.word("time_control");
  if (!scene.use_by->never_above) return words;
  return scene.words.clauses({words, scene.sentence("never_above", {both_scales(scene, *scene.use_by->never_above)})});
}

// When a container was thawed or opened since: its date counts from there.
void add_happenings(const Scene& scene, Fact& done) {
  for (const batch::Event* event : batch::events_of(scene.batch.record, scene.container_number)) {
    const bool thawed = event->what == batch::Happening::Thawed;
    if (!thawed && event->what != batch::Happening::Opened) continue;
    const QString when = scene.words.date_time(event->at.toTimeZone(scene.book.kitchen.zone));
    done.paragraphs.push_back({Run{scene.sentence(thawed ? "thawed_on" : "opened", {when}), false}});
  }
}

}  // namespace

void add_date_facts(const Scene& scene, std::vector<Fact>& facts) {
  const batch::Record& record = scene.batch.record;
  const QDateTime made = record.made_at.toTimeZone(scene.book.kitchen.zone);
  const QString when = record.time_known ? scene.words.date_time(made) : scene.words.date(made.date());
  Fact done{FactId::Made, plain(scene.sentence(deed_key(record.deed), {when}))};
  add_happenings(scene, done);
  facts.push_back(done);
  if (!scene.use_by) return;

  switch (scene.use_by->form) {
    case batch::UseBy::Form::Date:
      add_band(scene, caption(scene.use_by->kind), scene.use_by->date, facts);
      break;
    case batch::UseBy::Form::Instant:
      add_instant(scene, facts);
      break;
    case batch::UseBy::Form::Frozen:
      add_frozen(scene, facts);
      break;
    case batch::UseBy::Form::None:
      scene.errors.push_back({problem::Code::Missing,
                              QStringLiteral("no shelf-life rule gives \"%1\" a date").arg(record.item), record.place,
                              QStringLiteral("add a shelf_life for its state to the book")});
  }
  if (scene.use_by->previously_frozen || scene.batch.previously_frozen)
    facts.push_back({FactId::PreviouslyFrozen, plain(scene.word("previously_frozen"))});
  if (scene.use_by->time_control) facts.push_back({FactId::TimeControl, strong(time_control(scene))});
}

}  // namespace lardiner::facts
