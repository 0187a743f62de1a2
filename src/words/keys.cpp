// The keys of the words that labels and sheets print.
#include "words/keys.h"

#include <QHash>
#include <algorithm>
#include <array>

namespace lardiner::words {

namespace {

// Whether a sentence's values may stand in any order, or are built around in theirs; or whether it has plural forms.
enum class Form { Free, InOrder, Counted };

struct Row {
  const char* key;
  int values;  // how many {n} the sentence takes
  Form form = Form::Free;
};

constexpr Row kRows[] = {
    // How words and sentences are joined
    {"items", 2, Form::InOrder},
    {"clauses", 2, Form::InOrder},
    {"sentences", 2, Form::InOrder},
    {"full_stop", 1, Form::InOrder},
    {"heading", 2, Form::InOrder},
    {"with_parts", 2, Form::InOrder},
    // Dates
    {"date", 4},
    {"day_month", 3},
    {"year", 1},
    // The band, and what is in it
    {"use_by", 0},
    {"best_before", 0},
    {"frozen", 0},
    {"contains", 1},
    {"may_contain", 1},
    {"none_of", 1},
    {"none_of_as_ingredient", 1},
    {"substitution_adds", 1},
    {"list.us", 0},
    {"list.eu", 0},
    {"list.ca", 0},
    // Readiness
    {"raw", 0},
    {"not_fully_cooked", 0},
    {"ready_to_eat", 0},
    // Keeping
    {"keep_at_or_below", 1},
    {"keep_frozen", 1},
    {"keep_hot", 1},
    {"keep_dry", 0},
    {"time_control", 0},
    {"never_above", 1},
    {"rop_keep_cold", 1},
    {"rop_discard", 1},
    // What was done, and when
    {"made", 1},
    {"opened", 1},
    {"thawed_on", 1},
    {"cut", 1},
    {"decanted", 1},
    {"frozen_on", 1},
    // Frozen
    {"days_left", 1, Form::Counted},
    {"thaw_day_is_day_1", 1},
    {"use_on_thaw_day", 1},
    {"never_past", 1},
    {"best_before_frozen", 1},
    {"thawed_blank", 1},
    {"use_by_blank", 1},
    {"previously_frozen", 0},
    // Pads, to be filled in by hand
    {"pad_made", 2},
    {"pad_frozen_before", 1},
    {"pad_days", 2},
    {"pad_months", 1},
    {"pad_never_later", 0},
    {"pad_release", 0},
    {"pad_reading", 3},
    {"pad_cool_from", 1},
    {"pad_cool_to", 2},
    {"pad_book", 1},
    // Containers and counts
    {"container.tub", 2},
    {"container.tray", 2},
    {"container.bag", 2},
    {"container.case", 2},
    {"container.jar", 2},
    {"container.pan", 2},
    {"container.bottle", 2},
    {"container.pack", 2},
    {"pieces", 1, Form::Counted},
    {"net", 1},
    {"lot", 1},
    {"supplier_lot", 1},
    {"initials", 1},
    // A figure with its unit
    {"unit_h", 1},
    {"unit_min", 1},
    {"unit_s", 1},
    {"unit_mg", 1},
    {"unit_g", 1},
    {"unit_kg", 1},
    {"unit_ml", 1},
    {"unit_l", 1},
    {"unit_oz", 1},
    {"unit_lb", 1},
    {"unit_tsp", 1},
    {"unit_fl_oz", 1},
    {"unit_qt", 1},
    {"unit_gal", 1},
    // For whom
    {"for_site_only", 1},
    {"for_site", 2},
    // Finishing
    {"from_chilled", 1},
    {"from_frozen", 1},
    {"from_ambient", 1},
    {"from_thawed", 1},
    {"equipment.oven", 0},
    {"equipment.convection-oven", 0},
    {"equipment.combi-oven", 0},
    {"equipment.microwave", 0},
    {"equipment.fryer", 0},
    {"equipment.griddle", 0},
    {"equipment.pan", 0},
    {"equipment.steamer", 0},
    {"equipment.water-bath", 0},
    {"equipment.grill", 0},
    {"range", 2},
    {"cook_to", 1},
    {"reheat_to", 1},
    {"for_seconds", 1},
    {"stand", 1},
    {"rest", 1},
    {"hold_at_most", 1},
    {"finished_discard", 2},
    {"remove_label", 0},
    // Sale
    {"ingredients", 1, Form::InOrder},
    {"net_quantity", 1},
    {"net_weight", 1},
    {"made_by", 1},
    {"safe_handling", 0},
    // Hold
    {"hold", 0},
    {"do_not_use", 0},
    {"no_date", 1},
    {"missing.allergens", 0},
    {"missing.tcs", 0},
    {"missing.shelf_life", 0},
    {"missing.cook_reading", 0},
    {"missing.cook_too_low", 0},
    {"missing.cook_temperature", 0},
    {"missing.cooling", 0},
    {"missing.finishing", 0},
    {"missing.past_its_date", 0},
    {"missing.input_date", 0},
    {"missing.input", 0},
    {"missing.other", 0},
    // Substances and entries of lists
    {"allergen.milk", 0},
    {"allergen.egg", 0},
    {"allergen.fish", 0},
    {"allergen.crustacean", 0},
    {"allergen.mollusc", 0},
    {"allergen.shellfish", 0},
    {"allergen.tree-nut", 0},
    {"allergen.wheat", 0},
    {"allergen.rye", 0},
    {"allergen.barley", 0},
    {"allergen.oats", 0},
    {"allergen.triticale", 0},
    {"allergen.gluten-cereals", 0},
    {"allergen.peanut", 0},
    {"allergen.soy", 0},
    {"allergen.sesame", 0},
    {"allergen.celery", 0},
    {"allergen.mustard", 0},
    {"allergen.lupin", 0},
    {"allergen.sulphites", 0},
    // Species
    {"allergen.almond", 0},
    {"allergen.black-walnut", 0},
    {"allergen.brazil-nut", 0},
    {"allergen.california-walnut", 0},
    {"allergen.cashew", 0},
    {"allergen.chestnut", 0},
    {"allergen.coconut", 0},
    {"allergen.hazelnut", 0},
    {"allergen.heartnut", 0},
    {"allergen.macadamia", 0},
    {"allergen.pecan", 0},
    {"allergen.pine-nut", 0},
    {"allergen.pistachio", 0},
    {"allergen.walnut", 0},
    {"allergen.beechnut", 0},
    {"allergen.chinquapin", 0},
    {"allergen.cola-nut", 0},
    {"allergen.ginkgo", 0},
    {"allergen.hickory", 0},
    {"allergen.pili-nut", 0},
    {"allergen.shea-nut", 0},
    {"allergen.spelt", 0},
    {"allergen.khorasan", 0},
    {"allergen.durum", 0},
    {"allergen.anchovy", 0},
    {"allergen.bass", 0},
    {"allergen.carp", 0},
    {"allergen.catfish", 0},
    {"allergen.cod", 0},
    {"allergen.flounder", 0},
    {"allergen.haddock", 0},
    {"allergen.hake", 0},
    {"allergen.halibut", 0},
    {"allergen.herring", 0},
    {"allergen.mackerel", 0},
    {"allergen.mahi-mahi", 0},
    {"allergen.monkfish", 0},
    {"allergen.perch", 0},
    {"allergen.plaice", 0},
    {"allergen.pollock", 0},
    {"allergen.salmon", 0},
    {"allergen.sardine", 0},
    {"allergen.snapper", 0},
    {"allergen.sole", 0},
    {"allergen.sprat", 0},
    {"allergen.swordfish", 0},
    {"allergen.tilapia", 0},
    {"allergen.trout", 0},
    {"allergen.tuna", 0},
    {"allergen.turbot", 0},
    {"allergen.whiting", 0},
    {"allergen.crab", 0},
    {"allergen.crayfish", 0},
    {"allergen.krill", 0},
    {"allergen.langoustine", 0},
    {"allergen.lobster", 0},
    {"allergen.prawn", 0},
    {"allergen.abalone", 0},
    {"allergen.clam", 0},
    {"allergen.cockle", 0},
    {"allergen.cuttlefish", 0},
    {"allergen.mussel", 0},
    {"allergen.octopus", 0},
    {"allergen.oyster", 0},
    {"allergen.scallop", 0},
    {"allergen.snail", 0},
    {"allergen.squid", 0},
    {"allergen.whelk", 0},
    // Work sheets: counts of what is filled, labelled and set out
    {"pulls", 1, Form::Counted},
    {"tubs", 1, Form::Counted},
    {"trays", 1, Form::Counted},
    {"bags", 1, Form::Counted},
    {"cases", 1, Form::Counted},
    {"jars", 1, Form::Counted},
    {"pans", 1, Form::Counted},
    {"bottles", 1, Form::Counted},
    {"packs", 1, Form::Counted},
    // Work sheets, and what prep and assembly share
    {"sheet.prep", 0},
    {"sheet.assembly", 0},
    {"sheet.plan", 0},
    {"sheet.page_of", 2},
    {"sheet.lot", 0},
    {"sheet.begun", 0},
    {"sheet.ended", 0},
    {"sheet.by", 0},
    {"sheet.for_whom", 1},
    {"sheet.each_of", 2},
    {"sheet.item", 0},
    {"sheet.pull", 0},
    {"sheet.weigh", 0},
    {"sheet.reads", 0},
    {"sheet.fine_scale", 0},
    {"sheet.into", 1},
    {"sheet.bowl", 0},
    {"sheet.empty", 1},
    {"sheet.all_in", 1},
    {"sheet.comes_to", 1},
    {"sheet.law_most", 0},
    {"sheet.allergens_unknown", 0},
    {"sheet.tsp", 1},
    {"sheet.tbsp", 1},
    {"sheet.cups", 1},
    {"sheet.measures_by", 1},
    {"sheet.steps", 0},
    {"sheet.time", 0},
    {"sheet.limits", 0},
    {"sheet.limit", 0},
    {"sheet.reading", 0},
    {"sheet.at", 0},
    {"sheet.cook_unknown", 0},
    {"sheet.missed", 0},
    {"sheet.fill", 0},
    // Assembly sheets
    {"sheet.units_for", 2},
    {"sheet.one_weighs", 1},
    {"sheet.in_one", 0},
    {"sheet.for_all", 0},
    {"sheet.disher", 2},
    {"sheet.brush", 1},
    {"sheet.drizzle", 1},
    {"sheet.bottle", 0},
    {"sheet.before", 0},
    {"sheet.after", 0},
    {"sheet.tray", 1},
    {"sheet.rows_columns", 2},
    {"sheet.check_weigh", 0},
    {"sheet.check_weigh_rule", 0},
    {"sheet.take_out", 2},
    {"sheet.no_unit_in_time", 1},
    {"sheet.out", 0},
    {"sheet.back_by", 0},
    {"sheet.raw_parts", 0},
    {"sheet.sure", 1},
    {"sheet.suffices", 0},
    {"sheet.worst", 0},
    {"sheet.likely", 0},
    {"sheet.best", 0},
    {"sheet.limiting", 0},
    {"sheet.not_known", 0},
    // The day's plan
    {"sheet.work", 0},
    {"sheet.start", 0},
    {"sheet.making", 0},
    {"sheet.window", 2},
    {"sheet.window_open", 1},
    {"sheet.ready_at", 1},
    {"sheet.time_not_said", 0},
    {"sheet.clean_down", 0},
    {"sheet.on_hand_level", 0},
    {"sheet.pull_list", 0},
    {"sheet.amount", 0},
    {"sheet.goes_out", 0},
    {"sheet.thaw_by", 1},
    {"sheet.buying", 0},
    {"sheet.need", 0},
    {"sheet.buy", 0},
    {"sheet.needed_by", 0},
    {"sheet.unmet", 0},
    {"sheet.why", 0},
    {"sheet.too_late", 2},
    {"sheet.life_too_short", 2},
    {"sheet.no_window", 2},
    {"sheet.no_weight", 1},
    {"sheet.no_life", 1},
    {"sheet.passed_over", 0},
    {"sheet.past_date", 0},
    {"sheet.too_short", 0},
    {"sheet.no_date", 0},
    {"sheet.frozen_unknown", 0},
    {"sheet.no_time_to_thaw", 0},
    {"sheet.orders", 0},
    {"sheet.product", 0},
    {"sheet.due", 0},
    {"sheet.windows", 0},
    {"sheet.windows_read", 0},
    {"sheet.windows_unknown", 0},
    {"sheet.now", 0},
    // The foot of a work sheet
    {"sheet.caution_hands", 0},
    {"sheet.caution_packages", 0},
    {"sheet.caution_defer", 0},
};

struct Family {
  QLatin1String prefix;
  int values;
};

// A kitchen may add an allergen of its own law, a list, an equipment or a container, and the words for it.
constexpr std::array<Family, 4> kFamilies{{{QLatin1String("allergen."), 0},
                                           {QLatin1String("list."), 0},
                                           {QLatin1String("equipment."), 0},
                                           {QLatin1String("container."), 2}}};

const Family* family_of(const QString& key) {
  const auto found = std::find_if(kFamilies.begin(), kFamilies.end(), [&](const Family& family) {
    return key.startsWith(family.prefix) && key.size() > family.prefix.size();
  });
  return found == kFamilies.end() ? nullptr : &*found;
}

const QHash<QString, const Row*>& rows() {
  static const QHash<QString, const Row*> table = [] {
    QHash<QString, const Row*> built;
    for (const Row& row : kRows) built.insert(QString::fromLatin1(row.key), &row);
    return built;
  }();
  return table;
}

// The row of "net", or of "pieces" for "pieces.few".
const Row* row_of(const QString& key) {
  if (const Row* row = rows().value(key)) return row->form == Form::Counted ? nullptr : row;
  const Row* row = rows().value(key.section(u'.', 0, 0));
  return row && row->form == Form::Counted ? row : nullptr;
}

}  // namespace

QStringList keys(const QString& language) {
  QStringList out;
  for (const Row& row : kRows) {
    const QString key = QString::fromLatin1(row.key);
    if (row.form != Form::Counted)
      out.append(key);
    else
      for (const Plural plural : plurals_of(language)) out.append(plural_key(key, plural));
  }
  return out;
}

QString plural_key(const QString& key, Plural plural) { return key + u'.' + name(plural); }

int values_of(const QString& key) {
  if (const Row* row = row_of(key)) return row->values;
  const Family* family = family_of(key);
  return family ? family->values : 0;
}

bool is_in_order(const QString& key) {
  const Row* row = row_of(key);
  return row && row->form == Form::InOrder;
}

bool is_known(const QString& key, const QString& language) {
  const Row* row = row_of(key);
  if (!row || row->form != Form::Counted) return row || family_of(key);
  const std::vector<Plural> plurals = plurals_of(language);
  return std::any_of(plurals.begin(), plurals.end(),
                     [&](Plural plural) { return key == plural_key(QString::fromLatin1(row->key), plural); });
}

}  // namespace lardiner::words
