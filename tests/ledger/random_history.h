// Histories by chance: receipts, batches of batches, and all that can befall their containers.
#pragma once

#include <QStringList>
#include <random>
#include <vector>

#include "small_history.h"

namespace lardiner::ledger {

/// Gives one event after the other, some of which cannot happen; the same for the same seed.
class RandomHistory {
 public:
  explicit RandomHistory(unsigned seed) : random_(seed) {}

  history::Event next();
  const QStringList& lots() const { return lots_; }  ///< of ours
  QDateTime now() const { return now_; }

 private:
  int below(int most) { return static_cast<int>(random_() % static_cast<unsigned>(most)); }
  QString supplier_item();
  history::Event batch();
  history::Event befalls();
  history::Event about_many();

  std::mt19937 random_;
  QDateTime now_ = kMorning;
  QStringList lots_, bought_;
  int entries_ = 0;
};

}  // namespace lardiner::ledger
