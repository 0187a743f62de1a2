// One label run laid out on one medium: everything that must be said, measured and fitted, or an error that says what
// lacks.
#include "paper/label.h"

#include <algorithm>

#include "facts/fact_names.h"
#include "paper/label_stack.h"
#include "paper/sheet.h"
#include "symbol/qr.h"

namespace lardiner::paper {

namespace {

using problem::Code;

// Factors tried lie between "all at their least" and "all at their most"; eight halvings leave half a percent.
constexpr double kLeastFactor = 0.2;
constexpr double kMostFactor = 4;
constexpr int kHalvings = 9;

int code_modules(const facts::LabelRun& run) {
  qsizetype longest = 0;
  for (const facts::ContainerFacts& container : run.containers) longest = std::max(longest, container.uri.size());
  const int version = longest == 0 ? 0 : symbol::qr_version_for(longest, symbol::ErrorCorrection::L);
  return version == 0 ? 0 : symbol::modules(version);
}

Ground ground_of(const facts::LabelRun& run, const LabelTemplate& label, const LabelText& text,
                 const book::Media& medium, const Faces& faces) {
  const Sheet sheet = sheet_of(medium);
  const auto dots = [&](Millimetres mm) { return whole_dots_covering(fine_dots(mm, sheet.label.resolution)); };
  const Dots margin =
      std::max({dots(label.margin), sheet.margin.top, sheet.margin.right, sheet.margin.bottom, sheet.margin.left});
  return {run, label, text, faces, sheet.label, margin, dots(label.frame), code_modules(run)};
}

// Type this near its preferred size is good enough to leave the layout as it is.
constexpr double kNearPreferred = 0.92;

// The largest factor at which everything fits, or what lacks when all stands at its least.
Attempt largest(const Ground& ground, bool flowed, Dots module) {
  Attempt best = stack(ground, {kLeastFactor, flowed, module});
  if (best.lack) return best;
  double fits = kLeastFactor, fails = kMostFactor;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = (fits + fails) / 2;
    Attempt attempt = stack(ground, {middle, flowed, module});
    (attempt.lack ? fails : fits) = middle;
    if (!attempt.lack) best = std::move(attempt);
  }
  return best;
}

// Apart where that leaves the preferred sizes, else run together where that makes the type larger.
Attempt best_for(const Ground& ground, Dots module) {
  Attempt apart = largest(ground, false, module);
  if (!apart.lack && apart.layout.factor >= kNearPreferred) return apart;
  Attempt flowed = largest(ground, true, module);
  if (flowed.lack) return apart.lack ? flowed : apart;
  return !apart.lack && apart.layout.factor >= flowed.layout.factor ? apart : flowed;
}

bool is_better(const Attempt& one, const Attempt& other) {
  if (one.lack || other.lack) return other.lack.has_value();  // of two refusals the smaller code's says what lacks
  return one.layout.factor > other.layout.factor * 1.05;      // a larger code is worth a little type
}

// Smaller modules are read markedly less often; larger ones than the largest no more often, and the paper is better
// used for type (DEVELOPERS.md, "The code, and why this size").
constexpr Millimetres kGoodModule{0.5}, kLargestModule{0.65};

// From the largest code that the template allows down to the medium's least: the first that leaves all facts apart and
// near their preferred sizes, else the one with the largest type; a code below the good size only where nothing else
// fits.
Attempt best_layout(const Ground& ground, const book::Media& medium) {
  if (ground.code_modules == 0) return best_for(ground, Dots{0});
  const int shorter = std::min(ground.page.width.value, ground.page.height.value);
  const int room = static_cast<int>(shorter * ground.label.code_share);
  const int with_quiet = ground.code_modules + 2 * symbol::kQuietZone;
  const int most = std::min(symbol::largest_dots_per_module(with_quiet, room),
                            whole_dots_within(fine_dots(kLargestModule, ground.page.resolution)).value);
  const int good = whole_dots_covering(fine_dots(kGoodModule, ground.page.resolution)).value;
  std::optional<Attempt> best;
  for (int module = std::max(most, medium.module_dots); module >= medium.module_dots; --module) {
    if (module < good && best && !best->lack) break;
    Attempt attempt = best_for(ground, Dots{module});
    if (!attempt.lack && !attempt.layout.flowed && attempt.layout.factor >= kNearPreferred) return attempt;
    if (!best || is_better(attempt, *best)) best = std::move(attempt);
  }
  return std::move(*best);
}

QString shown(FineDots dots, Resolution resolution) {
  return QString::number(std::max(0.1, millimetres(dots, resolution).value), 'f', 1) + QStringLiteral(" mm");
}

QString medium_name(const book::Media& medium) {
  return QStringLiteral("\"%1\" (%2 × %3 mm)")
      .arg(medium.id)
      .arg(medium.width_as_read() / 100.0)
      .arg(medium.height_as_read() / 100.0);
}

problem::Error no_room(const facts::LabelRun& run, const Lack& lack, const book::Media& medium) {
  const Resolution resolution{medium.dots_per_inch};
  const bool wide = lack.width.value > 0;
  QString what = QStringLiteral("the label of %1 does not fit on %2: %3 needs %4 more %5")
                     .arg(run.title, medium_name(medium), facts::name(lack.fact),
                          shown(wide ? lack.width : lack.height, resolution),
                          wide ? QStringLiteral("width") : QStringLiteral("height"));
  if (!lack.word.isEmpty()) what += QStringLiteral(" for \"%1\"").arg(lack.word);
  return {Code::NoRoom, what, run.place, {}};
}

std::optional<problem::Error> not_borne(const facts::LabelRun& run, const book::Media& medium) {
  const bool refused = (run.frozen && !medium.freezer) || (run.hot && !medium.hot);
  if (!refused) return std::nullopt;
  return problem::Error{
      Code::Conflict,
      QStringLiteral("%1 is %2, and medium \"%3\" is not made for that")
          .arg(run.title, run.frozen ? QStringLiteral("frozen") : QStringLiteral("held hot"), medium.id),
      run.place,
      QStringLiteral("use a medium whose bears lists \"%1\"")
          .arg(run.frozen ? QStringLiteral("freezer") : QStringLiteral("hot"))};
}

}  // namespace

