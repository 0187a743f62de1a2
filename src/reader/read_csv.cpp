// CSV to positioned rows: libcsv splits, fed byte by byte so that the place of each field is known.
#include <csv.h>

#include <QSet>
#include <cstdlib>
#include <limits>
#include <memory>

#include "reader/quote.h"
#include "reader/read.h"
#include "reader/source.h"

namespace lardiner::reader {

namespace {

using problem::Code;
using problem::Error;
using problem::Errors;
using problem::Place;

struct Cell {
  QString text;
  Place place;
};

int is_blank(unsigned char byte) { return byte == ' ' || byte == '\t' || byte == '\r' ? 1 : 0; }
int is_line_end(unsigned char byte) { return byte == '\n' ? 1 : 0; }

void* grow(void* block, size_t size) {
  void* grown = std::realloc(block, size);
  Q_CHECK_PTR(grown);
  return grown;
}

// The header row decides: more semicolons than commas outside quotes.
bool split_by_semicolons(const Source& source) {
  qsizetype semicolons = 0;
  qsizetype commas = 0;
  bool within = false;
  bool begun = false;
  for (qsizetype at = source.begin(); at < source.size(); ++at) {
    const char c = source.at(at);
    if (c == '"') within = !within;
    if (c == '\n' && !within && begun) break;
    begun = begun || is_blank(static_cast<unsigned char>(c)) == 0;
    if (!within && c == ';') ++semicolons;
    if (!within && c == ',') ++commas;
  }
  return semicolons > commas;
}

// What the first reading of a file found, all that is needed to read a row of it again.
struct CsvFile {
  CsvFile(const QByteArray& all, const QString& name) : bytes(all), source(bytes, name) {}
  CsvFile(const CsvFile&) = delete;
  CsvFile& operator=(const CsvFile&) = delete;

  QByteArray bytes;
  Source source;
  bool semicolons = false;
  bool has_header = false;
  std::vector<Cell> header;
  std::vector<quint32> starts;  // the first byte of each row
};

class CsvReading {
 public:
  explicit CsvReading(CsvFile& file) : file_(file), source_(file.source) { start_parser(); }
  ~CsvReading() { csv_free(&parser_); }
  CsvReading(const CsvReading&) = delete;
  CsvReading& operator=(const CsvReading&) = delete;

  /// Reads header and rows, and notes where they begin; what is wrong with the file.
  Errors read_all();
  /// REQUIRES: `read_all` of the file found nothing wrong.
  Value read_row(size_t at);

 private:
  void start_parser();
  void feed();
  void end_of_file();
  void take_field(const void* bytes, size_t size);
  void take_row();
  void take_header();
  void take_record();
  void stray_quote();
  void refuse_lone_return(qsizetype at);
  void refuse(Code code, const QString& what, const Place& place, const QString& hint);
  bool at_field_quoted() const { return field_ >= 0 && source_.at(field_) == '"'; }

