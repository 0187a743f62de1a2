// What the shipped faces print, what they refuse, and how wide a text is.
#include "paper/face.h"

#include <QDir>
#include <QDirIterator>
#include <QFile>
#include <algorithm>
#include <thread>

#include "paper/printable.h"
#include "show.h"
#include "tools.h"

namespace lardiner::paper {

namespace {

QString printed(const QString& text) {
  const problem::Expected<QString> result = shipped_faces().printable(text);
  if (!result) FAIL(problem::text(result.error()).toStdString());
  return *result;
}

QString refused(const QString& text) {
  const problem::Expected<QString> result = shipped_faces().printable(text);
  REQUIRE_FALSE(result);
  CHECK(result.error().code == problem::Code::NoGlyph);
  return problem::text(result.error());
}

}  // namespace

TEST_CASE("a folder without the faces is refused, naming the file", "[paper][face]") {
  const problem::Expected<Faces> faces = Faces::load(QStringLiteral("nowhere"));
  REQUIRE_FALSE(faces);
  CHECK(problem::text(faces.error()) ==
        QStringLiteral("the face nowhere/AtkinsonHyperlegibleNext-Regular.ttf cannot be read\n"
                       "  install Lardiner again: its fonts folder belongs to it"));
}

TEST_CASE("a file that is no face is refused", "[paper][face]") {
  const Folder folder;
  folder.write(QStringLiteral("AtkinsonHyperlegibleNext-Regular.ttf"), "not a face");
  const problem::Expected<Faces> faces = Faces::load(folder.path(QString()));
  REQUIRE_FALSE(faces);
  CHECK(faces.error().code == problem::Code::Machine);
}

TEST_CASE("Latin text with accents, fractions, degrees and dashes is printable", "[paper][face]") {
  for (const QString& text : {QStringLiteral("Jalapeño, crème brûlée, Süß, Smørrebrød, Žilina, Łódź"),
                              QStringLiteral("½ ¼ ¾ ° − – — · “ ” ‘ ’ … × € £"), QStringLiteral("500 g"), QString()})
    CHECK(printed(text) == text);
}

TEST_CASE("every word of every shipped language is printable", "[paper][face]") {
  const QDir folder(QStringLiteral(LARDINER_SOURCE_DIR "/templates/words"));
  const QStringList files = folder.entryList({QStringLiteral("*.toml")}, QDir::Files);
  CHECK(files.size() >= 8);
  for (const QString& name : files) {
    QFile file(folder.filePath(name));
    REQUIRE(file.open(QIODevice::ReadOnly));
    for (const QString& line : QString::fromUtf8(file.readAll()).split(u'\n')) CHECK(printed(line) == line);
  }
}

TEST_CASE("the names of Chinese days and months, which come from CLDR, are printable", "[paper][face]") {
  for (const QString& date : {QStringLiteral("2026年12月1日 周一周二周三周四周五周六周日"), QStringLiteral("星期日")})
    CHECK(printed(date) == date);
}

TEST_CASE("letters and their accents are composed", "[paper][face]") {
  CHECK(printed(QStringLiteral("Jalapen\u0303o")) == QStringLiteral("Jalapeño"));
  CHECK(printed(QStringLiteral("190 \u212A")) == QStringLiteral("190 K"));
}

TEST_CASE("a mark that composes with no letter is refused", "[paper][face]") {
  CHECK(refused(QStringLiteral("x\u0303o")) ==
        QStringLiteral("\"x\u0303o\" has U+0303 as character 2, a combining mark that makes no single letter with the "
                       "one before it\n"
                       "  use a letter that has its accent in it, or leave the mark out"));
}

TEST_CASE("a character that a face lacks is refused by its number and place", "[paper][face]") {
  CHECK(refused(QStringLiteral("2♨ cups")) ==
        QStringLiteral("\"2♨ cups\" has ♨ (U+2668) as character 2, which the label faces do not have\n"
                       "  write it in Latin, Greek, Cyrillic or Chinese characters, digits and common signs"));
  CHECK(refused(QStringLiteral("辣馕")) ==
        QStringLiteral("\"辣馕\" has 馕 (U+9995) as character 2, which the label faces do not have\n"
                       "  write it otherwise, or add it to the Chinese faces with fonts/make-subsets"));
  CHECK(refused(QStringLiteral("hot 🌶"))
            .startsWith(QStringLiteral("\"hot 🌶\" has 🌶 (U+1F336) as character 5, which")));
}

TEST_CASE("a script that needs shaping or runs from right to left is refused by its name", "[paper][face]") {
  const std::vector<std::pair<QString, QString>> scripts = {
      {QStringLiteral("حليب"), QStringLiteral("Arabic")},  {QStringLiteral("חלב"), QStringLiteral("Hebrew")},
      {QStringLiteral("ܚܠܒܐ"), QStringLiteral("Syriac")},  {QStringLiteral("ކިރު"), QStringLiteral("Thaana")},
      {QStringLiteral("ߣߐߣߐ"), QStringLiteral("N'Ko")},    {QStringLiteral("दूध"), QStringLiteral("Devanagari")},
      {QStringLiteral("নুন"), QStringLiteral("Bengali")},   {QStringLiteral("ਦੁੱਧ"), QStringLiteral("Gurmukhi")},
      {QStringLiteral("દૂધ"), QStringLiteral("Gujarati")},  {QStringLiteral("କ୍ଷୀର"), QStringLiteral("Odia")},
      {QStringLiteral("பால்"), QStringLiteral("Tamil")},    {QStringLiteral("పాలు"), QStringLiteral("Telugu")},
      {QStringLiteral("ಹಾಲು"), QStringLiteral("Kannada")}, {QStringLiteral("പാൽ"), QStringLiteral("Malayalam")},
      {QStringLiteral("කිරි"), QStringLiteral("Sinhala")},   {QStringLiteral("นม"), QStringLiteral("Thai")},
      {QStringLiteral("ນົມ"), QStringLiteral("Lao")},       {QStringLiteral("འོ་མ"), QStringLiteral("Tibetan")},
      {QStringLiteral("နို့"), QStringLiteral("Myanmar")},    {QStringLiteral("ទឹកដោះគោ"), QStringLiteral("Khmer")},
      {QStringLiteral("ᠰᠦ"), QStringLiteral("Mongolian")}, {QStringLiteral("ꦱꦸꦱꦸ"), QStringLiteral("Javanese")},
      {QStringLiteral("ᬲᬸᬲᬸ"), QStringLiteral("Balinese")},  {QStringLiteral("ወተት"), QStringLiteral("Ethiopic")}};
  CHECK(scripts.size() == kNeedShaping.size());
  for (const auto& [text, script] : scripts) {
    const QString error = refused(QStringLiteral("Milk ") + text);
    CHECK(error.contains(QStringLiteral(" as character 6, and %1 script cannot be set on labels\n"
                                        "  write it in Latin, Greek, Cyrillic or Chinese characters")
                             .arg(script)));
  }
}

TEST_CASE("each script that is refused by its name is refused in every letter it has", "[paper][face]") {
  for (const NamedScript& script : kNeedShaping) {
    int letters = 0;
    for (char32_t c = 0; c <= 0xFFFF; ++c)
      if (QChar::script(c) == script.script && QChar::isLetter(c)) {
        ++letters;
        CHECK_FALSE(shipped_faces().prints(c));
      }
    CHECK(letters > 20);
  }
}

TEST_CASE("the languages of the shipped families are printable", "[paper][face]") {
  for (const QString& text :
       {QStringLiteral("Sữa tươi, ĐẬU PHỘNG, TRƯỚC NGÀY, ẨẪỆ"), QStringLiteral("Περιέχει γάλα, ΑΥΓΌ· ϊΐΰ"),
        QStringLiteral("Содержит молоко, ЯЙЦА, Ёж, щётка"), QStringLiteral("含有：牛奶、鸡蛋，5 °C以下（冷藏）。"),
        QStringLiteral("À consommer jusqu’au 1 500 g"), QStringLiteral("1⅕ ≤ 2₂ ≠ 5 ₽")})
    CHECK(printed(text) == text);
}

TEST_CASE("families are read when a text needs them: Latin never does, and one that is missing is an error then",
          "[paper][face]") {
  const Folder folder;
  for (const char* weight : {"Regular", "Bold", "ExtraBold"}) {
    const QString name = QStringLiteral("AtkinsonHyperlegibleNext-%1.ttf").arg(QLatin1String(weight));
    REQUIRE(QFile::copy(QStringLiteral(LARDINER_SOURCE_DIR "/fonts/") + name, folder.path(name)));
  }
  const Faces faces = Faces::load(folder.path(QStringLiteral("."))).value();
  CHECK(faces.printable(QStringLiteral("Jalapeño, ½ cup")).has_value());
  const problem::Expected<QString> missing = faces.printable(QStringLiteral("sữa"));
  REQUIRE_FALSE(missing);
  CHECK(missing.error().code == problem::Code::Machine);
  CHECK(missing.error().what.endsWith(QStringLiteral("NotoSans-Regular.ttf cannot be read")));
  CHECK(faces.printable(QStringLiteral("حليب")).error().code == problem::Code::NoGlyph);
  CHECK(faces[FaceId::ScBold].characters().empty());
  CHECK(faces.width(u"milk", FaceId::NotoBold, {10}, {203}).value == 0);
}

TEST_CASE("many threads may be the first to need a family", "[paper][face]") {
  const Faces faces = Faces::load(QStringLiteral(LARDINER_SOURCE_DIR "/fonts")).value();
  std::array<bool, 4> printable{};
  std::vector<std::thread> threads;
  for (bool& one : printable)
    threads.emplace_back([&] { one = faces.printable(QStringLiteral("sữa 牛奶 молоко")).has_value(); });
  for (std::thread& thread : threads) thread.join();
  CHECK(std::all_of(printable.begin(), printable.end(), [](bool one) { return one; }));
}

TEST_CASE("the Chinese faces hold every character of their word list and of the demo kitchen", "[paper][face]") {
  const QString root = QStringLiteral(LARDINER_SOURCE_DIR);
  QStringList files{root + QStringLiteral("/fonts/chinese.txt"), root + QStringLiteral("/templates/words/zh.toml")};
  QDirIterator kitchen(root + QStringLiteral("/samples/kitchen"), QDir::Files, QDirIterator::Subdirectories);
  while (kitchen.hasNext()) files << kitchen.next();
  int read = 0;
  for (const QString& name : files) {
    QFile file(name);
    if (!file.open(QIODevice::ReadOnly)) continue;
    ++read;
    for (char32_t c : QString::fromUtf8(file.readAll()).toUcs4())
      if (QChar::script(c) == QChar::Script_Han && !shipped_faces().has(Family::NotoSansSc, c)) {
        CAPTURE(name, QString::fromUcs4(&c, 1));
        FAIL_CHECK("the Chinese faces lack a character: run sh fonts/make-subsets");
      }
  }
  CHECK(read >= 5);
}

TEST_CASE("a size that is legible in the Latin family is so in the others",
          "[paper][face][src:eu-1169-2011/annex-IV]") {
  for (Weight weight : kWeights) {
    const double least = shipped_faces().least_x_height(weight);
    for (Family family : kFamilies) CHECK(shipped_faces()[face_of(family, weight)].x_height >= least);
    // A square character's ink is as high as a capital, but for the flattest few strokes (一).
    const Face& chinese = shipped_faces()[face_of(Family::NotoSansSc, weight)];
    const Face& latin = shipped_faces()[face_of(Family::Atkinson, weight)];
    for (QChar c : QStringLiteral("含有牛奶鸡蛋冷藏制作"))
      CHECK((chinese.glyph(c.unicode())->top - chinese.glyph(c.unicode())->bottom) / double(chinese.units_per_em) >=
            latin.cap_height);
  }
}

TEST_CASE("line ends, tabs and direction marks are no text", "[paper][face]") {
  CHECK(refused(QStringLiteral("Chilli\tbutter")) ==
        QStringLiteral("\"Chilli\uFFFDbutter\" has U+0009 as character 7, which is a control code and prints nothing\n"
                       "  delete it"));
  for (const QString& text :
       {QStringLiteral("a\nb"), QStringLiteral("a\u200Fb"), QStringLiteral("a\uE000b"), QString(QChar(0xD800))})
    CHECK_FALSE(shipped_faces().printable(text));
}

TEST_CASE("soft hyphens and zero-width spaces are kept for breaking lines and take no width", "[paper][face]") {
  const QString guided = QStringLiteral("Butter\u00ADmilch\u200B\u2060");
  CHECK(printed(guided) == guided);
  CHECK(shipped_faces().width(guided, FaceId::AtkinsonRegular, {8}, {203}) ==
        shipped_faces().width(u"Buttermilch", FaceId::AtkinsonRegular, {8}, {203}));
}

TEST_CASE("a width is the sum of its letters' widths, in proportion to size and resolution", "[paper][face]") {
  const Faces& faces = shipped_faces();
  for (FaceId face : kFaces) {
    const double one = faces.width(u"TUE 01 DEC", face, {10}, {203}).value;
    double sum = 0;
    for (QChar c : QStringLiteral("TUE 01 DEC")) sum += faces.width(QStringView(&c, 1), face, {10}, {203}).value;
    CHECK(one == Approx(sum));
    CHECK(faces.width(u"TUE 01 DEC", face, {20}, {203}).value == Approx(2 * one));
    CHECK(faces.width(u"TUE 01 DEC", face, {10}, {406}).value == Approx(2 * one));
  }
  CHECK(faces.width(u"CONTAINS", FaceId::AtkinsonRegular, {10}, {203}) <
        faces.width(u"CONTAINS", FaceId::AtkinsonBold, {10}, {203}));
  CHECK(faces.width(u"CONTAINS", FaceId::AtkinsonBold, {10}, {203}) <
        faces.width(u"CONTAINS", FaceId::AtkinsonExtraBold, {10}, {203}));
  CHECK(faces.width(u"", FaceId::AtkinsonBold, {10}, {203}).value == 0);
}

TEST_CASE("the faces state the heights that legibility is judged by", "[paper][face]") {
  for (FaceId id : kFaces) {
    const Face& face = shipped_faces()[id];
    CHECK(face.x_height > 0.45);
    CHECK(face.x_height < face.cap_height);
    CHECK(face.cap_height < face.ascent);
    CHECK(face.descent > 0.15);
    // The Chinese faces' own Latin letters are a little higher than they state.
    const double within = family_of(id) == Family::NotoSansSc ? 35 : 12;
    CHECK(face.glyph(U'x')->top == Approx(face.x_height * face.units_per_em).margin(within));
    CHECK(face.glyph(U'H')->top == Approx(face.cap_height * face.units_per_em).margin(within));
  }
}

TEST_CASE("the parts of a glyph are found with their own parts", "[paper][face]") {
  for (FaceId id : kFaces) {
    const Face& face = shipped_faces()[id];
    CHECK(face.parts(face.glyph(U'x')->id).empty());
    if (const Glyph* glyph = face.glyph(U'ä')) CHECK(face.parts(glyph->id).size() >= 2);
    for (char32_t c : face.characters()) {
      const std::vector<std::uint16_t> all = face.parts(face.glyph(c)->id);
      for (std::uint16_t part : all)
        for (std::uint16_t nested : face.parts(part)) CHECK(std::count(all.begin(), all.end(), nested) == 1);
    }
  }
}

}  // namespace lardiner::paper
