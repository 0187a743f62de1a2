// Label runs put together by hand or by chance, media, and what a finished layout may never do.
#pragma once

#include <QFile>
#include <map>
#include <random>

#include "paper/label.h"
#include "show.h"
#include "symbol/qr.h"
#include "tools.h"

namespace lardiner::paper {

inline const LabelTemplate& shipped_template(const char* name) {
  static std::map<QByteArray, LabelTemplate> read;
  const auto found = read.find(name);
  if (found != read.end()) return found->second;
  QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/templates/labels/%1.toml").arg(QLatin1String(name)));
  REQUIRE(file.open(QIODevice::ReadOnly));
  const auto label = read_label_template(file.readAll(), file.fileName().section(u'/', -1));
  if (!label) FAIL(problem::text(label.error()).toStdString());
  return read[name] = *label;
}

inline const LabelTemplate& template_of(const facts::LabelRun& run) {
  if (run.hold) return shipped_template("hold");
  switch (run.purpose) {
    case book::Purpose::Inside:
      return shipped_template("inside");
    case book::Purpose::Finisher:
      return shipped_template("finisher");
    case book::Purpose::Sale:
      return shipped_template("sale");
  }
  return shipped_template("inside");
}

/// Sizes in hundredths of a millimetre.
inline book::Media medium(int width, int height, int dots_per_inch = 203) {
  book::Media out;
  out.id = QStringLiteral("lid");
  out.width = width;
  out.height = height;
  out.dots_per_inch = dots_per_inch;
  out.freezer = out.hot = true;
  out.margin = {150, 150, 150, 150};
  return out;
}

inline const std::vector<std::pair<int, int>> kSizes{{5000, 5000}, {10000, 5000}, {10160, 15240}};

inline facts::Paragraph said(const QString& text, bool strong = false) { return {{text, strong}}; }

/// Runs by chance: `random` decides lengths, languages, allergens and steps.
class Chance {
 public:
  explicit Chance(unsigned seed) : random_(seed) {}

  int below(int most) { return static_cast<int>(random_() % static_cast<unsigned>(most)); }
  bool one_in(int of) { return below(of) == 0; }

  facts::LabelRun run(book::Purpose purpose, bool hold) {
    facts::LabelRun out;
    two_ = one_in(3);
    out.purpose = purpose;
    out.hold = hold;
    out.lot = QStringLiteral("A26329%1%201K").arg(QChar(u'A' + below(26)), QStringLiteral("LB"));
    out.language = QStringLiteral("en");
    const QString name = words(1 + below(one_in(4) ? 9 : 4));
    out.title = name + u' ' + out.lot;
    out.frozen = !hold && one_in(5);
    add(out, facts::FactId::Name, {name, words(2)}, true);
    add(out, facts::FactId::Made, {QStringLiteral("Made Wed 25 Nov 2026 10:40")});
    if (hold)
      add_hold(out);
    else
      add_dated(out);
    add_containers(out);
    return out;
  }

 private:
  using Id = facts::FactId;

  QString words(int count) {
    static const QStringList some{
        QStringLiteral("Chilli-lime"), QStringLiteral("butter"),   QStringLiteral("black-bean"),
        QStringLiteral("empanadas"),   QStringLiteral("smoked"),   QStringLiteral("Ñandú"),
        QStringLiteral("tomatillo"),   QStringLiteral("dressing"), QStringLiteral("with"),
        QStringLiteral("ÁÉÍ-ques"),    QStringLiteral("rice"),     QStringLiteral("gypsy-figs")};
    QStringList out;
    for (int i = 0; i < count; ++i) out << some[below(static_cast<int>(some.size()))];
    return out.join(u' ');
  }

  // In two languages where the label has two.
  void add(facts::LabelRun& run, Id id, const QStringList& texts, bool strong = false) {
    facts::Fact fact{id, {}};
    for (qsizetype i = 0; i < (two_ ? texts.size() : 1); ++i) fact.paragraphs.push_back(said(texts[i], strong));
    run.facts.push_back(fact);
  }

