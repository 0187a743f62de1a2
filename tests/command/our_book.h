// The demo kitchen and its day as the layers below see them: what the pages are held against.
#pragma once

#include "batch/batch.h"
#include "command/kitchen.h"
#include "command/records.h"
#include "facts/label_facts.h"
#include "program.h"

namespace lardiner::command {

/// The evening of the demo day.
inline const QDateTime kEvening = QDateTime::fromString(QStringLiteral("2026-11-25T18:00:00-05:00"), Qt::ISODate);

inline Options demo_options() {
  Options options;
  options.kitchen = kDemoKitchen;
  options.data = QStringLiteral(LARDINER_SOURCE_DIR);
  return options;
}

template <class T>
T value_of(problem::ExpectedAll<T> value) {
  if (!value) FAIL(problem::text(value.error()).toStdString());
  return std::move(*value);
}

inline book::Book demo_book() { return value_of(usable_book(demo_options())); }

}  // namespace lardiner::command
