// The demo kitchen with its day in the ledger: receipts in the morning, the batches, what befell them by the evening.
#pragma once

#include "program.h"

namespace lardiner::command {

struct RecordedDay {
  Folder folder;

  RecordedDay() {
    folder.copy_book(kDemoKitchen, "kitchen");
    REQUIRE(at("2026-11-25T06:30", {"record", kDemoKitchen + "/events/morning.csv"}).status == 0);
    REQUIRE(at("2026-11-25T20:00", {"record", kDemoDay}).status == 0);
  }

  Ran at(const QString& time, const QStringList& rest) const {
    return folder.lardiner(QStringList{"--kitchen", "kitchen", "--at", time} + rest);
  }
  Ran evening(const QStringList& rest) const { return at("2026-11-25T21:45", rest); }
};

}  // namespace lardiner::command
