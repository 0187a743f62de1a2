// The facts of a run as printable, measured paragraphs, block by block, before any layout.
#include "paper/label_text.h"

#include <algorithm>

#include "facts/fact_names.h"

namespace lardiner::paper {

namespace {

using facts::FactId;

// The dot stays with what it follows.
const QString kBetween = QStringLiteral("\u00A0· ");

// A fact this long (in UTF-16 units) is better broken than left to make a short line before it.
constexpr qsizetype kLongestWhole = 40;

// No line ends within a short fact: a word joiner after a space or hyphen forbids it (UAX #14, LB11) and prints
// nothing. What stands by itself is broken as ever.
std::vector<FactText> whole(std::vector<FactText> facts) {
  if (facts.size() == 1 && facts.front().paragraphs.size() == 1) return facts;
  for (FactText& fact : facts)
    for (Paragraph& paragraph : fact.paragraphs) {
      qsizetype length = 0;
      for (const StyledText& part : paragraph) length += part.text.size();
      if (length > kLongestWhole) continue;
      for (StyledText& part : paragraph)
        part.text.replace(u' ', QStringLiteral(" \u2060")).replace(u'-', QStringLiteral("-\u2060"));
    }
  return facts;
}

Paragraph run_together(const std::vector<FactText>& facts, const QString& between) {
  Paragraph out;
  for (const FactText& fact : facts)
    for (const Paragraph& paragraph : fact.paragraphs) {
      if (!out.empty()) out.push_back({between, std::min(out.back().weight, paragraph.front().weight)});
      out.insert(out.end(), paragraph.begin(), paragraph.end());
    }
  return out;
}

// "FROZEN WED 25 NOV 2026", and so in each language; no line ends within a date.
Paragraph caption_and_date(const std::vector<FactText>& facts) {
  Paragraph out;
  for (std::size_t language = 0; language < facts.front().paragraphs.size(); ++language) {
    if (language > 0) out.push_back({kBetween, facts.front().paragraphs.front().front().weight});
    for (std::size_t i = 0; i < facts.size(); ++i) {
      const auto& paragraphs = facts[i].paragraphs;
      StyledText part = paragraphs[std::min(language, paragraphs.size() - 1)].front();
      if (facts[i].id == FactId::Date) part.text.replace(u' ', u'\u00A0');
      if (i > 0) part.text.prepend(facts[i].id == FactId::Year ? u'\u00A0' : u' ');
      out.push_back(part);
    }
  }
  return out;
}

class TextMaker {
 public:
  TextMaker(const facts::LabelRun& run, const LabelTemplate& label, const Faces& faces)
      : run_(run), label_(label), faces_(faces) {}

  problem::ExpectedAll<LabelText> make() {
    for (const facts::Fact& fact : run_.facts)
      if (!has_place(label_, fact.id)) refuse_without_place(fact.id);
    LabelText out;
    for (const Block& block : label_.blocks) out.blocks.push_back(block_text(block));
    for (const FactId id : {FactId::Lot, FactId::ContainerOf, FactId::Serial})
      if (const auto text = fact_text(id, Weight::Regular)) out.foot.push_back(*text);
    if (!errors_.empty()) return tl::unexpected(errors_);
    return out;
  }

 private:
  BlockText block_text(const Block& block) {
    BlockText out;
    for (const FactId id : block.facts)
      if (const auto text = fact_text(id, block.weight)) out.facts.push_back(*text);
    out.apart = apart(out.facts);
    if (block.run_together > 0) {
      out.flowed = flowed(whole(out.facts), block.alone);
      out.filled = flowed(out.facts, block.alone);
    }
    if (block.band && !out.facts.empty())
      out.together = Piece{FactId::Date, MeasuredText(faces_, caption_and_date(out.facts))};
    if (block.beside) out.beside = fact_text(*block.beside, block.weight);
    if (out.beside)
      out.beside_words = Piece{out.beside->id, MeasuredText(faces_, run_together({*out.beside}, kBetween))};
    return out;
  }

  std::vector<Piece> apart(const std::vector<FactText>& facts) const {
    std::vector<Piece> out;
    for (const FactText& fact : facts)
      for (const Paragraph& paragraph : fact.paragraphs) out.push_back({fact.id, MeasuredText(faces_, paragraph)});
    return out;
  }

  std::vector<Piece> flowed(const std::vector<FactText>& facts, const std::vector<FactId>& alone) const {
    std::vector<Piece> out;
    std::vector<FactText> together;
    const auto flush = [&] {
      if (!together.empty())
        out.push_back({together.back().id, MeasuredText(faces_, run_together(together, kBetween))});
      together.clear();
    };
    for (const FactText& fact : facts) {
      if (std::find(alone.begin(), alone.end(), fact.id) == alone.end()) {
        together.push_back(fact);
        continue;
      }
      flush();
      for (Piece& piece : apart({fact})) out.push_back(std::move(piece));
    }
    flush();
    return out;
  }

  std::optional<FactText> fact_text(FactId id, Weight weight) {
    const auto found =
        std::find_if(run_.facts.begin(), run_.facts.end(), [&](const facts::Fact& f) { return f.id == id; });
    if (found == run_.facts.end()) return std::nullopt;
    FactText out{id, {}};
    for (const facts::Paragraph& paragraph : found->paragraphs) {
      out.paragraphs.emplace_back();
      for (const facts::Run& part : paragraph)
        out.paragraphs.back().push_back(
            {printable(part.text, id), part.strong && weight == Weight::Regular ? Weight::Bold : weight});
    }
    return out;
  }

  QString printable(const QString& text, FactId id) {
    const auto found = faces_.printable(text);
    if (found) return *found;
    problem::Error error = found.error();
    error.what = QStringLiteral("the %1 of this label cannot be printed: %2").arg(facts::name(id), error.what);
    error.place = run_.place;
    errors_.push_back(error);
    return {};
  }

  void refuse_without_place(FactId id) {
    errors_.push_back({problem::Code::Missing,
                       QStringLiteral("label template %1 has no place for \"%2\", which this label must say")
                           .arg(label_.file, facts::name(id)),
                       run_.place,
                       QStringLiteral("add \"%1\" to the facts of one of its blocks").arg(facts::name(id))});
  }

  const facts::LabelRun& run_;
  const LabelTemplate& label_;
  const Faces& faces_;
  problem::Errors errors_;
};

}  // namespace

problem::ExpectedAll<LabelText> label_text(const facts::LabelRun& run, const LabelTemplate& label, const Faces& faces) {
  return TextMaker(run, label, faces).make();
}

}  // namespace lardiner::paper