  CsvFile& file_;
  Source& source_;
  csv_parser parser_{};
  qsizetype at_ = 0;      // the byte being fed
  qsizetype field_ = -1;  // the first byte of the field that is not blank, or -1
  qsizetype row_ = -1;    // the first such byte of the row, or -1
  bool stopped_ = false;
  std::vector<Cell> cells_;
  std::optional<Value> wanted_;  // of `read_row`
  bool one_row_ = false;
  Errors errors_;
};

Errors CsvReading::read_all() {
  for (at_ = source_.begin(); at_ < source_.size() && !stopped_; ++at_) feed();
  if (!stopped_) end_of_file();
  if (!file_.has_header && errors_.empty())
    refuse(Code::Missing, QStringLiteral("the file has no header row"), source_.file_place(),
           QStringLiteral("name the columns in the first row"));
  return std::move(errors_);
}

Value CsvReading::read_row(size_t at) {
  one_row_ = true;
  for (at_ = file_.starts[at]; at_ < source_.size() && !wanted_; ++at_) feed();
  if (!wanted_) end_of_file();
  return std::move(*wanted_);
}

void CsvReading::start_parser() {
  csv_init(&parser_, CSV_STRICT | CSV_STRICT_FINI);
  csv_set_delim(&parser_, file_.semicolons ? ';' : ',');
  csv_set_space_func(&parser_, is_blank);
  csv_set_term_func(&parser_, is_line_end);
  csv_set_realloc_func(&parser_, grow);
}

void CsvReading::feed() {
  const char byte = source_.at(at_);
  const bool separates = byte == static_cast<char>(csv_get_delim(&parser_));
  if (field_ < 0 && !separates && byte != '\n' && is_blank(static_cast<unsigned char>(byte)) == 0) field_ = at_;
  if (row_ < 0 && (field_ >= 0 || separates)) row_ = at_;
  const size_t taken = csv_parse(
      &parser_, &byte, 1,
      [](void* bytes, size_t size, void* self) { static_cast<CsvReading*>(self)->take_field(bytes, size); },
      [](int, void* self) { static_cast<CsvReading*>(self)->take_row(); }, this);
  if (taken != 1) stray_quote();
}

void CsvReading::end_of_file() {
  const int status = csv_fini(
      &parser_, [](void* bytes, size_t size, void* self) { static_cast<CsvReading*>(self)->take_field(bytes, size); },
      [](int, void* self) { static_cast<CsvReading*>(self)->take_row(); }, this);
  if (status != 0)
    refuse(Code::Syntax, QStringLiteral("this quote is never closed"), source_.place(field_, field_ + 1),
           QStringLiteral("close it, or write \"\" for a quote within a quoted field"));
}

void CsvReading::take_field(const void* bytes, size_t size) {
  QString text = QString::fromUtf8(static_cast<const char*>(bytes), static_cast<qsizetype>(size));
  if (field_ < 0) {
    cells_.push_back(Cell{});
    return;
  }
  qsizetype end = at_;
  while (end > field_ && is_blank(static_cast<unsigned char>(source_.at(end - 1))) != 0) --end;
  if (!at_field_quoted()) {
    text = text.trimmed();
    const qsizetype lone = source_.bytes().sliced(field_, end - field_).indexOf('\r');
    if (lone >= 0) refuse_lone_return(field_ + lone);
  }
  cells_.push_back(Cell{text, source_.place(field_, end)});
  field_ = -1;
}

void CsvReading::take_row() {
  if (stopped_) return;
  if (file_.has_header) {
    take_record();
  } else {
    take_header();
  }
  cells_.clear();
  row_ = -1;
}

void CsvReading::take_header() {
  file_.has_header = true;
  while (!cells_.empty() && cells_.back().text.trimmed().isEmpty()) cells_.pop_back();
  QSet<QString> seen;
  for (Cell& cell : cells_) {
    cell.text = cell.text.trimmed().toLower();
    if (cell.text.isEmpty())
      refuse(Code::Missing, QStringLiteral("column %1 has no name").arg(&cell - cells_.data() + 1),
             source_.line_place(row_), QStringLiteral("name every column in the first row"));
    else if (seen.contains(cell.text))
      refuse(Code::Duplicate, QStringLiteral("two columns are named ") + quoted(cell.text), cell.place,
             QStringLiteral("rename or remove one of them"));
    seen.insert(cell.text);
  }
  file_.header = std::move(cells_);
}

void CsvReading::take_record() {
  Value row;
  for (size_t i = 0; i < cells_.size(); ++i) {
    Cell& cell = cells_[i];
    if (cell.text.isEmpty()) continue;
    if (i >= file_.header.size()) {
      refuse(Code::Syntax,
             QStringLiteral("the row has more fields than the %1 columns of the header").arg(file_.header.size()),
             cell.place,
             QStringLiteral("quote a field that contains a %1, or name the column in the first row")
                 .arg(file_.semicolons ? QStringLiteral("semicolon") : QStringLiteral("comma")));
      return;
    }
    Value value;
    value.kind = Value::Kind::String;
    value.text = cell.text;
    value.place = cell.place;
    value.key_place = file_.header[i].place;
    row.entries.emplace_back(file_.header[i].text, std::move(value));
  }
  if (row.entries.empty()) return;
  if (!one_row_) {
    file_.starts.push_back(static_cast<quint32>(row_));
    return;
  }
  row.place = source_.line_place(row_);
  wanted_ = std::move(row);
}

// libcsv stopped at a quote that cannot stand there: told, the row dropped, and reading goes on with the next line,
// unless the field began on an earlier line, for then nobody knows which line breaks are in quotes.
void CsvReading::stray_quote() {
  const bool in_quoted = at_field_quoted();
  const qsizetype quote = in_quoted ? source_.bytes().lastIndexOf('"', at_ - 1) : at_;
  const bool lone_return = in_quoted && source_.bytes().sliced(quote, at_ - quote).contains('\r');
  if (lone_return) return refuse_lone_return(quote + source_.bytes().sliced(quote).indexOf('\r'));
  refuse(Code::Syntax,
         in_quoted ? QStringLiteral("more text follows the quote that closes this field")
                   : QStringLiteral("a quote stands within a field that does not begin with one"),
         source_.place(quote, quote + 1),
         QStringLiteral("put the whole field in quotes and double the quotes within: \"12\"\" tray\""));
  const qsizetype newline = source_.bytes().indexOf('\n', at_);
  if (newline < 0 || source_.bytes().sliced(field_, at_ - field_).contains('\n')) stopped_ = true;
  at_ = newline;
  csv_free(&parser_);
  start_parser();
  cells_.clear();
  field_ = -1;
  row_ = -1;
  if (!file_.has_header) stopped_ = true;
}

void CsvReading::refuse_lone_return(qsizetype at) {
  refuse(Code::Syntax, QStringLiteral("a carriage return ends this line without a line feed"),
         source_.place(at, at + 1), QStringLiteral("save the file with line ends LF or CRLF"));
  stopped_ = true;
}

void CsvReading::refuse(Code code, const QString& what, const Place& place, const QString& hint) {
  if (errors_.size() < kMostFaults) errors_.push_back(Error{code, what, place, hint});
  if (errors_.size() == kMostFaults) stopped_ = true;
}

}  // namespace

problem::ExpectedAll<Rows> csv_rows(const QByteArray& bytes, const QString& name) {
  const auto file = std::make_shared<CsvFile>(bytes, name);
  if (std::optional<Error> fault = file->source.unreadable(kMostBytes)) return tl::unexpected(Errors{*fault});
  file->semicolons = split_by_semicolons(file->source);
  Errors errors = CsvReading(*file).read_all();
  if (!errors.empty()) return tl::unexpected(std::move(errors));
  return Rows{file->starts.size(), [file](size_t at) { return CsvReading(*file).read_row(at); }, file->semicolons};
}

problem::ExpectedAll<CsvRows> read_csv(const QByteArray& bytes, const QString& file) {
  const problem::ExpectedAll<Rows> rows = csv_rows(bytes, file);
  if (!rows) return tl::unexpected(rows.error());
  CsvRows all{{}, rows->semicolons};
  all.rows.reserve(rows->count);
  for (size_t at = 0; at < rows->count; ++at) all.rows.push_back(rows->row(at));
  return all;
}

}  // namespace lardiner::reader
