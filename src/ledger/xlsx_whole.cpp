// Whether an XLSX holds all that was put into it: libxlsxwriter 1.1.4 says "no error" where a full disk cut its
// temporary files off.
#include "ledger/xlsx_whole.h"

#include <zlib.h>

#include <QFile>
#include <QXmlStreamReader>
#include <QtEndian>
#include <vector>

namespace lardiner::ledger {

namespace {

// A file in a ZIP, as APPNOTE.TXT describes its headers (4.3.7, 4.3.12, 4.3.16; from memory).
struct Part {
  QByteArray name;
  const uchar* bytes = nullptr;  // deflated
  quint32 size = 0, whole_size = 0;
};

constexpr qint64 kEndRecord = 22, kEntry = 46, kLocal = 30;
constexpr quint32 kEndSign = 0x06054b50, kEntrySign = 0x02014b50, kLocalSign = 0x04034b50;

// What lies in memory, never read past its end.
class Zip {
 public:
  Zip(const uchar* bytes, qint64 size) : bytes_(bytes), size_(size) {}

  /// Nothing where it is cut off anywhere.
  std::optional<std::vector<Part>> parts() const {
    const qint64 end = size_ - kEndRecord;  // xlsxwriter writes no comment behind it
    if (end < 0 || number(end) != kEndSign) return std::nullopt;
    std::vector<Part> parts;
    qint64 at = number(end + 16);
    for (int count = half(end + 10); count > 0; --count) {
      const std::optional<Part> part = entry(at);
      if (!part) return std::nullopt;
      parts.push_back(*part);
      at += kEntry + half(at + 28) + half(at + 30) + half(at + 32);
    }
    return parts;
  }

 private:
  std::optional<Part> entry(qint64 at) const {
    if (at + kEntry > size_ || number(at) != kEntrySign || at + kEntry + half(at + 28) > size_) return std::nullopt;
    const qint64 local = number(at + 42);
    if (local + kLocal > size_ || number(local) != kLocalSign) return std::nullopt;
    const qint64 from = local + kLocal + half(local + 26) + half(local + 28);
    const Part part{QByteArray(reinterpret_cast<const char*>(bytes_ + at + kEntry), half(at + 28)), bytes_ + from,
                    number(at + 20), number(at + 24)};
    return from + part.size > size_ ? std::nullopt : std::optional(part);
  }
  quint16 half(qint64 at) const { return qFromLittleEndian<quint16>(bytes_ + at); }
  quint32 number(qint64 at) const { return qFromLittleEndian<quint32>(bytes_ + at); }

  const uchar* bytes_;
  qint64 size_;
};

// The elements of one part, as they come out of it.
class Counting {
 public:
  void add(const char* bytes, qsizetype count) {
    xml_.addData(QByteArray::fromRawData(bytes, count));
    while (!xml_.atEnd()) {
      if (xml_.readNext() != QXmlStreamReader::StartElement) continue;
      if (xml_.name() == QLatin1String("row")) ++size_.rows;
      if (xml_.name() == QLatin1String("c")) ++size_.cells;
    }
  }
  bool whole() const { return xml_.atEnd() && !xml_.hasError(); }
  SheetSize size() const { return size_; }

 private:
  QXmlStreamReader xml_;
  SheetSize size_;
};

std::optional<SheetSize> read(const Part& part) {
  constexpr uInt kPiece = 1 << 16;
  std::vector<Bytef> piece(kPiece);
  z_stream stream{};
  if (inflateInit2(&stream, -MAX_WBITS) != Z_OK) return std::nullopt;
  stream.next_in = const_cast<Bytef*>(part.bytes);  // which zlib does not change
  stream.avail_in = part.size;
  Counting counting;
  int result = Z_OK;
  while (result == Z_OK) {
    stream.next_out = piece.data();
    stream.avail_out = kPiece;
    result = inflate(&stream, Z_NO_FLUSH);
    counting.add(reinterpret_cast<const char*>(piece.data()), kPiece - stream.avail_out);
  }
  const bool all = result == Z_STREAM_END && stream.total_out == part.whole_size;
  inflateEnd(&stream);
  return all && counting.whole() ? std::optional(counting.size()) : std::nullopt;
}

}  // namespace

std::optional<SheetSize> size_of_sheet(const QString& path) {
  QFile file(path);
  if (!file.open(QFile::ReadOnly)) return std::nullopt;
  const uchar* bytes = file.map(0, file.size());
  if (!bytes) return std::nullopt;
  const auto parts = Zip(bytes, file.size()).parts();
  if (!parts) return std::nullopt;
  std::optional<SheetSize> sheet;
  for (const Part& part : *parts) {
    const std::optional<SheetSize> size = read(part);
    if (!size) return std::nullopt;
    if (part.name == "xl/worksheets/sheet1.xml") sheet = size;
  }
  return sheet;
}

}  // namespace lardiner::ledger
