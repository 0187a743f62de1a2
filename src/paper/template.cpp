// A label template: which facts stand on a label, in which order of importance and at which sizes. Data of
// templates/labels.
#include "paper/template.h"

#include <algorithm>
#include <set>

#include "facts/fact_names.h"
#include "reader/fields.h"
#include "reader/read.h"

namespace lardiner::paper {

namespace {

using facts::FactId;
using problem::Code;

// The facts that a band and the foot place by themselves.
constexpr std::array kBandFacts = {FactId::DateCaption, FactId::Date, FactId::Year, FactId::Time};
constexpr std::array kFootFacts = {FactId::Lot, FactId::ContainerOf, FactId::Serial};

// Points are 1 to 200: beyond that a size is a slip of the pen.
constexpr double kMostPoints = 200;
// Regulation (EU) No 1169/2011, Article 13(2) and (3): the least x-height, and that of the smallest packs, below which
// no label is legible.
constexpr Millimetres kLegible{1.2};
constexpr Millimetres kLeastLegible{0.9};
// Each trial costs a search of its own.
constexpr int kMostTrials = 3;

std::optional<double> number(const reader::Value& value) {
  bool ok = false;
  const double found = value.kind == reader::Value::Kind::Number ? value.text.toDouble(&ok) : 0;
  return ok ? std::optional(found) : std::nullopt;
}

class TemplateReader {
 public:
  explicit TemplateReader(problem::Errors& errors) : errors_(errors) {}

  LabelTemplate read(const reader::Value& table, const QString& file) {
    reader::Fields fields(table, QStringLiteral("the label template"), errors_);
    LabelTemplate out;
    out.file = file;
    out.margin = length(fields, "margin");
    out.least_x_height = x_height(fields);
    out.frame = length(fields, "frame");
    if (const reader::Value* share = fields.value(u"code_share")) out.code_share = fraction(fields, *share);
    for (const reader::Value* block : fields.tables(u"block")) out.blocks.push_back(read_block(*block));
    if (out.blocks.empty())
      fields.refuse(u"block", Code::Missing, QStringLiteral("the label template has no block"),
                    QStringLiteral("add a [[block]] with facts and size"));
    if (const reader::Value* foot = fields.table(u"foot")) {
      reader::Fields foot_fields(*foot, QStringLiteral("the foot"), errors_);
      out.foot = sizes(foot_fields);
      foot_fields.finish();
    } else {
      fields.refuse(u"foot", Code::Missing, QStringLiteral("the label template has no foot"),
                    QStringLiteral("add a [foot] with a size for lot, container and serial"));
    }
    fields.finish();
    check_order();
    return out;
  }

 private:
  // A block's sizes, and where they are written.
  struct Written {
    Sizes sizes;
    problem::Place place;
  };

  Block read_block(const reader::Value& table) {
    reader::Fields fields(table, QStringLiteral("a block"), errors_);
    Block block;
    block.band = fields.boolean(u"band").value_or(false);
    block.sizes = sizes(fields);
    if (block.band) {
      block.facts.assign(kBandFacts.begin(), kBandFacts.end());
      for (const FactId id : kBandFacts) place(fields, u"band", id);
      block.weight = Weight::ExtraBold;
    } else {
      for (const QString& word : fields.texts(u"facts"))
        if (const auto id = known(fields, u"facts", word)) block.facts.push_back(*id);
      if (const auto word = fields.text(u"beside")) block.beside = known(fields, u"beside", *word);
      if (!fields.has(u"facts"))
        fields.refuse(u"facts", Code::Missing, QStringLiteral("a block has no facts"),
                      QStringLiteral("add facts = [\"…\"], or band = true"));
      block.weight = weight(fields);
      read_running(fields, block);
      block.write = writing_line(fields);
      block.dark = fields.boolean(u"dark").value_or(false);
    }
    block.gives_way = gives_way(fields);
    fields.finish();
    return block;
  }

