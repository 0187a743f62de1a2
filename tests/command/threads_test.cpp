// What is written does not depend on the number of threads, and a run that is stopped leaves nothing.
#include <QCryptographicHash>

#include "batch/batch.h"
#include "command/label_job.h"
#include "our_book.h"
#include "small_kitchen.h"

using namespace lardiner;
using namespace lardiner::command;

namespace {

struct Printed {
  QStringList files;
  std::vector<QByteArray> hashes;
};

// The demo day's batches, and a folder for their labels.
struct Work {
  Options options = demo_options();
  book::Book book = demo_book();
  paper::Faces faces = value_of(read_faces(options));
  std::vector<words::Language> languages = value_of(read_languages(options));
  Run day = value_of(read_run(kDemoDay, RecordFormat::Guess, book, kEvening));
  problem::Expected<NewFolder> drafts;

  explicit Work(const Folder& folder)
      : drafts(NewFolder::beside(folder.path("labels"), NewFolder::Shape::Folder, false)) {
    REQUIRE(drafts.has_value());
  }
  std::vector<facts::LabelRun> runs(const batch::Batch& batch) const {
    return value_of(facts::label_runs(book, batch, languages, {}));
  }
};

// The demo day, and a batch of more labels than one PDF holds.
Printed printed(int threads) {
  const Folder folder;
  Work work(folder);
  work.options.threads = threads;
  {
    LabelJob job(work.options, work.book, work.faces, *work.drafts, QStringLiteral("Labels"), 1, false);
    for (const batch::Batch& batch : work.day.batches) {
      auto runs = work.runs(batch);
      if (&batch == &work.day.batches.front()) {
        auto& containers = runs.front().containers;
        while (containers.size() <= static_cast<size_t>(LabelJob::kMostLabels))
          containers.push_back(containers.front());
      }
      value_of(job.add(runs));
    }
    value_of(job.finish());
  }
  REQUIRE(work.drafts->keep().has_value());
  Printed out{folder.entries("labels"), {}};
  for (const QString& file : out.files)
    out.hashes.push_back(QCryptographicHash::hash(folder.read("labels/" + file), QCryptographicHash::Sha256).toHex());
  return out;
}

}  // namespace

TEST_CASE("labels are the same to the byte whatever the number of threads",
          "[command][labels][threads][src:practice]") {
  const Printed one = printed(1);
  CHECK(one.files.filter("-0002.pdf").size() == 1);
  for (const int threads : {3, 12}) {
    const Printed many = printed(threads);
    CHECK(many.files == one.files);
    CHECK(many.hashes == one.hashes);
  }
}

TEST_CASE("a job that is given up ends at once, though its labels were taken",
          "[command][labels][threads][src:practice]") {
  const Folder folder;
  {
    Work work(folder);
    LabelJob job(work.options, work.book, work.faces, *work.drafts, QStringLiteral("Labels"), 1, false);
    for (const batch::Batch& batch : work.day.batches) value_of(job.add(work.runs(batch)));
  }
  CHECK(folder.entries().isEmpty());
}

TEST_CASE("a run that is told to stop leaves neither labels nor a draft, and ends by the signal",
          "[command][labels][threads][src:practice]") {
  const SmallKitchen kitchen;
  QByteArray records = "product,number,quantity,made_at,by,containers\n";
  for (int n = 1; n <= 40; ++n)
    records += "seed-rub," + QByteArray::number(n) + ",500 kg,2026-11-25 08:00,MK,4500 tub 100 g\n";
  kitchen.folder.write("records.csv", records);
  const Ran ran = kitchen.folder.run(
      "sh",
      {"-c", "'" LARDINER_PROGRAM "' --kitchen kitchen --at 2026-11-25T18:00 labels records.csv --out labels & "
             "while [ -z \"$(ls .labels*/ 2>/dev/null)\" ]; do sleep 0.05; done; kill -TERM $!; wait $!; exit $?"});
  CHECK(ran.status == 128 + 15);
  CHECK(ran.out == "");
  CHECK(kitchen.as_it_was());
}
