// The pages of a PDF as readers that share nothing with the program see them: the text, and what a scanner reads.
#pragma once

#include <QDate>
#include <QString>
#include <QStringList>
#include <QTime>
#include <optional>
#include <vector>

#include "program.h"

namespace lardiner::command {

struct Page {
  QString file;       ///< "lid.pdf"
  int number = 0;     ///< from 1
  QString text;       ///< as pdftotext reads it, every run of blanks one blank
  QStringList codes;  ///< what zbarimg reads from the page at 203 dots per inch, one bit a dot

  QString name() const { return QStringLiteral("%1, page %2").arg(file).arg(number); }
};

/// What is read first: what stands higher or further left on the page, or what the PDF draws first.
enum class Order { AsLaidOut, AsDrawn };

/// The texts of a PDF's pages. `pdf` is a path within the folder.
std::vector<Page> page_texts(const Folder& folder, const QString& pdf, Order order = Order::AsLaidOut);

/// The same with the codes.
std::vector<Page> pages(const Folder& folder, const QString& pdf);

/// The texts of the pages of all PDFs in a folder's folder, sorted: what was printed, whatever the order.
QStringList printed(const Folder& folder, const QString& name);

/// The date that a page's band shows.
struct Band {
  QString caption;  ///< USE BY, BEST BEFORE, FROZEN
  QDate date;       ///< its weekday was right
  std::optional<QTime> time;
};

/// The band as it is printed in English, weekday, day, month in letters, year; nothing when the page has none. Fails
/// the test when the weekday is not that of the date.
std::optional<Band> band(const Page& page);

/// Text without any blank or word joiner: what does not change where lines are broken.
QString unspaced(QString text);

}  // namespace lardiner::command
