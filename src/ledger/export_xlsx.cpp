// The traceability spreadsheet as XLSX (ISO/IEC 29500): the rows of export_rows with real dates, times and numbers.
#include "ledger/export_xlsx.h"

#include <fcntl.h>
#include <locale.h>
#include <unistd.h>
#include <xlsxwriter.h>

#include <QFile>
#include <QFileInfo>
#include <optional>

#include "ledger/xlsx_whole.h"

namespace lardiner::ledger {

using problem::Error;

namespace {

constexpr lxw_row_t kMostRows = LXW_ROW_MAX - 1;  // beneath the names

// 2000-01-01T00:00:00Z, as the creation of every file: what is in it says when it happened.
constexpr time_t kCreated = 946'684'800;

// xlsxwriter prints what goes wrong to standard error as well, in words of its own: meanwhile nothing stands there.
class Silence {
 public:
  Silence() : kept_(::dup(STDERR_FILENO)) {
    const int nothing = ::open("/dev/null", O_WRONLY | O_CLOEXEC);
    if (kept_ >= 0 && nothing >= 0) ::dup2(nothing, STDERR_FILENO);
    if (nothing >= 0) ::close(nothing);
  }
  ~Silence() {
    if (kept_ < 0) return;
    ::dup2(kept_, STDERR_FILENO);
    ::close(kept_);
  }
  Silence(const Silence&) = delete;
  Silence& operator=(const Silence&) = delete;

 private:
  int kept_;
};

// xlsxwriter prints numbers as the locale has them, a comma for the point: meanwhile this thread has the locale of C.
class PlainNumbers {
 public:
  PlainNumbers() : plain_(::newlocale(LC_ALL_MASK, "C", nullptr)), kept_(::uselocale(plain_)) {}
  ~PlainNumbers() {
    ::uselocale(kept_);
    ::freelocale(plain_);
  }
  PlainNumbers(const PlainNumbers&) = delete;
  PlainNumbers& operator=(const PlainNumbers&) = delete;

 private:
  locale_t plain_, kept_;
};

// A sheet that is written row by row, by way of files without a name beside it: on the disk that must have room for it
// anyway.
class Sheet {
 public:
  explicit Sheet(const QString& path) {
    const Silence silence;
    QByteArray folder = QFile::encodeName(QFileInfo(path).absolutePath());
    lxw_workbook_options options{};
    options.constant_memory = LXW_TRUE;
    options.tmpdir = folder.data();
    book_ = workbook_new_opt(QFile::encodeName(path).constData(), &options);
    if (!book_) return;
    lxw_doc_properties properties{};
    properties.created = kCreated;
    workbook_set_properties(book_, &properties);
    sheet_ = workbook_add_worksheet(book_, "traceability");
    if (!sheet_) return;
    head_ = workbook_add_format(book_);
    format_set_bold(head_);
    date_ = format("yyyy-mm-dd");
    time_ = format("hh:mm:ss");
    worksheet_freeze_panes(sheet_, 1, 0);
    worksheet_set_column(sheet_, 0, static_cast<lxw_col_t>(export_columns().size() - 1), kWidth, nullptr);
    put_names();
  }
  ~Sheet() {
    if (book_) workbook_close(book_);
  }
  Sheet(const Sheet&) = delete;
  Sheet& operator=(const Sheet&) = delete;

  bool put(const Row& row) {
    if (!sheet_ || rows_ >= kMostRows) return false;
    ++rows_;
    for (size_t column = 0; column < row.size(); ++column) {
      column_ = static_cast<lxw_col_t>(column);
      const QString* text = std::get_if<QString>(&row[column]);
      if (text && text->isEmpty()) continue;
      ++cells_;
      if (std::visit(*this, row[column]) != LXW_NO_ERROR) return false;
    }
    return true;
  }

