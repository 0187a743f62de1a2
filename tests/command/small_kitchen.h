// A folder with the small kitchen and records of its own, for runs that are refused.
#pragma once

#include "pages.h"

namespace lardiner::command {

/// Two good batches of 25 November 2026.
inline const QByteArray kGoodRecords =
    "row,product,number,quantity,made_at,by,containers,item,lot,use_by,opened\n"
    ",lime-butter,1,2 kg,2026-11-25 07:40,MK,4 tub 500 g,,,,\n"
    "input,,1,,,,,butter,MB-5521,2026-12-20,2026-11-25\n"
    ",seed-rub,2,400 g,2026-11-25 08:00,MK,4 tub 100 g,,,,\n";

struct SmallKitchen {
  Folder folder;

  SmallKitchen() {
    folder.copy_book(kSmallKitchen, "kitchen");
    folder.write("records.csv", kGoodRecords);
  }

  Ran labels(const QStringList& more, const QByteArray& input = {}) const {
    return folder.lardiner(QStringList{"--kitchen", "kitchen", "labels"} + more, input);
  }
  /// Nothing was written, and no draft was left behind.
  bool as_it_was() const { return folder.entries() == QStringList{"kitchen", "records.csv"}; }
};

}  // namespace lardiner::command
