// Containers of a lot, and their date, as sheets name them.
#include "facts/container_text.h"

#include <algorithm>

#include "batch/clock.h"
#include "words/keys.h"
#include "words/plural.h"

namespace lardiner::facts {

namespace {

// "1–3, 7"
QString ranges(std::vector<int> numbers) {
  std::sort(numbers.begin(), numbers.end());
  numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  QStringList out;
  for (size_t i = 0; i < numbers.size();) {
    size_t end = i;
    while (end + 1 < numbers.size() && numbers[end + 1] == numbers[end] + 1) ++end;
    const QString from = QString::number(numbers[i]), to = QString::number(numbers[end]);
    out << (end == i ? from : from + (end == i + 1 ? QStringLiteral(", ") : QString(QChar(0x2013))) + to);
    i = end + 1;
  }
  return out.join(QStringLiteral(", "));
}

QString frozen_text(const Wording& wording, const batch::UseBy& use_by) {
  const words::Language& words = wording.words;
  QStringList out;
  if (use_by.frozen_on) out << wording.sentence("frozen_on", {words.date(*use_by.frozen_on)});
  if (use_by.days_left > 0) {
    const QString left = words.counted(QStringLiteral("days_left"), QString::number(use_by.days_left));
    out << wording.sentence(use_by.days_left == 1 ? "use_on_thaw_day" : "thaw_day_is_day_1", {left});
  }
  if (use_by.never_past) out << wording.sentence("never_past", {words.date(*use_by.never_past)});
  if (use_by.frozen_best_before)
    out << wording.sentence("best_before_frozen", {words.date(*use_by.frozen_best_before)});
  return out.join(QStringLiteral(" · "));
}

}  // namespace

QString counted_containers(const Wording& wording, const QString& kind, int count) {
  const QString plural = kind + u's';
  const bool known = words::is_known(words::plural_key(plural, words::Plural::Other), wording.words.code());
  return wording.words.counted(known ? plural : QStringLiteral("packs"), QString::number(count));
}

QString containers_text(const Wording& wording, const std::vector<Containers>& containers) {
  QStringList out;
  for (const Containers& some : containers) {
    const int count = some.count + static_cast<int>(some.numbers.size());
    if (count == 0) continue;
    const QString counted = unbroken(counted_containers(wording, some.kind, count));
    out << (some.numbers.empty() ? counted : wording.sentence("with_parts", {counted, ranges(some.numbers)}));
  }
  return wording.words.list(out);
}

QString good_until(const Wording& wording, const batch::UseBy& use_by, const QTimeZone& zone) {
  const words::Language& words = wording.words;
  const QString caption = wording.word(use_by.kind == book::EndKind::UseBy ? "use_by" : "best_before") + u' ';
  const auto day = [&](QDate date) { return unbroken(words.day_month(date) + u' ' + words.year(date)); };
  switch (use_by.form) {
    case batch::UseBy::Form::Date:
      return caption + day(use_by.date);
    case batch::UseBy::Form::Instant: {
      const QDateTime local = use_by.end.toTimeZone(zone);
      QString time = words.time(local.time());
      if (batch::shows_twice(use_by.end, zone)) time += u' ' + batch::offset_text(local.offsetFromUtc());
      return caption + day(local.date()) + u' ' + time;
    }
    case batch::UseBy::Form::Frozen:
      return frozen_text(wording, use_by);
    case batch::UseBy::Form::None:
      break;
  }
  return wording.word("note.no_date");
}

}  // namespace lardiner::facts
