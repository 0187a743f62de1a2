// The pages of a PDF as readers that share nothing with the program see them: the text, and what a scanner reads.
#include "pages.h"

#include <QDir>
#include <QFileInfo>
#include <QRegularExpression>

namespace lardiner::command {

namespace {

Ran silent(const Folder& folder, const QString& program, const QStringList& arguments) {
  const Ran ran = folder.run(program, arguments);
  INFO(program.toStdString() << ": " << ran.err.toStdString());
  REQUIRE(ran.status == 0);
  CHECK(ran.err == "");
  return ran;
}

// The pictures of all pages, in their order.
QStringList rasters(const Folder& folder, const QString& pdf) {
  const QString stem = QFileInfo(pdf).completeBaseName();
  const QString pictures = stem + "-pictures";
  REQUIRE(QDir().mkpath(folder.path(pictures)));
  silent(folder, "pdftoppm", {"-mono", "-r", "203", pdf, pictures + "/page"});
  QStringList names;
  for (const QString& name : folder.entries(pictures)) names << pictures + u'/' + name;
  return names;
}

// What zbarimg found, picture by picture: <source href='…'> … <![CDATA[…]]> … </source>. Its talk of a missing message
// bus on standard error is no fault.
std::vector<QStringList> scanned(const Folder& folder, const QStringList& pictures) {
  const QStringList options = {"-q", "--xml", "-S*.disable", "-Sqrcode.enable"};
  const QStringList sources = folder.run("zbarimg", options + pictures).out.split("<source ").mid(1);
  static const QRegularExpression kData(QStringLiteral("<!\\[CDATA\\[(.*?)\\]\\]>"));
  std::vector<QStringList> out(static_cast<size_t>(pictures.size()));
  for (const QString& source : sources) {
    const QString href = source.section(u'\'', 1, 1);
    const qsizetype at = pictures.indexOf(href);
    REQUIRE(at >= 0);
    for (auto match = kData.globalMatch(source); match.hasNext();)
      out[static_cast<size_t>(at)] << match.next().captured(1);
  }
  return out;
}

int month_of(const QString& letters) {
  static const QStringList kMonths = words("JAN FEB MAR APR MAY JUN JUL AUG SEP OCT NOV DEC");
  return static_cast<int>(kMonths.indexOf(letters)) + 1;
}

int weekday_of(const QString& letters) {
  static const QStringList kDays = words("MON TUE WED THU FRI SAT SUN");
  return static_cast<int>(kDays.indexOf(letters)) + 1;
}

}  // namespace

std::vector<Page> page_texts(const Folder& folder, const QString& pdf, Order order) {
  const char* by = order == Order::AsDrawn ? "-raw" : "-layout";
  const QString text = silent(folder, "pdftotext", {QLatin1String(by), pdf, "-"}).out;
  std::vector<Page> out;
  QStringList texts = text.split(u'\f');
  REQUIRE(texts.takeLast().isEmpty());
  for (const QString& page : texts)
    out.push_back({QFileInfo(pdf).fileName(), static_cast<int>(out.size()) + 1, page.simplified(), {}});
  return out;
}

std::vector<Page> pages(const Folder& folder, const QString& pdf) {
  std::vector<Page> out = page_texts(folder, pdf);
  const std::vector<QStringList> codes = scanned(folder, rasters(folder, pdf));
  REQUIRE(codes.size() == out.size());
  for (size_t i = 0; i < out.size(); ++i) out[i].codes = codes[i];
  return out;
}

QStringList printed(const Folder& folder, const QString& name) {
  QStringList out;
  for (const QString& pdf : folder.entries(name))
    for (const Page& page : page_texts(folder, name + u'/' + pdf)) out << page.file + u' ' + page.text;
  out.sort();
  return out;
}

std::optional<Band> band(const Page& page) {
  static const QRegularExpression kBand(QStringLiteral(
      "\\b(USE BY|BEST BEFORE|FROZEN)(?: · [\\p{Lu}\\p{Lo} ]+)? (?:(\\d{4}) )?([A-Z]{3}) (\\d\\d) ([A-Z]{3})"
      "(?: (\\d\\d:\\d\\d))?(?: (\\d{4}))?"));
  const auto match = kBand.match(page.text);
  if (!match.hasMatch()) return std::nullopt;
  const QString year = match.captured(2).isEmpty() ? match.captured(7) : match.captured(2);
  Band out{match.captured(1), QDate(year.toInt(), month_of(match.captured(5)), match.captured(4).toInt()), {}};
  INFO(page.name().toStdString() << ": " << page.text.toStdString());
  REQUIRE(out.date.isValid());
  REQUIRE(out.date.dayOfWeek() == weekday_of(match.captured(3)));
  if (!match.captured(6).isEmpty()) out.time = QTime::fromString(match.captured(6), QStringLiteral("HH:mm"));
  return out;
}

QString unspaced(QString text) {
  text.removeIf([](QChar c) { return c.isSpace() || c == QChar(0x2060); });  // a word joiner shows nothing
  return text;
}

}  // namespace lardiner::command
