// From a batch to its label runs: one for each group of containers that share everything but number and serial.
#include <algorithm>
#include <map>
#include <tuple>

#include "facts/container_state.h"
#include "facts/label_language.h"
#include "facts/scene.h"

namespace lardiner::facts {

namespace {

using Containers = std::vector<const batch::Container*>;

// How it leaves the making: as the book keeps it, except that frozen and hot are the work of events.
book::State first_state(const book::ContainerSpec* spec, bool tcs) {
  if (spec && (spec->kept == book::State::Chilled || spec->kept == book::State::Ambient)) return spec->kept;
  return tcs ? book::State::Chilled : book::State::Ambient;
}

// What is said in the first language only: names and figures that need no translating, and nothing of safety.
bool said_once(FactId id) {
  return id == FactId::Net || id == FactId::NetDeclared || id == FactId::Site || id == FactId::UsedFor ||
         id == FactId::Business || id == FactId::Lot || id == FactId::BlankMade || id == FactId::BlankBy ||
         id == FactId::BlankFrozen;
}

// Of the making the first paragraph, the day of it; that it was thawed or opened since is said in every language.
size_t paragraphs_said_once(const Fact& fact) {
  return said_once(fact.id) ? fact.paragraphs.size() : fact.id == FactId::Made ? 1 : 0;
}

// Collects the facts of one language, then of the next behind them.
void merge(std::vector<Fact>& into, const std::vector<Fact>& other) {
  const bool first = into.empty();
  for (const Fact& fact : other) {
    const auto same = std::find_if(into.begin(), into.end(), [&](const Fact& f) { return f.id == fact.id; });
    if (same == into.end()) {
      into.push_back(fact);
      continue;
    }
    for (size_t i = first ? 0 : paragraphs_said_once(fact); i < fact.paragraphs.size(); ++i) {
      const Paragraph& paragraph = fact.paragraphs[i];
      if (std::find(same->paragraphs.begin(), same->paragraphs.end(), paragraph) == same->paragraphs.end())
        same->paragraphs.push_back(paragraph);
    }
  }
}

std::vector<Fact> facts_of(const Scene& scene, bool pad) {
  std::vector<Fact> facts;
  add_name_facts(scene, facts);
  if (pad)
    add_pad_facts(scene, facts);
  else
    add_date_facts(scene, facts);
  if (!scene.use_by && !pad) {
    add_hold_facts(scene, facts);
  } else {
    add_contains_facts(scene, facts);
    add_storage_facts(scene, facts);
    if (scene.purpose != book::Purpose::Inside) add_finishing_facts(scene, facts);
    if (scene.purpose == book::Purpose::Sale) add_sale_facts(scene, facts);
  }
  add_identity_facts(scene, facts);
  std::erase_if(facts, [](const Fact& fact) { return fact.paragraphs.empty(); });
  return facts;
}

QString container_of(const Scene& scene, const QString& kind, int number, const QString& of) {
  const QString key = QStringLiteral("container.") + (kind.isEmpty() ? QStringLiteral("pack") : kind);
  return scene.words.sentence(key, {QString::number(number), of});
}

class RunMaker {
 public:
  RunMaker(const book::Book& book, const batch::Batch& batch, const std::vector<words::Language>& languages,
           const LabelWish& wish)
      : book_(book), batch_(batch), languages_(languages), wish_(wish) {}

  problem::ExpectedAll<std::vector<LabelRun>> make() {
    std::map<std::tuple<int, int, bool>, Containers> alike;  // by group, date, and whether they were printed before
    for (const batch::Container& container : batch_.containers)
      if (!container.discarded) alike[{container.group, container.use_by, container.reprint}].push_back(&container);
    std::vector<LabelRun> runs;
    for (const auto& [key, containers] : alike) runs.push_back(run(std::get<0>(key), std::get<1>(key), containers));
    if (!errors_.empty()) {
      problem::sort(errors_);
      return tl::unexpected(errors_);
    }
    return runs;
  }

 private:
  bool hold() const { return !batch_.refused.empty(); }

  LabelRun run(int group_index, int use_by_index, const Containers& containers) {
    const batch::ContainerGroup& group = batch_.record.containers[static_cast<size_t>(group_index)];
    const book::Product* product = book_.product(batch_.record.item);
    const book::ContainerSpec* spec = product ? product->container(group.kind, group.holds) : nullptr;
    LabelRun out;
    out.lot = batch_.lot;
    out.place = batch_.record.place;
    out.hold = hold();
    out.pad = wish_.pad;
    out.purpose = spec ? spec->purpose : book::Purpose::Inside;
    out.media = wish_.media.isEmpty() ? (spec ? spec->media : book_.kitchen.ingredient_media) : wish_.media;
    if (spec) out.label_template = spec->label_template;
    for (const words::Language* language : languages_of(spec))
      add_language(out, *language, Shape{&group, spec, use_by_index}, containers);
    if (out.facts.empty()) return out;
    finish(out);
    return out;
  }

