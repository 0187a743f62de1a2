// What a child process tells of the file that it reads, as bytes, and what is understood of as many as came.
#include "scan/report.h"

#include <QDataStream>

namespace lardiner::scan {

namespace {

enum class Kind : quint8 { Begun = 1, Found, Read, Refused };

QDataStream& operator<<(QDataStream& stream, const Code& code) {
  stream << code.text << code.format << code.page << code.pass;
  for (const QPoint& corner : code.corners) stream << corner;
  return stream;
}
QDataStream& operator>>(QDataStream& stream, Code& code) {
  stream >> code.text >> code.format >> code.page >> code.pass;
  for (QPoint& corner : code.corners) stream >> corner;
  return stream;
}

// The place is the caller's to know.
QDataStream& operator<<(QDataStream& stream, const problem::Error& error) {
  return stream << static_cast<quint8>(error.code) << error.what << error.hint;
}
QDataStream& operator>>(QDataStream& stream, problem::Error& error) {
  quint8 code = 0;
  stream >> code >> error.what >> error.hint;
  error.code = code == static_cast<quint8>(problem::Code::Range) ? problem::Code::Range : problem::Code::Malformed;
  return stream;
}

template <class... Parts>
QByteArray message(Kind kind, const Parts&... parts) {
  QByteArray bytes;
  QDataStream stream(&bytes, QDataStream::WriteOnly);
  stream << static_cast<quint8>(kind);
  (stream << ... << parts);
  return bytes;
}

// Whether the parts were all there.
template <class... Parts>
bool read(QDataStream& stream, Parts&... parts) {
  (stream >> ... >> parts);
  return stream.status() == QDataStream::Ok;
}

// Takes the next message over; false where there is none.
bool take(QDataStream& stream, Report& report) {
  quint8 kind = 0;
  if (!read(stream, kind)) return false;
  switch (static_cast<Kind>(kind)) {
    case Kind::Begun: {
      int page = 0, pages = 0;
      if (!read(stream, page, pages)) return false;
      report.page = page;
      report.codes.pages = pages;
      return true;
    }
    case Kind::Found: {
      Code code;
      if (!read(stream, code)) return false;
      report.codes.codes.push_back(code);
      return true;
    }
    case Kind::Read: {
      QString stopped;
      if (!read(stream, stopped)) return false;
      report.codes.stopped = stopped;
      report.ended = true;
      return false;
    }
    case Kind::Refused: {
      problem::Error error;
      if (!read(stream, error)) return false;
      report.error = error;
      report.ended = true;
      return false;
    }
  }
  return false;
}

}  // namespace

QByteArray begun_message(int page, int pages) { return message(Kind::Begun, page, pages); }

QByteArray found_message(const Code& code) { return message(Kind::Found, code); }

QByteArray end_message(const problem::Expected<Codes>& read) {
  return read ? message(Kind::Read, read->stopped) : message(Kind::Refused, read.error());
}

Report report_of(const QByteArray& bytes) {
  QDataStream stream(bytes);
  Report report;
  while (take(stream, report)) {
  }
  return report;
}

}  // namespace lardiner::scan
