// The entries of a kitchen over years: batches in nine levels, each made of two lots of the level beneath.
#pragma once

#include <QString>
#include <vector>

#include "small_history.h"

namespace bench {

/// Batch `number` (from 0) stands on level `number` % kLevels; those of level 0 are made of a supplier's lot.
inline constexpr qint64 kLevels = 9;

/// Of the last so many batches the containers are still in the kitchen.
inline constexpr qint64 kHere = 2000;

QString lot(qint64 number);
QString item(qint64 number);
QDateTime made_at(qint64 number);

/// A batch of four tubs, all moved, all dispatched (two in the kitchen's last days), two of them arrived: ten events of
/// a container, in four entries.
std::vector<lardiner::history::Event> batch_events(qint64 number, qint64 of);

}  // namespace bench