  struct Shape {
    const batch::ContainerGroup* group;
    const book::ContainerSpec* spec;
    int use_by;
  };

  void add_language(LabelRun& out, const words::Language& language, const Shape& shape, const Containers& containers) {
    Scene scene{{language, book_.kitchen.units}, book_, batch_, errors_};
    if (!hold() && !wish_.pad) scene.use_by = &batch_.use_bys[static_cast<size_t>(shape.use_by)];
    scene.container = shape.spec;
    scene.group = shape.group;
    scene.purpose = out.purpose;
    scene.container_number = containers.front()->number;
    scene.reprint = containers.front()->reprint;
    scene.state = state_of(batch_.record, scene.container_number, first_state(shape.spec, is_tcs()));
    out.frozen = scene.state == book::State::Frozen;
    out.hot = scene.state == book::State::HotHeld;
    scene.first_language = out.facts.empty();
    merge(out.facts, facts_of(scene, wish_.pad));
    if (!scene.first_language) return;
    out.language = language.tag();
    for (const batch::Container* container : containers)
      out.containers.push_back(facts_of_container(scene, kind_of_all(), *container));
  }

  // Numbers run through all containers of a batch: only where they are of one kind can the label say "Tub 3 of 24".
  QString kind_of_all() const {
    const auto& groups = batch_.record.containers;
    const QString kind = groups.empty() ? QString() : groups.front().kind;
    const bool one_kind =
        std::all_of(groups.begin(), groups.end(), [&](const auto& group) { return group.kind == kind; });
    return one_kind ? kind : QString();
  }

  ContainerFacts facts_of_container(const Scene& scene, const QString& kind, const batch::Container& container) {
    const QString of = wish_.pad ? kBlank : QString::number(container.of);
    ContainerFacts out{container_of(scene, kind, container.number, of), container.serial, {}, container.number};
    if (wish_.to_be_read) return out;
    if (batch_.gtin.isEmpty() || batch_.lot.isEmpty()) return out;  // only a HOLD label may stand without a code
    if (const auto uri = code_uri(book_.kitchen, batch_, container)) {
      out.uri = *uri;
    } else {
      problem::Error error = uri.error();
      error.place = batch_.record.place;
      errors_.push_back(error);
    }
    return out;
  }

  // Title, and the widest form of what varies, so that one layout fits every label of the run.
  void finish(LabelRun& out) {
    const auto widest =
        std::max_element(out.containers.begin(), out.containers.end(),
                         [](const auto& a, const auto& b) { return a.container_of.size() < b.container_of.size(); });
    const auto longest =
        std::max_element(out.containers.begin(), out.containers.end(),
                         [](const auto& a, const auto& b) { return a.serial.size() < b.serial.size(); });
    out.facts.push_back({FactId::ContainerOf, plain(widest->container_of)});
    if (!longest->serial.isEmpty()) out.facts.push_back({FactId::Serial, plain(longest->serial)});
    const QString name = out.facts.front().paragraphs.front().front().text;
    out.title = out.lot.isEmpty() ? name : name + u' ' + out.lot;
  }

  bool is_tcs() const {
    const book::Product* product = book_.product(batch_.record.item);
    const book::Ingredient* ingredient = book_.ingredient(batch_.record.item);
    const auto is = product ? product->tcs.is : ingredient ? ingredient->tcs.is : book::TcsStatement::Is::Unknown;
    return is != book::TcsStatement::Is::No;
  }

  std::vector<const words::Language*> languages_of(const book::ContainerSpec* spec) {
    const QStringList codes = spec && !spec->languages.isEmpty() ? spec->languages : book_.kitchen.languages.mid(0, 1);
    std::vector<const words::Language*> out;
    for (const QString& code : codes) {
      const auto language = label_language(languages_, book_.kitchen, code, spec ? spec->place : batch_.record.place);
      if (language)
        out.push_back(*language);
      else
        errors_.push_back(language.error());
    }
    return out;
  }

  const book::Book& book_;
  const batch::Batch& batch_;
  const std::vector<words::Language>& languages_;
  const LabelWish& wish_;
  problem::Errors errors_;
};

}  // namespace

problem::ExpectedAll<std::vector<LabelRun>> label_runs(const book::Book& book, const batch::Batch& batch,
                                                       const std::vector<words::Language>& languages,
                                                       const LabelWish& wish) {
  if (!batch.refused.empty() && !wish.hold_labels) return std::vector<LabelRun>{};
  return RunMaker(book, batch, languages, wish).make();
}

}  // namespace lardiner::facts
