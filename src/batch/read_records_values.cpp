// The kinds of value a batch record writes, each taken from a key; a fault is told at the key's place.
#include "batch/read_records_values.h"

#include "batch/clock.h"
#include "batch/phrases.h"
#include "measure/seconds.h"
#include "measure/text.h"
#include "reader/quote.h"

namespace lardiner::batch {

using problem::Code;
using problem::Error;
using reader::Fields;
using reader::quoted;

namespace {

constexpr int kMostHeldSeconds = 24 * 3600;

template <class T>
std::optional<T> taken(Fields& fields, QStringView key, const problem::Expected<T>& read) {
  if (read) return *read;
  fields.refuse(key, read.error().code, read.error().what, read.error().hint);
  return std::nullopt;
}

std::optional<reader::Written> written(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  return text ? taken(fields, key, reader::parse_written(*text)) : std::nullopt;
}

std::optional<QDateTime> placed(Fields& fields, QStringView key, const reader::Written& written,
                                const Reading& reading) {
  if (!written.seconds_of_day) return start_of(written.date, reading.zone());
  return taken(fields, key, instant(written, reading.zone()));
}

std::optional<StatedEnd> read_end(Fields& fields, QStringView key, book::EndKind kind, const Reading& reading) {
  const std::optional<reader::Written> read = written(fields, key);
  if (!read) return std::nullopt;
  if (!read->seconds_of_day) return StatedEnd{end_of(read->date, reading.zone()), true, kind};
  const std::optional<QDateTime> at = placed(fields, key, *read, reading);
  return at ? std::optional(StatedEnd{*at, false, kind}) : std::nullopt;
}

}  // namespace

measure::Quantity most_made(measure::Dimension dimension) {
  using measure::Unit;
  switch (dimension) {
    case measure::Dimension::Mass:
      return measure::quantity({kMostTonnes * 1000, 1}, Unit::Kilogram);
    case measure::Dimension::Volume:
      return measure::quantity({kMostLitres, 1}, Unit::Litre);
    case measure::Dimension::Count:
      return measure::quantity({kMostPieces, 1}, Unit::Piece);
  }
  return {};
}

QString most_made_text() {
  return QStringLiteral("at most %1 tonnes, %2 litres or %3 pieces").arg(kMostTonnes).arg(kMostLitres).arg(kMostPieces);
}

void require(Fields& fields, QStringView key, const QString& hint) {
  if (!fields.has(key)) fields.refuse(key, Code::Missing, QStringLiteral("%1 has no %2").arg(fields.noun(), key), hint);
}

std::optional<Moment> read_moment(Fields& fields, QStringView key, const Reading& reading) {
  const std::optional<reader::Written> read = written(fields, key);
  const std::optional<QDateTime> at = read ? placed(fields, key, *read, reading) : std::nullopt;
  if (!at) return std::nullopt;
  if (*at > reading.settings.now) {
    fields.refuse(key, Code::Range,
                  QStringLiteral("%1 is in the future: it is now %2")
                      .arg(quoted(*fields.text(key)), instant_text(reading.settings.now, reading.zone())),
                  QStringLiteral("write when it happened"));
    return std::nullopt;
  }
  return Moment{*at, read->seconds_of_day.has_value()};
}

std::optional<QDateTime> read_instant(Fields& fields, QStringView key, const Reading& reading) {
  const std::optional<Moment> moment = read_moment(fields, key, reading);
  if (!moment) return std::nullopt;
  if (moment->time_known) return moment->at;
  fields.refuse(key, Code::Missing, QStringLiteral("%1 has no time of day").arg(quoted(*fields.text(key))),
                QStringLiteral("write it as 2026-02-28 14:30"));
  return std::nullopt;
}

std::optional<QDateTime> read_required_instant(Fields& fields, QStringView key, const Reading& reading) {
  require(fields, key, QStringLiteral("write the day and time, as 2026-02-28 14:30"));
  return read_instant(fields, key, reading);
}

std::optional<StatedEnd> read_stated_end(Fields& fields, const Reading& reading) {
  const std::optional<StatedEnd> use_by = read_end(fields, u"use_by", book::EndKind::UseBy, reading);
  const std::optional<StatedEnd> best_before = read_end(fields, u"best_before", book::EndKind::BestBefore, reading);
  if (fields.has(u"use_by") && fields.has(u"best_before")) {
    fields.refuse(u"best_before", Code::Conflict,
                  QStringLiteral("%1 has a use_by and a best_before").arg(fields.noun()),
                  QStringLiteral("keep the use_by, which is about safety"));
    return std::nullopt;
  }
  return use_by ? use_by : best_before;
}

problem::Expected<measure::Quantity> amount_of(const QString& text, const Reading& reading) {
  const problem::Expected<measure::Quantity> amount =
      measure::parse_quantity(text, measure::Zero::Refused, reading.settings.decimal_comma);
  if (!amount || !measure::less(most_made(amount->dimension), *amount)) return amount;
  return tl::unexpected(
      Error{Code::Range, quoted(text) + QStringLiteral(" is more than a kitchen makes"), {}, most_made_text()});
}

std::optional<measure::Quantity> read_amount(Fields& fields, QStringView key, const Reading& reading) {
  const std::optional<QString> text = fields.text(key);
  return text ? taken(fields, key, amount_of(*text, reading)) : std::nullopt;
}

std::optional<measure::Quantity> read_required_amount(Fields& fields, QStringView key, const Reading& reading) {
  require(fields, key, QStringLiteral("write an amount with its unit, as 12 kg"));
  return read_amount(fields, key, reading);
}

std::optional<measure::Temperature> read_core(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  return text ? taken(fields, key, measure::parse_temperature(*text)) : std::nullopt;
}

std::optional<int> read_held(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  const std::optional<qint64> seconds = text ? taken(fields, key, measure::parse_seconds(*text)) : std::nullopt;
  if (!seconds) return std::nullopt;
  if (*seconds <= kMostHeldSeconds) return static_cast<int>(*seconds);
  fields.refuse(key, Code::Range, quoted(*text) + QStringLiteral(" is longer than a day"),
                QStringLiteral("write how long it was held, as 15 s"));
  return std::nullopt;
}

QString read_person(Fields& fields, QStringView key, const Reading& reading) {
  const QString initials = fields.text(key).value_or(QString());
  if (initials.isEmpty() || reading.book.people.empty()) return initials;
  QStringList known;
  for (const book::Person& person : reading.book.people) known += person.initials;
  if (known.contains(initials)) return initials;
  fields.refuse(key, Code::Unknown, QStringLiteral("%1 is nobody of this kitchen").arg(quoted(initials)),
                did_you_mean(initials, known, QStringLiteral("write one of ") + known.join(QStringLiteral(", "))));
  return {};
}

std::optional<QString> read_word(Fields& fields, QStringView key, const QStringList& words) {
  const std::optional<QString> word = fields.text(key);
  if (!word || words.contains(*word)) return word;
  fields.refuse(key, Code::Unknown, QStringLiteral("%1: %2 cannot be %3").arg(fields.noun(), key, quoted(*word)),
                did_you_mean(*word, words, QStringLiteral("write one of ") + words.join(QStringLiteral(", "))));
  return std::nullopt;
}

QString did_you_mean(const QString& word, const QStringList& known, const QString& otherwise) {
  constexpr qsizetype kLongestCompared = 64;
  const QString near = word.size() > kLongestCompared ? QString() : problem::nearest(word, known);
  return near.isEmpty() ? otherwise : QStringLiteral("did you mean %1?").arg(near);
}

}  // namespace lardiner::batch
