// What a file is by its bytes, and whether it is whole, before any library reads it.
#include "scan/file_kind.h"

#include <QtEndian>

namespace lardiner::scan {

namespace {

constexpr qsizetype kPdfTail = 4096;  // bytes in which a PDF's end line stands: some programs append to it

quint8 byte(const QByteArray& bytes, qsizetype at) { return static_cast<quint8>(bytes[at]); }

// The chunks of a PNG (ISO/IEC 15948, 5.3): length, type, data, check.
bool has_png_end(const QByteArray& bytes) {
  constexpr qsizetype kSignature = 8, kAround = 12;
  for (qsizetype at = kSignature; at + kAround <= bytes.size();) {
    if (bytes.mid(at + 4, 4) == "IEND") return true;
    at += kAround + qsizetype{qFromBigEndian<quint32>(bytes.constData() + at)};
  }
  return false;
}

// RIFF states the length of what follows its first eight bytes.
bool has_riff_end(const QByteArray& bytes) {
  return bytes.size() >= 12 && qsizetype{qFromLittleEndian<quint32>(bytes.constData() + 4)} + 8 <= bytes.size();
}

// The place of the marker that ends the data of a scan: within it 0xFF is followed by 0, or by a restart marker.
qsizetype after_scan_data(const QByteArray& bytes, qsizetype at) {
  constexpr quint8 kFirstRestart = 0xd0, kLastRestart = 0xd7;
  for (at = bytes.indexOf('\xff', at); at >= 0 && at + 1 < bytes.size(); at = bytes.indexOf('\xff', at + 1)) {
    const quint8 next = byte(bytes, at + 1);
    if (next != 0 && next != 0xff && (next < kFirstRestart || next > kLastRestart)) return at;
  }
  return bytes.size();
}

}  // namespace

FileKind kind_of(const QByteArray& bytes) {
  if (bytes.startsWith("\x89PNG\r\n\x1a\n")) return FileKind::Png;
  if (bytes.startsWith("\xff\xd8\xff")) return FileKind::Jpeg;
  if (bytes.startsWith("RIFF") && bytes.mid(8, 4) == "WEBP") return FileKind::WebP;
  if (bytes.startsWith("%PDF-")) return FileKind::Pdf;
  return FileKind::Other;
}

bool is_whole(const QByteArray& bytes, FileKind kind) {
  switch (kind) {
    case FileKind::Png:
      return has_png_end(bytes);
    case FileKind::Jpeg:
      return jpeg_scans(bytes) > 0;
    case FileKind::WebP:
      return has_riff_end(bytes);
    case FileKind::Pdf:
      return bytes.right(kPdfTail).contains("%%EOF");
    case FileKind::Other:
      break;
  }
  return false;
}

// Markers of ISO/IEC 10918-1, table B.1: each has 0xFF before it, and all but those without parameters a length after
// it.
int jpeg_scans(const QByteArray& bytes) {
  constexpr quint8 kEnd = 0xd9, kStartOfScan = 0xda;
  int scans = 0;
  for (qsizetype at = 2; at + 4 <= bytes.size() || (at + 2 <= bytes.size() && byte(bytes, at + 1) == kEnd);) {
    if (byte(bytes, at) != 0xff) return 0;
    const quint8 marker = byte(bytes, at + 1);
    if (marker == kEnd) return scans;
    if (marker == 0xff) {  // fill
      ++at;
      continue;
    }
    at += 2 + qsizetype{qFromBigEndian<quint16>(bytes.constData() + at + 2)};
    if (marker != kStartOfScan) continue;
    ++scans;
    at = after_scan_data(bytes, at);
  }
  return 0;
}

}  // namespace lardiner::scan