  GivesWay gives_way(reader::Fields& fields) {
    const auto word = fields.text(u"gives_way");
    if (!word) return GivesWay::WithTheRest;
    if (*word == QLatin1String("first")) return GivesWay::First;
    if (*word != QLatin1String("last"))
      fields.refuse(u"gives_way", Code::Unknown, QStringLiteral("a block cannot give way \"%1\"").arg(*word),
                    QStringLiteral("write \"first\" or \"last\", or leave it out: with the rest"));
    return GivesWay::Last;
  }

  void read_running(reader::Fields& fields, Block& block) {
    block.run_together = fields.integer(u"run_together", 1, kMostTrials).value_or(0);
    for (const QString& word : fields.texts(u"alone")) {
      const auto id = facts::fact_named(word);
      if (id && std::find(block.facts.begin(), block.facts.end(), *id) != block.facts.end())
        block.alone.push_back(*id);
      else
        fields.refuse(u"alone", Code::Unknown, QStringLiteral("\"%1\" is not a fact of this block").arg(word),
                      QStringLiteral("name some of its facts, which keep lines of their own"));
    }
    if (fields.has(u"alone") && !fields.has(u"run_together"))
      fields.refuse(u"alone", Code::Conflict, QStringLiteral("a block that is not run together has all facts alone"),
                    QStringLiteral("state run_together = 1, or leave alone out"));
  }

  // What is larger at the preferred sizes is nowhere smaller, or the order of importance would turn.
  void check_order() {
    for (const Written& small : written_)
      for (const Written& large : written_) {
        const bool turns = large.sizes.preferred > small.sizes.preferred &&
                           (large.sizes.least < small.sizes.least || large.sizes.most < small.sizes.most);
        if (!turns) continue;
        errors_.push_back({Code::Range,
                           QStringLiteral("a block of %1 pt could become larger than the one of %2 pt in line %3")
                               .arg(small.sizes.preferred.value)
                               .arg(large.sizes.preferred.value)
                               .arg(large.place.line),
                           small.place,
                           QStringLiteral("write its least and most no larger than %1 and %2")
                               .arg(large.sizes.least.value)
                               .arg(large.sizes.most.value)});
        break;
      }
  }

  std::optional<FactId> known(reader::Fields& fields, QStringView key, const QString& word) {
    const auto id = facts::fact_named(word);
    if (!id) {
      const QString near = problem::nearest(word, facts::fact_names());
      fields.refuse(key, Code::Unknown, QStringLiteral("\"%1\" is not a fact of labels").arg(word),
                    near.isEmpty() ? QStringLiteral("the facts are: ") + facts::fact_names().join(QStringLiteral(", "))
                                   : QStringLiteral("did you mean \"%1\"?").arg(near));
    } else {
      place(fields, key, *id);
    }
    return id;
  }

  void place(reader::Fields& fields, QStringView key, FactId id) {
    if (placed_.insert(id).second) return;
    fields.refuse(key, Code::Duplicate, QStringLiteral("fact \"%1\" has two places").arg(facts::name(id)),
                  QStringLiteral("name it in one block only; a band has the date's own, the foot lot, container-of and "
                                 "serial"));
  }

  Weight weight(reader::Fields& fields) {
    const QString word = fields.text(u"weight").value_or(QStringLiteral("regular"));
    if (word == QLatin1String("bold")) return Weight::Bold;
    if (word == QLatin1String("extra-bold")) return Weight::ExtraBold;
    if (word != QLatin1String("regular"))
      fields.refuse(u"weight", Code::Unknown, QStringLiteral("\"%1\" is not a weight").arg(word),
                    QStringLiteral("write \"regular\", \"bold\" or \"extra-bold\""));
    return Weight::Regular;
  }

  Sizes sizes(reader::Fields& fields) {
    std::vector<double> points;
    if (const reader::Value* list = fields.value(u"size"))
      for (const reader::Value& item : list->items) points.push_back(number(item).value_or(0));
    const bool ordered = points.size() == 3 && points[0] >= 1 && points[0] <= points[1] && points[1] <= points[2] &&
                         points[2] <= kMostPoints;
    if (ordered) {
      written_.push_back({{Points{points[0]}, Points{points[1]}, Points{points[2]}}, fields.value(u"size")->place});
      return written_.back().sizes;
    }
    fields.refuse(u"size", Code::Malformed, QStringLiteral("%1 has no size that can be used").arg(fields.noun()),
                  QStringLiteral("write size = [least, preferred, most] in points, each from 1 to 200 and none smaller "
                                 "than the one before"));
    return {Points{8}, Points{8}, Points{8}};
  }

