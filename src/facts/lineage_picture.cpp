// What the picture of a lot's lineage says: which lots went into which, before any layout.
#include "facts/lineage_picture.h"

#include <map>

#include "facts/sheet_phrases.h"

namespace lardiner::facts {

namespace {

constexpr int kMostAssumedNamed = 4;  // the rest as a number; the picture shows each

// Each pair once; certain where one of its entries is.
std::vector<LineagePicture::Edge> edges_of(const Lineage& lineage) {
  std::map<std::pair<size_t, size_t>, bool> assumed;
  for (const Lineage::Into& into : lineage.into) {
    const auto [found, fresh] = assumed.try_emplace({into.from, into.to}, into.assumed);
    if (!fresh) found->second = found->second && into.assumed;
  }
  std::vector<LineagePicture::Edge> out;
  for (const auto& [pair, is_assumed] : assumed) out.push_back({pair.first, pair.second, is_assumed});
  return out;
}

// By its lot; of one that nobody wrote what it is.
QString named(const LineagePicture::Node& node) { return node.lot.isEmpty() ? node.name : node.lot; }

// "S-7 in A26330CLB1, Salt in A26330CLB1, +3"
QString assumed_text(const Wording& wording, const LineagePicture& picture) {
  QStringList pairs;
  int rest = 0;
  for (const LineagePicture::Edge& edge : picture.edges) {
    if (!edge.assumed) continue;
    if (pairs.size() == kMostAssumedNamed)
      ++rest;
    else
      pairs << wording.sentence("lineage.assumed_pair",
                                {named(picture.nodes[edge.from]), named(picture.nodes[edge.to])});
  }
  if (rest > 0) pairs << u'+' + QString::number(rest);
  return pairs.isEmpty() ? QString() : wording.sentence("lineage.read_assumed", {wording.words.list(pairs)});
}

}  // namespace

problem::ExpectedAll<LineagePicture> lineage_picture(const SheetSetting& setting, const Lineage& lineage) {
  if (lineage.asked >= lineage.lots.size())
    return tl::unexpected(problem::Errors{{problem::Code::Missing,
                                           QStringLiteral("there is no lot to draw"),
                                           {},
                                           QStringLiteral("name a lot that the ledger knows")}});
  problem::Errors errors;
  const SheetPhrases phrases(setting, errors);
  LineagePicture out;
  out.language = phrases.language().tag();
  out.title = phrases.both("lineage.title");
  for (const Lineage::Lot& lot : lineage.lots)
    out.nodes.push_back(
        {phrases.name(phrases.first(), lot.item), lot.lot, lot.day.isValid() ? phrases.day(lot.day) : QString()});
  out.edges = edges_of(lineage);
  out.asked = lineage.asked;
  std::vector<SmallLine> notes;
  phrases.add_small(notes, [](const Wording& wording) { return wording.word("lineage.read"); });
  phrases.add_small(notes, [&](const Wording& wording) { return assumed_text(wording, out); });
  for (const SmallLine& note : notes) out.notes << note.text;
  const QString more = phrases.both("lineage.more", {QStringLiteral("{0}")});
  out.more = [more](int count) { return QString(more).replace(QStringLiteral("{0}"), QString::number(count)); };
  if (errors.empty()) return out;
  problem::sort(errors);
  return tl::unexpected(errors);
}

}  // namespace lardiner::facts
