// How the finisher cooks or reheats it: a paragraph for each equipment and start state, then how long it may be held.
#include "facts/scene.h"

namespace lardiner::facts {

namespace {

bool needs_cooking(const Scene& scene) {
  return scene.batch.readiness == book::Readiness::MustBeCooked ||
         scene.batch.readiness == book::Readiness::NotFullyCooked;
}

// A frozen container may be finished from frozen or, once thawed, from chilled.
bool applies(const Scene& scene, const book::Finishing& finishing) {
  if (finishing.from == scene.state) return true;
  if (scene.state == book::State::Frozen)
    return finishing.from == book::State::Thawed || finishing.from == book::State::Chilled;
  return scene.state == book::State::Thawed && finishing.from == book::State::Chilled;
}

const char* from_key(book::State state) {
  switch (state) {
    case book::State::Frozen:
      return "from_frozen";
    case book::State::Thawed:
      return "from_thawed";
    case book::State::Ambient:
      return "from_ambient";
    default:
      return "from_chilled";
  }
}

QString head(const Scene& scene, const book::Finishing& finishing) {
  const QString equipment = scene.words.word(QStringLiteral("equipment.") + finishing.equipment);
  QStringList parts;
  if (finishing.setting) parts << both_scales(scene, *finishing.setting);
  if (!finishing.setting_text.empty())
    parts << scene.text(finishing.setting_text, QStringLiteral("the setting of a finishing step"), finishing.place);
  if (finishing.least_seconds > 0) parts << lasting(scene, finishing.least_seconds, finishing.most_seconds);
  const QString from = scene.sentence(from_key(finishing.from), {equipment});
  return parts.isEmpty() ? from : scene.sentence("heading", {from, scene.words.clauses(parts)});
}

QString core(const Scene& scene, const book::Finishing& finishing) {
  if (!finishing.to) return {};
  QString text =
      scene.sentence(needs_cooking(scene) ? "cook_to" : "reheat_to", {both_scales(scene, finishing.to->temperature)});
  if (finishing.to->seconds > 0)
    text += u' ' + unbroken(scene.sentence("for_seconds", {QString::number(finishing.to->seconds)}));
  return text;
}

Paragraph paragraph(const Scene& scene, const book::Finishing& finishing) {
  QStringList rest{QString()};  // the strong run stands before it
  if (!finishing.cue.empty())
    rest << scene.text(finishing.cue, QStringLiteral("the cue of a finishing step"), finishing.place);
  if (finishing.stand_seconds > 0) rest << scene.sentence("stand", {lasting(scene, finishing.stand_seconds)});
  if (finishing.rest_seconds > 0) rest << scene.sentence("rest", {lasting(scene, finishing.rest_seconds)});
  QStringList steps{head(scene, finishing)};
  if (const QString to = core(scene, finishing); !to.isEmpty()) steps << to;
  return {Run{scene.words.clauses(steps), true},
          Run{scene.sentence("full_stop", {scene.words.sentences(rest)}), false}};
}

// The shortest hold of those that apply: one line serves whichever way it is finished.
int hold_most(const Scene& scene) {
  int least = 0;
  for (const book::Finishing& finishing : scene.product()->finishing) {
    const int hold = finishing.hold_most_seconds;
    if (hold > 0 && applies(scene, finishing)) least = least == 0 ? hold : std::min(least, hold);
  }
  return least;
}

// Hot-held, finished and time-controlled food is not cooked or reheated again from this label.
bool is_done_with(book::State state) {
  return state == book::State::HotHeld || state == book::State::Finished || state == book::State::TimeControl;
}

void refuse_without(const Scene& scene) {
  scene.errors.push_back({problem::Code::Missing,
                          QStringLiteral("product \"%1\" has no finishing step for a container in this state")
                              .arg(scene.batch.record.item),
                          scene.product()->place,
                          QStringLiteral("add a [[product.finishing]] with from = \"chilled\" or \"frozen\"")});
}

}  // namespace

void add_finishing_facts(const Scene& scene, std::vector<Fact>& facts) {
  const book::Product* product = scene.product();
  if (!product || (!product->finishing_needed && product->finishing.empty())) return;
  Fact steps{FactId::Finishing, {}};
  for (const book::Finishing& finishing : product->finishing)
    if (applies(scene, finishing)) steps.paragraphs.push_back(paragraph(scene, finishing));
  if (steps.paragraphs.empty()) {
    if (product->finishing_needed && !is_done_with(scene.state)) refuse_without(scene);
    return;
  }
  facts.push_back(steps);

  const int hold = hold_most(scene);
  QString finished = scene.sentence("finished_discard", {kBlank, kBlank});
  finished.replace(u' ' + kBlank, QChar(0x00A0) + kBlank);
  if (hold > 0) finished = scene.words.sentences({scene.sentence("hold_at_most", {lasting(scene, hold)}), finished});
  facts.push_back({FactId::HoldFinished, plain(finished)});
  facts.push_back({FactId::RemoveLabel, plain(scene.word("remove_label"))});
}

}  // namespace lardiner::facts
