// What a label says of the thing itself: name, readiness, how much, how to keep it, whom it is for, whose lot it is.
#include "facts/scene.h"

namespace lardiner::facts {

namespace {

// A pad's label is there before the cook, which makes the food what it shall be.
bool is_to_be_cooked(const Scene& scene) {
  return !scene.use_by && scene.product() && scene.product()->process == book::Process::Cook;
}

// What is not ready to eat always says so; that it is ready is told to the finisher.
void add_readiness(const Scene& scene, std::vector<Fact>& facts) {
  const char* key = nullptr;
  switch (scene.batch.readiness) {
    case book::Readiness::MustBeCooked:
      key = "raw";
      break;
    case book::Readiness::NotFullyCooked:
      key = "not_fully_cooked";
      break;
    case book::Readiness::CookedReadyToEat:
    case book::Readiness::ReadyToEatUncooked:
      key = scene.purpose == book::Purpose::Finisher && !is_to_be_cooked(scene) ? "ready_to_eat" : nullptr;
      break;
    case book::Readiness::Unknown:
      scene.errors.push_back({problem::Code::Missing,
                              QStringLiteral("whether \"%1\" must be cooked is not known").arg(scene.batch.record.item),
                              scene.batch.record.place,
                              QStringLiteral("state must_be_cooked for each of its ingredients")});
      return;
  }
  if (key) facts.push_back({FactId::Readiness, strong(scene.word(key))});
}

bool is_tcs(const Scene& scene) {
  const book::TcsStatement& tcs = scene.product() ? scene.product()->tcs : scene.ingredient()->tcs;
  return tcs.is != book::TcsStatement::Is::No;
}

QString keep_at(const Scene& scene) {
  const book::RuleSet& rules = scene.book.rules;
  switch (scene.state) {
    case book::State::Frozen:
      return scene.sentence("keep_frozen", {both_scales(scene, scene.book.kitchen.freezer)});
    case book::State::HotHeld:
      return scene.sentence("keep_hot", {both_scales(scene, rules.hot_holding)});
    case book::State::TimeControl:
    case book::State::Finished:
      return {};  // a time of its own governs it
    default:
      return is_tcs(scene) || scene.state != book::State::Ambient
                 ? scene.sentence("keep_at_or_below", {both_scales(scene, rules.cold_holding)})
                 : scene.word("keep_dry");
  }
}

// Chilled: frozen, hot-held and later states have a keep-at, or a time, of their own.
bool is_chilled_pack(const Scene& scene) {
  const bool chilled = scene.state == book::State::Chilled || scene.state == book::State::Thawed;
  return chilled && scene.product() && scene.group &&
         scene.product()->reduced_oxygen(scene.group->kind, scene.group->holds);
}

// As the label shows it; on a pad's label it is written by hand.
QString end_of(const Scene& scene) {
  if (!scene.use_by) return kDayBlank;
  return scene.use_by->form == batch::UseBy::Form::Date
             ? scene.words.date(scene.use_by->date)
             : scene.words.date_time(scene.use_by->end.toTimeZone(scene.book.kitchen.zone));
}

// Such a pack's own sentences say how cold to keep it.
void add_reduced_oxygen(const Scene& scene, std::vector<Fact>& facts) {
  const QString keep = scene.sentence("rop_keep_cold", {both_scales(scene, scene.book.rules.cold_holding)});
  Fact fact{FactId::ReducedOxygen, strong(keep)};
  fact.paragraphs.push_back({Run{scene.sentence("rop_discard", {end_of(scene)}), false}});
  facts.push_back(fact);
}

void add_net(const Scene& scene, std::vector<Fact>& facts) {
  if (!scene.group || scene.group->holds.amount == 0 || scene.purpose == book::Purpose::Sale) return;
  const bool counted = scene.group->holds.dimension == measure::Dimension::Count;
  if (counted)
    facts.push_back({FactId::Count, strong(pieces(scene, scene.group->holds))});
  else
    facts.push_back({FactId::Net, strong(both_systems(scene, scene.group->holds))});
}

QString for_whom(const Scene& scene) {
  const book::Site* site = scene.book.site(scene.batch.record.site);
  if (!site) return {};
  const QString name = scene.text(site->name, QStringLiteral("site \"%1\"").arg(site->id), site->place);
  if (scene.batch.record.order.isEmpty()) return scene.sentence("for_site_only", {name});
  const QString& order = scene.batch.record.order;
  return scene.sentence("for_site", {name, order}).replace(u' ' + order, QChar(0x00A0) + order);
}

}  // namespace

void add_name_facts(const Scene& scene, std::vector<Fact>& facts) {
  if (const book::Product* product = scene.product()) {
    const bool common = scene.purpose == book::Purpose::Sale && !product->common_name.empty();
    facts.push_back(
        {FactId::Name, strong(scene.text(common ? product->common_name : product->name,
                                         QStringLiteral("product \"%1\"").arg(product->id), product->place))});
  } else if (const book::Ingredient* ingredient = scene.ingredient()) {
    facts.push_back(
        {FactId::Name, strong(scene.text(ingredient->name, QStringLiteral("ingredient \"%1\"").arg(ingredient->id),
                                         ingredient->place))});
  }
}

void add_storage_facts(const Scene& scene, std::vector<Fact>& facts) {
  add_readiness(scene, facts);
  add_net(scene, facts);
  if (is_chilled_pack(scene))
    add_reduced_oxygen(scene, facts);
  else
    facts.push_back({FactId::KeepAt, plain(keep_at(scene))});
  if (scene.purpose == book::Purpose::Inside && scene.product() && !scene.product()->used_for.empty())
    facts.push_back({FactId::UsedFor,
                     plain(scene.text(scene.product()->used_for, QStringLiteral("used_for"), scene.product()->place))});
  facts.push_back({FactId::Site, plain(for_whom(scene))});
}

void add_identity_facts(const Scene& scene, std::vector<Fact>& facts) {
  const batch::Record& record = scene.batch.record;
  if (!scene.batch.lot.isEmpty()) {
    // A lid has no room for both; who made it stands in its history.
    const QString word = scene.reprint ? scene.word("reprint") : record.by;
    const QString beside = word.isEmpty() ? QString() : QStringLiteral(" · ") + word;
    facts.push_back({FactId::Lot, strong(scene.batch.lot + beside)});
  }
  if (!record.supplier_lot.isEmpty())
    facts.push_back({FactId::SupplierLot, plain(scene.sentence("supplier_lot", {record.supplier_lot}))});
}

}  // namespace lardiner::facts
