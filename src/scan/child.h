// Reads a file's codes in a child process: a library that does not come to its end, breaks down, or asks for all
// memory takes nothing with it but that file.
#pragma once

#include <QStringList>

#include "scan/read_pictures.h"

namespace lardiner::scan {

/// A program that reads a file from its standard input by `read_for_parent`, told the seconds as its last argument.
struct Child {
  QString program;
  QStringList arguments;
};

/// As read_codes; besides, what does not come to its end is ended: kGrace seconds after those of the bounds, or where
/// it would take more memory than kMostMemory. What was found until then is given with `stopped` set; where nothing
/// was, it is an error (Range: time, memory; Malformed: it broke down; Machine: it could not be started). Nothing that
/// a library prints is seen.
problem::Expected<Codes> read_codes_in_child(const Child& child, const QByteArray& bytes, const QString& name,
                                             const Bounds& bounds);

/// What a page or a pass in hand may take when the time is up, in seconds.
constexpr int kGrace = 5;

/// The child's side: limits this process, reads, and hands each message of its report to `tell` as soon as there is
/// something to tell.
void read_for_parent(const QByteArray& bytes, int seconds, const std::function<void(const QByteArray&)>& tell);

}  // namespace lardiner::scan