problem::ExpectedAll<LabelLayout> lay_out(const facts::LabelRun& run, const LabelTemplate& label,
                                          const book::Media& medium, const Faces& faces) {
  if (const auto error = not_borne(run, medium)) return tl::unexpected(problem::Errors{*error});
  const auto text = label_text(run, label, faces);
  if (!text) return tl::unexpected(text.error());
  Attempt attempt = best_layout(ground_of(run, label, *text, medium, faces), medium);
  if (attempt.lack) return tl::unexpected(problem::Errors{no_room(run, *attempt.lack, medium)});
  return std::move(attempt.layout);
}

const book::Media* smallest_that_fits(const facts::LabelRun& run, const LabelTemplate& label,
                                      const std::vector<book::Media>& media, const Faces& faces) {
  std::vector<const book::Media*> by_area;
  for (const book::Media& medium : media) by_area.push_back(&medium);
  std::stable_sort(by_area.begin(), by_area.end(), [](const auto* a, const auto* b) {
    return qint64{a->width} * a->height < qint64{b->width} * b->height;
  });
  const auto found = std::find_if(by_area.begin(), by_area.end(), [&](const book::Media* medium) {
    return lay_out(run, label, *medium, faces).has_value();
  });
  return found == by_area.end() ? nullptr : *found;
}

Drawing own_drawing(const LabelLayout& layout, const facts::ContainerFacts& container,
                    const std::optional<CodeImage>& code, const Faces& faces) {
  Drawing out;
  for (const Varying& varying : layout.varying) {
    OneLine line = varying.line;
    line.text = varying.fact == facts::FactId::Serial ? container.serial : container.container_of;
    add_runs(out.texts, faces, line, layout.size.resolution);
  }
  if (layout.code && code) {
    const Dots side = layout.code->module * code->modules;
    out.codes.push_back({layout.code->right - side, layout.code->bottom - side, layout.code->module, *code});
  }
  return out;
}

}  // namespace lardiner::paper
