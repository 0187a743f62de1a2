// What a child process tells of the file that it reads, as bytes, and what is understood of as many as came.
#pragma once

#include <optional>

#include "scan/read_pictures.h"

namespace lardiner::scan {

/// One message each, to be written one after the other.
QByteArray begun_message(int page, int pages);
QByteArray found_message(const Code& code);
QByteArray end_message(const problem::Expected<Codes>& read);

struct Report {
  Codes codes;                          ///< those told, in the order told; `stopped` as the end said
  int page = 0;                         ///< the one begun last, from 1; 0: none was
  bool ended = false;                   ///< its last message came
  std::optional<problem::Error> error;  ///< the end was that the file is refused
};

/// A message that is cut short, and what cannot be one, ends the report; nothing of it is taken over.
Report report_of(const QByteArray& bytes);

}  // namespace lardiner::scan
