// One label run laid out on one medium: everything that must be said, measured and fitted, or an error that says what
// lacks.
#include "paper/label.h"

#include <algorithm>

#include "facts/fact_names.h"
#include "paper/label_search.h"
#include "paper/sheet.h"
#include "symbol/qr.h"

namespace lardiner::paper {

namespace {

using problem::Code;

// A frozen container's date may be smaller than its block says where room is short, but not smaller than this (points).
constexpr double kLeastFrozenDate = 9;

int code_modules(const facts::LabelRun& run) {
  qsizetype longest = 0;
  for (const facts::ContainerFacts& container : run.containers) longest = std::max(longest, container.uri.size());
  const int version = longest == 0 ? 0 : symbol::qr_version_for(longest, symbol::ErrorCorrection::L);
  return version == 0 ? 0 : symbol::modules(version);
}

std::vector<BlockBounds> bounds_of(const facts::LabelRun& run, const LabelTemplate& label, const LabelText& text,
                                   const Faces& faces, Resolution resolution) {
  const auto bounds = [&](Sizes sizes, Weight weight, GivesWay gives_way) {
    sizes.least = std::max(sizes.least, legible(label, faces, weight, resolution));
    sizes.preferred = std::max(sizes.preferred, sizes.least);
    sizes.most = std::max(sizes.most, sizes.preferred);
    return BlockBounds{sizes, gives_way};
  };
  std::vector<BlockBounds> out;
  for (std::size_t i = 0; i < label.blocks.size(); ++i) {
    const Block& block = label.blocks[i];
    const bool frozen_date = block.band && run.frozen;
    Sizes sizes = block.sizes;
    if (frozen_date) sizes.least = std::min(sizes.least, Points{kLeastFrozenDate});
    out.push_back(bounds(sizes, block.weight, block.gives_way));
    out.back().says_something = !text.blocks[i].empty();
    out.back().ordered = !frozen_date;
  }
  out.push_back(bounds(label.foot, Weight::Bold, GivesWay::WithTheRest));
  return out;
}

Ground ground_of(const facts::LabelRun& run, const LabelTemplate& label, const LabelText& text,
                 const book::Media& medium, const Faces& faces) {
  const Sheet sheet = sheet_of(medium);
  const Resolution resolution = sheet.label.resolution;
  const auto dots = [&](Millimetres mm) { return whole_dots_covering(fine_dots(mm, resolution)); };
  return {run,
          label,
          text,
          faces,
          sheet.label,
          sheet.margin,
          dots(label.margin),
          dots(label.frame),
          code_modules(run),
          bounds_of(run, label, text, faces, resolution)};
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
  Attempt attempt = best_attempt(ground_of(run, label, *text, medium, faces), Dots{medium.module_dots});
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
