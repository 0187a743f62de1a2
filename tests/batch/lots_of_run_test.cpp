// Tests of inputs whose lot nobody wrote, of which lots were made in the same run of records.
#include "batch/lots_of_run.h"

#include <QJsonDocument>

#include "batch/fixed_json.h"
#include "fixed_kitchen.h"
#include "random_day.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

const char* const kLater = "2026-12-20";

// As the ledger does when it knows of no other lots.
std::vector<Record> assumed(std::vector<Record> records) {
  LotsOfRun of_run(records, kitchen());
  for (const size_t at : of_run.latest_first())
    for (Input& input : records[at].inputs)
      if (input.lot.isEmpty()) input.candidates = of_run.may_have_been(at, input.item);
  return records;
}

QByteArray dip(int number, const QByteArray& made_at, const QByteArray& inputs = {}, const QByteArray& more = {}) {
  return made("dip", number, made_at, input("mayonnaise", kLater) + inputs, more);
}

QByteArray dressing(const QByteArray& made_at, const QByteArray& more = {}) {
  return made("dressing", 9, made_at, input("butter", kLater) + "," + input("dip", {}, "\"agreed_by\": \"MK\""), more);
}

// The facts of the first record, the others being what it may have been made of.
Fixed first(const QByteArray& lines) { return fix_records(assumed(records_of(lines))).front(); }

QStringList candidates(const QByteArray& lines) { return assumed(records_of(lines)).front().inputs.back().candidates; }

bool contains(const Batch& batch, const QString& substance) {
  return std::any_of(batch.declared.contains.begin(), batch.declared.contains.end(),
                     [&](const book::Declaration& d) { return d.substance == substance; });
}

QString lot_of_dip(int number, const QByteArray& made_at) { return QString::fromLatin1(lot_of(dip(number, made_at))); }

}  // namespace

TEST_CASE("an input without a lot takes its date from the lot that was made earlier in the file",
          "[batch][candidates]") {
  const Fixed after = first(dressing("2026-11-04 09:00") + dip(1, "2026-11-03 09:00"));
  CHECK(problem::text(after.batch.refused) == QString());
  CHECK(use_by_of(after, 0)->date == date("2026-11-09"));
  const Fixed before = first(dressing("2026-11-02 09:00") + dip(1, "2026-11-03 09:00"));
  CHECK(before.batch.missing == QStringList{QStringLiteral("missing.input_date")});
}

TEST_CASE("of several lots of the file the earliest date counts, and all allergens", "[batch][candidates]") {
  const QByteArray sesame = "," + input("sesame", {}, "\"agreed_by\": \"MK\"");
  const Fixed both =
      first(dressing("2026-11-04 09:00") + dip(1, "2026-11-01 09:00") + dip(2, "2026-11-03 09:00", sesame));
  CHECK(problem::text(both.batch.refused) == QString());
  CHECK(use_by_of(both, 0)->date == date("2026-11-07"));
  CHECK(contains(both.batch, QStringLiteral("sesame")));
  CHECK_FALSE(
      contains(first(dressing("2026-11-04 09:00") + dip(1, "2026-11-01 09:00")).batch, QStringLiteral("sesame")));
}

TEST_CASE("what was begun while the other was still being made may have gone into it", "[batch][candidates]") {
  const QString lot = lot_of_dip(1, "2026-11-04 10:00");
  const QByteArray made_to = "\"made_to\": \"2026-11-04 11:00\"";
  CHECK(candidates(dressing("2026-11-04 09:00", made_to) + dip(1, "2026-11-04 10:00")) == QStringList{lot});
  CHECK(candidates(dressing("2026-11-04 09:00") + dip(1, "2026-11-04 10:00")) == QStringList());
  CHECK(candidates(dressing("2026-11-04") + dip(1, "2026-11-04 10:00")) == QStringList{lot});
}

TEST_CASE("what was all discarded before, or is not cooked yet, cannot have been it", "[batch][candidates]") {
  const auto discarded = [](const QByteArray& containers) {
    return dip(1, "2026-11-03 09:00", {},
               "\"events\": [{\"what\": \"discarded\", \"at\": \"2026-11-03 12:00\"" + containers + "}]");
  };
  CHECK(candidates(dressing("2026-11-04 09:00") + discarded({})) == QStringList());
  CHECK(candidates(dressing("2026-11-03 11:00") + discarded({})).size() == 1);
  CHECK(candidates(dressing("2026-11-04 09:00") + discarded(", \"containers\": \"1-3\"")).size() == 1);
  const QByteArray stock =
      made("stock", 1, "2026-11-04 07:00", input("chicken-thigh", "2026-11-08"), cooked("2026-11-04 10:00"));
  const auto of_stock = [&](const QByteArray& made_at) {
    return made("dressing", 9, made_at, input("butter", kLater) + "," + input("stock", {}, "\"agreed_by\": \"MK\""));
  };
  CHECK(candidates(of_stock("2026-11-04 09:00") + stock) == QStringList());
  CHECK(candidates(of_stock("2026-11-04 10:00") + stock).size() == 1);
}