  static std::optional<Millimetres> millimetres(const QString& text) {
    bool ok = false;
    const double found = text.endsWith(QLatin1String(" mm")) ? text.chopped(3).toDouble(&ok) : 0;
    return ok && found >= 0 && found <= 50 ? std::optional(Millimetres{found}) : std::nullopt;
  }

  std::optional<WritingLine> writing_line(reader::Fields& fields) {
    if (!fields.has(u"write")) return std::nullopt;
    std::vector<Millimetres> heights;
    for (const QString& text : fields.texts(u"write")) heights.push_back(millimetres(text).value_or(Millimetres{0}));
    if (heights.size() == 3 && heights[0].value > 0 && heights[0] <= heights[1] && heights[1] <= heights[2])
      return WritingLine{heights[0], heights[1], heights[2]};
    fields.refuse(u"write", Code::Malformed,
                  QStringLiteral("%1 has no writing line that can be used").arg(fields.noun()),
                  QStringLiteral("write it as [least, preferred, most], each as \"8 mm\" and none smaller than the one "
                                 "before"));
    return std::nullopt;
  }

  // "1.5 mm"; absent is 0.
  Millimetres length(reader::Fields& fields, const char* key) {
    const QString name = QString::fromLatin1(key);
    const auto text = fields.text(name);
    if (!text) return {0};
    if (const auto found = millimetres(*text)) return *found;
    fields.refuse(name, Code::Malformed, QStringLiteral("\"%1\" is not a length of a label").arg(*text),
                  QStringLiteral("write it in millimetres, as \"1.5 mm\""));
    return {0};
  }

  Millimetres x_height(reader::Fields& fields) {
    if (!fields.has(u"least_x_height")) return kLegible;
    const qsizetype before = static_cast<qsizetype>(errors_.size());
    const Millimetres found = length(fields, "least_x_height");
    if (static_cast<qsizetype>(errors_.size()) > before || found >= kLeastLegible) return found;
    fields.refuse(u"least_x_height", Code::Range,
                  QStringLiteral("a least_x_height of %1 mm cannot be read").arg(found.value),
                  QStringLiteral("write at least \"%1 mm\"; \"%2 mm\" is read at arm's length")
                      .arg(kLeastLegible.value)
                      .arg(kLegible.value));
    return kLegible;
  }

  double fraction(reader::Fields& fields, const reader::Value& value) {
    const double found = number(value).value_or(0);
    if (found > 0 && found <= 1) return found;
    fields.refuse(u"code_share", Code::Range, QStringLiteral("code_share is not a part of the label's shorter side"),
                  QStringLiteral("write a number above 0 and up to 1"));
    return 0.4;
  }

  problem::Errors& errors_;
  std::vector<Written> written_;
  std::set<FactId> placed_{kFootFacts.begin(), kFootFacts.end()};
};

}  // namespace

problem::ExpectedAll<LabelTemplate> read_label_template(const QByteArray& toml, const QString& file) {
  const auto table = reader::read_toml(toml, file);
  if (!table) return tl::unexpected(problem::Errors{table.error()});
  problem::Errors errors;
  LabelTemplate out = TemplateReader(errors).read(*table, file);
  if (!errors.empty()) {
    problem::sort(errors);
    return tl::unexpected(errors);
  }
  return out;
}

int LabelTemplate::trials() const {
  int last = 0;
  for (const Block& block : blocks)
    if (block.run_together > 0) last = std::max(last, block.run_together + 1);
  return last;
}

bool has_place(const LabelTemplate& label, facts::FactId fact) {
  if (std::find(kFootFacts.begin(), kFootFacts.end(), fact) != kFootFacts.end()) return true;
  return std::any_of(label.blocks.begin(), label.blocks.end(), [&](const Block& block) {
    return block.beside == fact || std::find(block.facts.begin(), block.facts.end(), fact) != block.facts.end();
  });
}

}  // namespace lardiner::paper
