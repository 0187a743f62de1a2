// The plural categories of the shipped languages, by CLDR's rules.
#include "words/plural.h"

#include <algorithm>
#include <array>

namespace lardiner::words {

namespace {

constexpr qint64 kMillion = 1'000'000;

// CLDR's operands as far as these rules look at them: i, the whole part, and whether v, the number of decimals, is 0.
struct Operands {
  qint64 whole = 0;
  bool decimals = false;
};

Operands operands(const QString& figure) {
  const auto is_digit = [](QChar c) { return c >= u'0' && c <= u'9'; };
  const auto mark = std::find_if_not(figure.begin(), figure.end(), is_digit);
  return {figure.left(mark - figure.begin()).toLongLong(), mark != figure.end()};
}

using Rule = Plural (*)(const Operands&);

Plural only_other(const Operands&) { return Plural::Other; }

Plural one_of_exactly_one(const Operands& n) { return n.whole == 1 && !n.decimals ? Plural::One : Plural::Other; }

bool whole_millions(const Operands& n) { return n.whole != 0 && n.whole % kMillion == 0 && !n.decimals; }

Plural spanish(const Operands& n) { return whole_millions(n) ? Plural::Many : one_of_exactly_one(n); }

Plural french(const Operands& n) {
  if (n.whole <= 1) return Plural::One;
  return whole_millions(n) ? Plural::Many : Plural::Other;
}

Plural russian(const Operands& n) {
  if (n.decimals) return Plural::Other;
  const qint64 last = n.whole % 10;
  const qint64 last_two = n.whole % 100;
  if (last == 1 && last_two != 11) return Plural::One;
  if (last >= 2 && last <= 4 && (last_two < 12 || last_two > 14)) return Plural::Few;
  return Plural::Many;
}

struct Row {
  const char* language;
  Rule rule;
  std::vector<Plural> forms;
};

const Row& row(const QString& language) {
  static const std::vector<Row> kRows{
      {"en", one_of_exactly_one, {Plural::One, Plural::Other}},
      {"el", one_of_exactly_one, {Plural::One, Plural::Other}},
      {"es", spanish, {Plural::One, Plural::Many, Plural::Other}},
      {"pt-PT", spanish, {Plural::One, Plural::Many, Plural::Other}},
      {"fr", french, {Plural::One, Plural::Many, Plural::Other}},
      {"pt", french, {Plural::One, Plural::Many, Plural::Other}},
      {"ru", russian, {Plural::One, Plural::Few, Plural::Many, Plural::Other}},
  };
  static const Row kElse{"", only_other, {Plural::Other}};  // vi and zh too
  const auto of = [](const QString& tag) {
    return std::find_if(kRows.begin(), kRows.end(), [&](const Row& r) { return tag == QLatin1String(r.language); });
  };
  auto found = of(language);
  if (found == kRows.end()) found = of(language.section(u'-', 0, 0));
  return found == kRows.end() ? kElse : *found;
}

}  // namespace

QString name(Plural plural) {
  static constexpr std::array<const char*, 4> kNames{"one", "few", "many", "other"};
  return QString::fromLatin1(kNames[static_cast<size_t>(plural)]);
}

std::vector<Plural> plurals_of(const QString& language) { return row(language).forms; }

Plural plural_of(const QString& language, const QString& figure) { return row(language).rule(operands(figure)); }

}  // namespace lardiner::words
