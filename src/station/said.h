// What the labels of lots say, kept while nothing befalls them: many phones ask for the same few lots.
#pragma once

#include <QHash>
#include <QString>
#include <optional>
#include <utility>
#include <vector>

namespace lardiner::station {

/// A line of a label.
struct Said {
  QString text;
  bool large = false;
};

/// Of one desk. What is kept of a lot holds for one `state` of it (ledger::Lots::age).
class SaidBefore {
 public:
  using Lines = std::vector<Said>;

  /// Nothing where they are not kept. The pointer holds until the next call.
  const Lines* find(qint64 lot, int container, qint64 state);
  void keep(qint64 lot, int container, qint64 state, Lines lines);
  void forget() { lines_.clear(); }  ///< the book says otherwise

 private:
  struct Kept {
    qint64 state;
    Lines lines;
  };
  QHash<std::pair<qint64, int>, Kept> lines_;
};

}  // namespace lardiner::station