TEST_CASE("what is bought, and what has no number, is nobody's candidate", "[batch][candidates]") {
  std::vector<Record> records = records_of(dressing("2026-11-04 09:00") + dip(1, "2026-11-03 09:00"));
  CHECK(assumed(records).front().inputs.front().candidates == QStringList());
  CHECK(assumed(records).front().inputs.back().candidates.size() == 1);
  records.back().number.reset();
  CHECK(assumed(records).front().inputs.back().candidates == QStringList());
}

TEST_CASE("no two lots are taken to be made of one another", "[batch][candidates]") {
  // Leftovers of a dip go into a dip; nobody wrote which, and nobody when in the day.
  const QByteArray rework = "," + input("dip");
  const QByteArray lines = dip(1, "2026-11-03", rework) + dip(2, "2026-11-03", rework) + dip(3, "2026-11-02 09:00");
  const std::vector<Record> records = assumed(records_of(lines));
  const QStringList lots{lot_of_dip(1, "2026-11-03"), lot_of_dip(2, "2026-11-03"), lot_of_dip(3, "2026-11-02 09:00")};
  CHECK(records[0].inputs.back().candidates + records[1].inputs.back().candidates ==
        QStringList{lots[2], lots[2], lots[0]});
  for (const Fixed& fixed : fix_records(records)) CHECK(problem::text(fixed.batch.refused) == QString());
  // A lot that names the other has it as its source already.
  const QByteArray naming = "," + from_lot("dip", lots[1].toLatin1());
  const std::vector<Record> named = assumed(records_of(dip(1, "2026-11-03", naming) + dip(2, "2026-11-03", rework)));
  CHECK(named[1].inputs.back().candidates == QStringList());
}

TEST_CASE("a date is never later, and allergens never fewer, than with any of the lots named",
          "[batch][candidates][property]") {
  Random random(20261127);
  int compared = 0, refusals = 0;
  for (int round = 0; round < 150; ++round) {
    std::vector<Record> records = random_day(random);
    if (pick(random, 0, 4) == 0) records.front().inputs.front() = bought("mayonnaise", 0);  // past its date
    const auto pie = std::find_if(records.begin(), records.end(),
                                  [](const Record& one) { return one.item == QStringLiteral("fish-pie"); });
    const size_t at = static_cast<size_t>(pie - records.begin());
    const auto dip_in = std::find_if(pie->inputs.begin(), pie->inputs.end(),
                                     [](const Input& one) { return one.item == QStringLiteral("dip"); });
    const size_t in = static_cast<size_t>(dip_in - pie->inputs.begin());
    dip_in->lot.clear();
    const std::vector<Record> unknown = assumed(records);
    const std::vector<Fixed> any = fix_records(unknown);
    REQUIRE_FALSE(unknown[at].inputs[in].candidates.isEmpty());
    for (const QString& lot : unknown[at].inputs[in].candidates) {
      records[at].inputs[in].lot = lot;
      const std::vector<Fixed> named = fix_records(records);
      for (size_t i = 0; i < records.size(); ++i) {  // the pie, and what is baked of it
        if (!named[i].batch.refused.empty()) {
          CHECK_FALSE(any[i].batch.refused.empty());
          ++refusals;
          continue;
        }
        for (const book::Declaration& declaration : named[i].batch.declared.contains)
          CHECK(contains(any[i].batch, declaration.substance));
        CHECK((any[i].batch.previously_frozen || !named[i].batch.previously_frozen));
        if (!any[i].batch.refused.empty()) continue;
        CHECK(use_by_of(any[i], 0)->end <= use_by_of(named[i], 0)->end);
        ++compared;
      }
    }
  }
  CHECK(compared > 500);
  CHECK(refusals > 5);
}

TEST_CASE("the order of the file decides nothing of what may have gone into what", "[batch][candidates][property]") {
  Random random(3);
  for (int round = 0; round < 40; ++round) {
    std::vector<Record> records = random_day(random);
    for (Record& record : records)
      for (Input& input : record.inputs) input.lot.clear();
    const auto facts = [](const std::vector<Record>& of) {
      QStringList all;
      for (const Fixed& fixed : fix_records(assumed(of)))
        all += QString::fromUtf8(QJsonDocument(to_json(fixed)).toJson(QJsonDocument::Compact));
      all.sort();
      return all;
    };
    const QStringList before = facts(records);
    std::shuffle(records.begin(), records.end(), random);
    CHECK(facts(records) == before);
  }
}