  void add_hold(facts::LabelRun& run) {
    add(run, Id::Hold, {QStringLiteral("HOLD"), QStringLiteral("RETENIDO")}, true);
    add(run, Id::DoNotUse, {QStringLiteral("DO NOT USE"), QStringLiteral("NO USAR")}, true);
    add(run, Id::Missing,
        {QStringLiteral("No date: the cook reading is missing. ") + words(below(12)),
         QStringLiteral("Sin fecha: falta la lectura.")});
  }

  void add_dated(facts::LabelRun& run) {
    if (run.frozen) {
      add(run, Id::DateCaption, {QStringLiteral("FROZEN"), QStringLiteral("CONGELADO")});
      add(run, Id::DaysLeft,
          {QStringLiteral("4 days left after thawing"), QStringLiteral("Quedan 4 días tras descongelar")}, true);
      add(run, Id::WriteDates,
          {QStringLiteral("Thawed\u00A0________________"), QStringLiteral("Descongelado\u00A0________________")});
    } else {
      add(run, Id::DateCaption, {QStringLiteral("USE BY"), QStringLiteral("USAR HASTA")});
      if (one_in(5)) add(run, Id::Time, {QStringLiteral("14:35")});
    }
    add(run, Id::Date, {QStringLiteral("WED 25 NOV"), QStringLiteral("MIÉ 25 NOV")});
    run.facts.push_back({Id::Year, {said(QStringLiteral("2026"))}});
    add(run, Id::Contains,
        {QStringLiteral("CONTAINS ") + list(1 + below(one_in(4) ? 14 : 4)), QStringLiteral("CONTIENE leche, huevo")},
        true);
    if (one_in(4))
      add(run, Id::MayContain,
          {QStringLiteral("May contain ") + list(1 + below(3)), QStringLiteral("Puede contener apio")});
    add(run, Id::KeepAt,
        {QStringLiteral("Keep at 5\u00A0°C\u00A0(41\u00A0°F) or below"),
         QStringLiteral("Mantener a 5\u00A0°C o menos")});
    if (one_in(2))
      run.facts.push_back({Id::Site, {said(QStringLiteral("For ") + words(2) + QStringLiteral(", order\u00A0118"))}});
    if (run.purpose != book::Purpose::Sale && one_in(2))
      run.facts.push_back({Id::Net, {said(QStringLiteral("500\u00A0g\u00A0(1\u00A0lb\u00A01.6\u00A0oz)"), true)}});
    if (one_in(2)) add(run, Id::Count, {QStringLiteral("24\u00A0pieces"), QStringLiteral("24\u00A0piezas")}, true);
    if (run.purpose == book::Purpose::Finisher || one_in(3))
      add(run, Id::Readiness,
          {QStringLiteral("RAW: COOK BEFORE SERVING"), QStringLiteral("CRUDO: COCINAR ANTES DE SERVIR")}, true);
    if (run.purpose != book::Purpose::Inside) add_finishing(run);
    if (run.purpose == book::Purpose::Sale) add_sale(run);
  }

  void add_finishing(facts::LabelRun& run) {
    facts::Fact steps{Id::Finishing, {}};
    for (int i = below(4); i >= 0; --i)
      steps.paragraphs.push_back(
          {{QStringLiteral("Oven %1, from chilled: 190\u00A0°C\u00A0(375\u00A0°F), COOK TO 74\u00A0°C").arg(i), true},
           {QStringLiteral(". Golden and %1. Rest 2\u00A0min.").arg(words(1 + below(4))), false}});
    run.facts.push_back(steps);
    add(run, Id::HoldFinished,
        {QStringLiteral("Hold at most 30\u00A0min. Finished\u00A0_______ discard by\u00A0_______"),
         QStringLiteral("Terminado\u00A0_______")});
    add(run, Id::RemoveLabel,
        {QStringLiteral("Remove label before the oven"), QStringLiteral("Quitar la etiqueta antes del horno")});
  }