  lxw_error operator()(const QString& text) {
    return worksheet_write_string(sheet_, rows_, column_, text.toUtf8().constData(), nullptr);
  }
  lxw_error operator()(Millionths value) {
    return worksheet_write_number(sheet_, rows_, column_, static_cast<double>(value.amount) / 1e6, nullptr);
  }
  lxw_error operator()(QDate date) {
    lxw_datetime day{date.year(), date.month(), date.day(), 0, 0, 0};
    return worksheet_write_datetime(sheet_, rows_, column_, &day, date_);
  }
  lxw_error operator()(QTime time) {
    lxw_datetime moment{0, 0, 0, time.hour(), time.minute(), static_cast<double>(time.second())};
    return worksheet_write_datetime(sheet_, rows_, column_, &moment, time_);
  }

  bool full() const { return rows_ >= kMostRows; }

  /// With the names of the columns.
  SheetSize size() const { return {rows_ + 1, cells_ + export_columns().size()}; }

  /// Writes the file; what went wrong.
  std::optional<QString> close() {
    if (!sheet_) return QStringLiteral("no file could be made beside it");
    const Silence silence;
    worksheet_autofilter(sheet_, 0, 0, rows_, static_cast<lxw_col_t>(export_columns().size() - 1));
    const lxw_error error = workbook_close(book_);
    book_ = nullptr;
    if (error == LXW_NO_ERROR) return std::nullopt;
    return QString::fromUtf8(lxw_strerror(error));
  }

 private:
  static constexpr double kWidth = 18;  // characters

  lxw_format* format(const char* pattern) {
    lxw_format* made = workbook_add_format(book_);
    format_set_num_format(made, pattern);
    return made;
  }

  void put_names() {
    lxw_col_t column = 0;
    for (const QString& name : export_columns())
      worksheet_write_string(sheet_, 0, column++, name.toUtf8().constData(), head_);
  }

  PlainNumbers numbers_;
  lxw_workbook* book_ = nullptr;
  lxw_worksheet* sheet_ = nullptr;
  lxw_format *head_ = nullptr, *date_ = nullptr, *time_ = nullptr;
  lxw_row_t rows_ = 0;
  lxw_col_t column_ = 0;
  qint64 cells_ = 0;
};

Error not_written(const QString& path, const QString& why) {
  return {problem::Code::Machine, QStringLiteral("the spreadsheet could not be written: %1").arg(why), at_file(path),
          QStringLiteral("see that the disk has room and that the folder may be written")};
}

// What xlsxwriter says is not relied upon: see xlsx_whole.h.
bool is_on_disk(const QString& path, const SheetSize& size) {
  QFile file(path);
  return size_of_sheet(path) == size && file.open(QFile::ReadWrite | QFile::ExistingOnly) &&
         ::fsync(file.handle()) == 0;
}

Error too_many(const QString& path) {
  return {problem::Code::Machine, QStringLiteral("there are more rows than a sheet holds (%1)").arg(kMostRows),
          at_file(path), QStringLiteral("export fewer days, or a .csv")};
}

}  // namespace

problem::Expected<qint64> write_xlsx(Ledger& ledger, const ExportScope& scope, const ExportKitchen& kitchen,
                                     const QString& path) {
  Sheet sheet(path);
  bool put_all = true;
  const auto rows = each_export_row(ledger, scope, kitchen, [&](const Row& row) { return put_all = sheet.put(row); });
  if (!rows) return rows;
  const bool full = sheet.full();
  const std::optional<QString> fault = sheet.close();
  if (!put_all && full) return tl::unexpected(too_many(path));
  if (fault) return tl::unexpected(not_written(path, *fault));
  if (!put_all) return tl::unexpected(not_written(path, QStringLiteral("a cell was refused")));
  if (!is_on_disk(path, sheet.size()))
    return tl::unexpected(not_written(path, QStringLiteral("not all of it came to the disk")));
  return rows;
}

}  // namespace lardiner::ledger
