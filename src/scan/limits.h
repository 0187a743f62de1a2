// What a process that reads foreign files may take of the machine.
#pragma once

#include <QtGlobal>

namespace lardiner::scan {

/// In use at the same time: the largest picture that is read takes 0.9 GB, turned upright from a JPEG.
constexpr qint64 kMostMemory = qint64{1} << 30;

constexpr int kOutOfMemory = 9;  ///< exit status of a process that takes more than that
constexpr int kOutOfTime = 10;   ///< of one that takes more processor time than it was given

/// From now on this process ends with kOutOfMemory soon after it uses more than kMostMemory, and gets nothing beyond
/// twice as much; it ends with kOutOfTime after so many seconds of processor time, and is killed when the program that
/// started it ends; it leaves no core file. REQUIRES: it was started to read one file.
void limit_this_process(int seconds);

/// Ends this process with kOutOfMemory, at once.
[[noreturn]] void end_without_memory();

}  // namespace lardiner::scan
