// The facts of a run as printable paragraphs, block by block, before any measuring.
#include "paper/label_text.h"

#include <algorithm>

#include "facts/fact_names.h"

namespace lardiner::paper {

namespace {

using facts::FactId;

class TextMaker {
 public:
  TextMaker(const facts::LabelRun& run, const LabelTemplate& label, const Faces& faces)
      : run_(run), label_(label), faces_(faces) {}

  problem::ExpectedAll<LabelText> make() {
    for (const facts::Fact& fact : run_.facts)
      if (!has_place(label_, fact.id)) refuse_without_place(fact.id);
    LabelText out;
    for (const Block& block : label_.blocks) {
      out.blocks.emplace_back();
      for (const FactId id : block.facts)
        if (const auto text = fact_text(id, block.weight)) out.blocks.back().push_back(*text);
      out.beside.push_back(block.beside ? fact_text(*block.beside, block.weight) : std::nullopt);
    }
    for (const FactId id : {FactId::Lot, FactId::ContainerOf, FactId::Serial})
      if (const auto text = fact_text(id, Weight::Regular)) out.foot.push_back(*text);
    if (!errors_.empty()) return tl::unexpected(errors_);
    return out;
  }

 private:
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
