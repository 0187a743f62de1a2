// The bytes of one file, and where in it an offset stands for a person.
#pragma once

#include <QByteArray>
#include <optional>
#include <vector>

#include "problem/error.h"

namespace lardiner::reader {

/// Turns byte offsets into places. Meant for visits in the order of the file, which cost no more than the bytes passed
/// over; going back within a line costs that line anew.
class Source {
 public:
  /// `bytes` must outlive this. Until `unreadable` has found nothing, call nothing else.
  Source(const QByteArray& bytes, QString file);

  /// What forbids reading at all: more than `most` bytes, not UTF-8, a NUL.
  std::optional<problem::Error> unreadable(qsizetype most);

  /// The first byte after a byte order mark.
  qsizetype begin() const { return begin_; }
  qsizetype size() const { return bytes_.size(); }
  char at(qsizetype offset) const { return bytes_[offset]; }
  QByteArrayView bytes() const { return bytes_; }

  /// The place of the bytes [begin, end), its width ending with the line. REQUIRES: 0 <= begin <= size().
  problem::Place place(qsizetype begin, qsizetype end);
  /// The place of the whole file: its name alone.
  problem::Place file_place() const { return problem::Place{file_, 0, 0, {}, 1, 1}; }
  /// The place of the whole line in which `offset` stands: column 0.
  problem::Place line_place(qsizetype offset);
  /// The offset of a line and column, both from 1; a column beyond the line's end is its end.
  qsizetype offset(qsizetype line, qsizetype column);
  /// The offset so many code points after `begin`, or the end of the file.
  qsizetype after(qsizetype begin, qsizetype letters) const;
  /// The end of the line in which `offset` stands, its line break not included.
  qsizetype line_end(qsizetype offset) const;

 private:
  struct Cursor {
    qsizetype line = 0;  // from 0
    qsizetype offset = 0;
    qsizetype column = 1;
  };
  problem::Place place_of_malformed(qsizetype at) const;
  void move_to_line(qsizetype line);
  void move_to(qsizetype offset);
  void show_line(problem::Place& place);
  QString window(qsizetype from, qsizetype column);

  const QByteArray& bytes_;
  QString file_;
  qsizetype begin_ = 0;
  std::vector<quint32> line_starts_;
  Cursor cursor_;
  qsizetype short_line_ = -1;  // the line whose text stands in short_text_, shared by all places in it
  QString short_text_;
};

/// The offset of the first byte that is not part of well-formed UTF-8, or -1.
qsizetype first_malformed(QByteArrayView bytes);

}  // namespace lardiner::reader
