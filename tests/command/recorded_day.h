// The demo kitchen with its day in the ledger: receipts in the morning, the batches, what befell them by the evening.
#pragma once

#include <memory>

#include "program.h"

namespace lardiner::command {

// Each test has a copy of a kitchen that was recorded once: recording takes long under the sanitizers.
struct RecordedDay {
  Folder folder;

  RecordedDay() : RecordedDay(kept()) {}

  Ran at(const QString& time, const QStringList& rest) const {
    return folder.lardiner(QStringList{"--kitchen", "kitchen", "--at", time} + rest);
  }
  Ran evening(const QStringList& rest) const { return at("2026-11-25T21:45", rest); }

 protected:
  struct New {};
  explicit RecordedDay(New /*unused*/) { folder.copy_book(kDemoKitchen, "kitchen"); }
  explicit RecordedDay(const RecordedDay& day) {
    REQUIRE(folder.run("cp", {"-a", day.folder.path("kitchen"), "."}).status == 0);
  }

 private:
  static const RecordedDay& kept() {
    static const std::unique_ptr<const RecordedDay> day = [] {
      std::unique_ptr<RecordedDay> made(new RecordedDay(New()));
      REQUIRE(made->at("2026-11-25T06:30", {"record", kDemoKitchen + "/events/morning.csv"}).status == 0);
      REQUIRE(made->at("2026-11-25T20:00", {"record", kDemoDay}).status == 0);
      return made;
    }();
    return *day;
  }
};

}  // namespace lardiner::command