  void add_sale(facts::LabelRun& run) {
    run.facts.push_back(
        {Id::Ingredients, {{{QStringLiteral("Ingredients: "), true}, {words(4 + below(20)) + u'.', false}}}});
    run.facts.push_back({Id::NetDeclared, {said(QStringLiteral("Net Wt 7 oz (199 g)"), true)}});
    run.facts.push_back(
        {Id::Business, {said(QStringLiteral("Made by Test Lane Commissary, 1 Test Lane, Testford, NY 10001"))}});
  }

  QString list(int count) {
    static const QStringList some{
        QStringLiteral("milk"),    QStringLiteral("egg"),     QStringLiteral("fish (cod, hake)"),
        QStringLiteral("wheat"),   QStringLiteral("peanuts"), QStringLiteral("sesame"),
        QStringLiteral("mustard"), QStringLiteral("celery"),  QStringLiteral("tree nuts (Brazil nut)")};
    QStringList out;
    for (int i = 0; i < count; ++i) out << some[(below(3) + i) % some.size()];
    return out.join(QStringLiteral(", "));
  }

  void add_containers(facts::LabelRun& run) {
    const int count = 1 + below(one_in(3) ? 200 : 12);
    for (int n = 1; n <= count; n += std::max(1, count / 5)) {
      facts::ContainerFacts one{
          QStringLiteral("Tub %1 of %2").arg(n).arg(count), QStringLiteral("A2632901-%1").arg(n), {}, n};
      one.uri = "https://tl.test/01/00401000000015/10/" + run.lot.toLatin1() + "/21/" + one.serial.toLatin1();
      if (!run.hold) one.uri += "?17=261125";
      run.containers.push_back(one);
    }
    run.facts.push_back({Id::Lot, {said(run.lot + QStringLiteral(" · MK"), true)}});
    run.facts.push_back({Id::ContainerOf, {said(run.containers.back().container_of)}});
    run.facts.push_back({Id::Serial, {said(run.containers.back().serial)}});
  }

  std::mt19937 random_;
  bool two_ = false;
};

/// In dots from the page's top left.
struct Rect {
  double left = 0, top = 0, right = 0, bottom = 0;
  bool meets(const Rect& o) const {
    constexpr double kTouch = 0.01;  // sums of doubles
    return left < o.right - kTouch && o.left < right - kTouch && top < o.bottom - kTouch && o.top < bottom - kTouch;
  }
  bool within(const Rect& o) const {
    constexpr double kTouch = 0.01;
    return left >= o.left - kTouch && right <= o.right + kTouch && top >= o.top - kTouch && bottom <= o.bottom + kTouch;
  }
};

/// The box of a text's ink, as wide as its advance.
inline Rect ink(const TextRun& run, Resolution resolution) {
  const Face& face = shipped_faces()[run.face];
  const double unit = fine_dots(run.size, resolution).value / face.units_per_em;
  int top = 0, bottom = 0;
  bool first = true;
  for (const QChar c : run.text) {
    const Glyph* glyph = face.glyph(c.unicode());
    if (glyph == nullptr || glyph->top == glyph->bottom) continue;
    top = first ? glyph->top : std::max<int>(top, glyph->top);
    bottom = first ? glyph->bottom : std::min<int>(bottom, glyph->bottom);
    first = false;
  }
  const double width = shipped_faces().width(run.text, run.face, run.size, resolution).value;
  return {run.x.value, run.baseline.value - top * unit, run.x.value + width, run.baseline.value - bottom * unit};
}

inline CodeImage code_image(const QByteArray& uri) {
  const symbol::Matrix matrix = symbol::encode_qr(uri, symbol::strongest_correction(uri)).value();
  return {matrix.size,
          QByteArray(reinterpret_cast<const char*>(matrix.bits.data()), static_cast<qsizetype>(matrix.bits.size()))};
}

inline QString without_spaces(QString text) {
  text.removeIf([](QChar c) { return c.isSpace() || is_invisible(c.unicode()); });
  return text;
}

inline QString words_of(const facts::Paragraph& paragraph) {
  QString out;
  for (const facts::Run& part : paragraph) out += part.text;
  return without_spaces(out);
}

}  // namespace lardiner::paper
