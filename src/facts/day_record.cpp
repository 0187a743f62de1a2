// The record of one day, as an inspector asks for it: what was measured, done, refused and corrected, and by whom.
#include "facts/day_record.h"

#include <algorithm>

#include "facts/day_rows.h"

namespace lardiner::facts {

namespace {

const QString kBetween = QStringLiteral(" · ");

class DayRecord {
 public:
  DayRecord(const SheetPhrases& phrases, const Day& day) : phrases_(phrases), day_(day) {}

  WorkSheet make() {
    const QString day = phrases_.day(day_.day), kitchen = phrases_.book().kitchen.name;
    sheet_.language = phrases_.language().tag();
    sheet_.kind = kitchen;
    sheet_.title = phrases_.both("record.title");
    sheet_.running = QStringList{phrases_.first().word("record.title"), day, kitchen}.join(kBetween);
    sheet_.page_of = phrases_.first().word("sheet.page_of");
    sheet_.head.push_back({day, true});
    QStringList rules{day_.rules};
    if (!day_.rules_source.isEmpty() && day_.rules_source != day_.rules) rules << day_.rules_source;
    sheet_.head.push_back({phrases_.both("record.rules", {rules.join(kBetween)}), false});
    sheet_.head.push_back({phrases_.both("record.entries", {QString::number(day_.entries)}), false});
    add_sections();
    add_review();
    for (const QString& head : day_.heads) sheet_.foot << phrases_.both("record.head", {head});
    sheet_.foot << phrases_.both("record.printed", {phrases_.day_and_time(day_.printed_at)});
    std::vector<SmallLine> cautions;
    phrases_.add_small(cautions, [](const Wording& wording) { return wording.word("sheet.caution_defer"); });
    for (const SmallLine& line : cautions) sheet_.foot << line.text;
    return std::move(sheet_);
  }

 private:
  void add_sections() {
    add("record.places", rows_of(phrases_, day_.places), "record.no_places");
    add("record.cooks", rows_of(phrases_, day_.cooks));
    add("record.coolings", rows_of(phrases_, day_.coolings));
    add("record.holding", rows_of(phrases_, day_.holding));
    add("record.receipts", rows_of(phrases_, day_.receipts));
    add("record.checks", rows_of(phrases_, day_.checks));
    using Kind = Acted::Kind;
    add("record.actions", rows_of(phrases_, of_kinds({Kind::Corrective})));
    add("record.discards", rows_of(phrases_, day_.discards));
    add("record.holds", rows_of(phrases_, of_kinds({Kind::Hold, Kind::Release})));
    add("record.recalls", rows_of(phrases_, of_kinds({Kind::RecallOpened, Kind::RecallClosed})));
    add("record.corrections", rows_of(phrases_, of_kinds({Kind::Correction})));
    add("record.dispatches", rows_of(phrases_, day_.shipped));
    add("record.made", rows_of(phrases_, day_.made));
    add("record.counts", rows_of(phrases_, day_.counts));
  }

  std::vector<Acted> of_kinds(const std::vector<Acted::Kind>& kinds) const {
    std::vector<Acted> out;
    for (const Acted& acted : day_.actions)
      if (std::find(kinds.begin(), kinds.end(), acted.kind) != kinds.end()) out.push_back(acted);
    return out;
  }

  Table table(const char* heading) const {
    return {phrases_.both(heading),
            {{Column::Kind::Text, phrases_.both("sheet.at"), 3},
             {Column::Kind::Text, {}, 8},
             {Column::Kind::Text, {}, 5},
             {Column::Kind::Text, {}, 7},
             {Column::Kind::Text, phrases_.both("sheet.by"), 3}},
            {},
            true};
  }

  void add(const char* heading, std::vector<Row> rows, const char* none = nullptr) {
    if (rows.empty()) {
      sheet_.parts.emplace_back(Note{none ? phrases_.both(none) : phrases_.both([&](const Wording& wording) {
                                       return wording.sentence("record.none", {wording.word(heading)});
                                     }),
                                     false});
      return;
    }
    Table out = table(heading);
    out.rows = std::move(rows);
    sheet_.parts.emplace_back(std::move(out));
  }

  // And a line to sign on, where no second person has reviewed all of the day yet.
  void add_review() {
    if (!day_.reviews.empty()) add("record.reviews", rows_of(phrases_, day_.reviews));
    if (!day_.reviews.empty() && day_.unreviewed == 0) return;
    Table out{day_.reviews.empty() ? phrases_.both("record.reviews") : QString(),
              {{Column::Kind::Text, {}, 3},
               {Column::Kind::Blank, phrases_.both("sheet.by"), 1},
               {Column::Kind::Blank, phrases_.both("record.signature"), 2},
               {Column::Kind::Blank, phrases_.both("record.date"), 1}},
              {},
              true};
    const Cell none = phrases_.cell(
        [&](const Wording& wording) {
          return day_.reviews.empty() ? wording.word("record.not_reviewed")
                                      : wording.sentence("record.reviewed_in_part", {QString::number(day_.unreviewed)});
        },
        true);
    out.rows.push_back({{none, blank(), blank(), blank()}, false});
    sheet_.parts.emplace_back(std::move(out));
  }

  const SheetPhrases& phrases_;
  const Day& day_;
  WorkSheet sheet_;
};

}  // namespace

problem::ExpectedAll<WorkSheet> day_record(const SheetSetting& setting, const Day& day) {
  problem::Errors errors;
  if (day.heads.isEmpty() && day.entries > 0)
    errors.push_back(
        {problem::Code::Missing,
         QStringLiteral("the head of the chain is missing from the record of %1").arg(day.day.toString(Qt::ISODate)),
         {},
         QStringLiteral("run `lardiner verify`")});
  const SheetPhrases phrases(setting, errors);
  WorkSheet sheet = DayRecord(phrases, day).make();
  if (errors.empty()) return sheet;
  problem::sort(errors);
  return tl::unexpected(errors);
}

}  // namespace lardiner::facts
