// The labels that show what a printer can do on a medium, and whether the medium is the one that it has.
#pragma once

#include <QByteArray>

#include "command/kitchen.h"

namespace lardiner::command {

struct TestLabels {
  QByteArray pdf;
  size_t labels = 0;
};

/// All of a medium's, on a sheet of labels behind a guide to its places; or the `first_alone`. Errors: a template that
/// cannot be read, a face that lacks a letter, a medium that is too small.
problem::ExpectedAll<TestLabels> test_labels(const Options& options, const book::Book& book, const book::Media& medium,
                                             const QDateTime& now, bool first_alone);

}  // namespace lardiner::command
