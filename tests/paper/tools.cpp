// Runs the independent readers of PDF and reads the bitmaps that they draw.
#include "tools.h"

#include <QFile>
#include <QProcess>
#include <QStandardPaths>
#include <map>

#include "show.h"

namespace lardiner::paper {

Ran run(const QString& program, const QStringList& arguments) {
  static const std::map<QString, const char*> package = {{QStringLiteral("pdftoppm"), "poppler-utils"},
                                                         {QStringLiteral("pdftotext"), "poppler-utils"},
                                                         {QStringLiteral("pdfinfo"), "poppler-utils"},
                                                         {QStringLiteral("pdffonts"), "poppler-utils"},
                                                         {QStringLiteral("mutool"), "mupdf-tools"},
                                                         {QStringLiteral("gs"), "ghostscript"},
                                                         {QStringLiteral("qpdf"), "qpdf"}};
  if (QStandardPaths::findExecutable(program).isEmpty())
    FAIL("install the Debian package " << package.at(program) << ": the test needs " << program.toStdString());
  QProcess process;
  process.start(program, arguments);
  constexpr int kPatience = 60000;  // ms
  if (!process.waitForFinished(kPatience)) FAIL(program.toStdString() << " did not finish");
  return {process.exitCode(), process.readAllStandardOutput(), process.readAllStandardError()};
}

QString Folder::write(const QString& name, const QByteArray& bytes) const {
  QFile file(path(name));
  REQUIRE(file.open(QIODevice::WriteOnly));
  REQUIRE(file.write(bytes) == bytes.size());
  return path(name);
}

QByteArray Folder::read(const QString& name) const {
  QFile file(path(name));
  REQUIRE(file.open(QIODevice::ReadOnly));
  return file.readAll();
}

namespace {

// The next number of a PNM header; comments run from # to the line's end.
int header_number(const QByteArray& bytes, qsizetype& at) {
  while (at < bytes.size() && (bytes[at] < '0' || bytes[at] > '9')) {
    if (bytes[at] == '#') at = bytes.indexOf('\n', at);
    ++at;
  }
  int number = 0;
  for (; at < bytes.size() && bytes[at] >= '0' && bytes[at] <= '9'; ++at) number = number * 10 + (bytes[at] - '0');
  return number;
}

Picture drawn_by(const QString& program, const QStringList& arguments, const Folder& folder, const QString& file) {
  const Ran ran = run(program, arguments);
  INFO(program.toStdString() << ": " << ran.err.toStdString());
  REQUIRE(ran.status == 0);
  CHECK(ran.err == "");
  return picture(folder.read(file));
}

}  // namespace

Picture picture(const QByteArray& bytes) {
  const bool bits = bytes.startsWith("P4");
  REQUIRE((bits || bytes.startsWith("P5")));
  qsizetype at = 2;
  Picture picture;
  picture.width = header_number(bytes, at);
  picture.height = header_number(bytes, at);
  if (!bits) REQUIRE(header_number(bytes, at) == 255);
  ++at;
  const qsizetype row = bits ? (picture.width + 7) / 8 : picture.width;
  REQUIRE(bytes.size() - at == row * picture.height);
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x) {
      const auto byte = static_cast<unsigned char>(bytes[at + row * y + (bits ? x / 8 : x)]);
      const bool black = bits && ((byte >> (7 - x % 8)) & 1) != 0;
      picture.grey.push_back(bits ? (black ? 0 : 255) : byte);
    }
  return picture;
}

const std::vector<Renderer>& renderers() {
  static const std::vector<Renderer> all = {
      {QStringLiteral("poppler"),
       [](const Folder& folder, const QString& pdf, int page, int dpi) {
         const QString number = QString::number(page);
         return drawn_by(
             QStringLiteral("pdftoppm"),
             {QStringLiteral("-mono"), QStringLiteral("-singlefile"), QStringLiteral("-r"), QString::number(dpi),
              QStringLiteral("-f"), number, QStringLiteral("-l"), number, pdf, folder.path(QStringLiteral("page"))},
             folder, QStringLiteral("page.pbm"));
       }},
      {QStringLiteral("MuPDF"),
       [](const Folder& folder, const QString& pdf, int page, int dpi) {
         return drawn_by(QStringLiteral("mutool"),
                         {QStringLiteral("draw"), QStringLiteral("-q"), QStringLiteral("-N"), QStringLiteral("-r"),
                          QString::number(dpi), QStringLiteral("-o"), folder.path(QStringLiteral("page.pbm")), pdf,
                          QString::number(page)},
                         folder, QStringLiteral("page.pbm"));
       }},
      {QStringLiteral("Ghostscript"), [](const Folder& folder, const QString& pdf, int page, int dpi) {
         const QString number = QString::number(page);
         return drawn_by(QStringLiteral("gs"),
                         {QStringLiteral("-q"), QStringLiteral("-dNOPAUSE"), QStringLiteral("-dBATCH"),
                          QStringLiteral("-sDEVICE=pbmraw"), QStringLiteral("-r") + QString::number(dpi),
                          QStringLiteral("-dFirstPage=") + number, QStringLiteral("-dLastPage=") + number,
                          QStringLiteral("-sOutputFile=") + folder.path(QStringLiteral("page.pbm")), pdf},
                         folder, QStringLiteral("page.pbm"));
       }}};
  return all;
}

const Faces& shipped_faces() {
  static const Faces faces = [] {
    problem::Expected<Faces> loaded = Faces::load(QStringLiteral(LARDINER_SOURCE_DIR "/fonts"));
    if (!loaded) FAIL(problem::text(loaded.error()).toStdString());
    return *loaded;
  }();
  return faces;
}

std::vector<char32_t> visible_characters(FaceId face) {
  std::vector<char32_t> all;
  for (char32_t c : shipped_faces()[face].characters()) {
    const QString text = QString::fromUcs4(&c, 1);
    if (shipped_faces().prints(c) && shipped_faces().has(family_of(face), c) &&
        !is_invisible(static_cast<char16_t>(c)) && !QChar::isSpace(c) &&
        text.normalized(QString::NormalizationForm_C) == text)
      all.push_back(c);
  }
  return all;
}

}  // namespace lardiner::paper
