// Batch records from CSV or JSON Lines rows: words to ids, texts to amounts and instants, every fault told at once.
#include "batch/read_records.h"

#include <algorithm>

#include "batch/phrases.h"
#include "batch/read_records_entry.h"
#include "batch/read_records_parts.h"
#include "batch/read_records_rows.h"
#include "measure/text.h"
#include "reader/quote.h"

namespace lardiner::batch {

using problem::Code;
using problem::Errors;
using reader::Fields;
using reader::quoted;
using reader::Value;

namespace {

constexpr int kMostNumber = 9999;

QStringList product_ids(const book::Book& book) {
  QStringList ids;
  for (const book::Product& product : book.products) ids += product.id;
  return ids;
}

QStringList ingredient_ids(const book::Book& book) {
  QStringList ids;
  for (const book::Ingredient& ingredient : book.ingredients) ids += ingredient.id;
  return ids;
}

// A record as it stands in the file.
struct WrittenRecord {
  struct Further {
    QString adds;
    Value value;
  };
  Value own;
  std::vector<Further> further;
  bool doubled = false;
};

WrittenRecord written_record(const reader::Rows& rows, const RecordRows& of) {
  WrittenRecord out{rows.row(of.own), {}, of.doubled};
  out.further.reserve(of.further.size());
  for (const FurtherRow& row : of.further) out.further.push_back({row.adds, rows.row(row.row)});
  return out;
}

// Reads one record with all its parts.
class RecordReading {
 public:
  RecordReading(const WrittenRecord& rows, const Reading& reading, Errors& errors)
      : rows_(rows),
        reading_(reading),
        errors_(errors),
        before_(errors.size()),
        fields_(rows.own, QStringLiteral("the record"), errors) {}

  std::optional<Record> read() {
    fields_.has(u"row");
    read_subject();
    record_.number = fields_.integer(u"number", 1, kMostNumber);
    record_.lot = fields_.text(u"lot").value_or(QString());
    if (const Value* lot = fields_.value(u"lot")) record_.lot_place = lot->place;
    read_times();
    read_recorded(fields_, reading_, record_);
    record_.by = read_person(fields_, u"by", reading_);
    read_destination();
    if (record_.deed == Deed::Made)
      read_making();
    else
      read_package();
    read_containers_and_events();
    fields_.finish();
    if (errors_.size() != before_ || rows_.doubled) return std::nullopt;
    return std::move(record_);
  }

 private:
  void read_subject() {
    const QString product = fields_.text(u"product").value_or(QString());
    const QString ingredient = fields_.text(u"ingredient").value_or(QString());
    if (!product.isEmpty() && !ingredient.isEmpty()) {
      fields_.refuse(u"ingredient", Code::Conflict, QStringLiteral("the record has a product and an ingredient"),
                     QStringLiteral("keep one of the two"));
    } else if (!product.isEmpty()) {
      read_product(product);
    } else if (!ingredient.isEmpty()) {
      read_ingredient(ingredient);
    } else {
      fields_.refuse(
          u"product", Code::Missing, QStringLiteral("the record has no product"),
          QStringLiteral("write its id, or that of an ingredient with what was done; in a row that adds to a "
                         "record, say in the column row what it is"));
    }
  }

  void read_product(const QString& id) {
    record_.item = id;
    record_.place = fields_.value(u"product")->place;
    product_ = reading_.book.product(id);
    read_word(fields_, u"what", {QStringLiteral("made")});
    if (product_) return;
    fields_.refuse(
        u"product", Code::Unknown, QStringLiteral("%1 is not a product of the book").arg(quoted(id)),
        reading_.book.ingredient(id)
            ? QStringLiteral("it is an ingredient: name it as one, with what was done")
            : did_you_mean(id, product_ids(reading_.book), QStringLiteral("write the id of a product of the book")));
  }

  void read_ingredient(const QString& id) {
    static const std::vector<std::pair<QString, Deed>> deeds{{QStringLiteral("opened"), Deed::Opened},
                                                             {QStringLiteral("thawed"), Deed::Thawed},
                                                             {QStringLiteral("cut"), Deed::Cut},
                                                             {QStringLiteral("decanted"), Deed::Decanted}};
    record_.item = id;
    record_.deed = Deed::Opened;
    record_.place = fields_.value(u"ingredient")->place;
    QStringList words;
    for (const auto& [word, deed] : deeds) words += word;
    require(fields_, u"what", QStringLiteral("write opened, thawed, cut or decanted"));
    const std::optional<QString> word = read_word(fields_, u"what", words);
    if (word) record_.deed = deeds[static_cast<size_t>(words.indexOf(*word))].second;
    if (reading_.book.ingredient(id)) return;
    fields_.refuse(u"ingredient", Code::Unknown, QStringLiteral("%1 is not an ingredient of the book").arg(quoted(id)),
                   reading_.book.product(id)
                       ? QStringLiteral("it is a product: name it as one")
                       : did_you_mean(id, ingredient_ids(reading_.book),
                                      QStringLiteral("write the id of an ingredient of the book")));
  }

  void read_times() {
    require(fields_, u"made_at", QStringLiteral("write when it began, as 2026-02-28 14:30"));
    if (const std::optional<Moment> made = read_moment(fields_, u"made_at", reading_)) {
      record_.made_at = made->at;
      record_.time_known = made->time_known;
    }
    record_.made_to = read_instant(fields_, u"made_to", reading_);
    if (!record_.made_to || !record_.made_at.isValid() || *record_.made_to >= record_.made_at) return;
    fields_.refuse(
        u"made_to", Code::Conflict,
        QStringLiteral("made to %1, before it began at %2")
            .arg(instant_text(*record_.made_to, reading_.zone()), instant_text(record_.made_at, reading_.zone())),
        QStringLiteral("correct the time of one of the two"));
  }

  void read_destination() {
    record_.site = fields_.text(u"site").value_or(QString());
    record_.order = fields_.text(u"order").value_or(QString());
    if (record_.site.isEmpty() || reading_.book.site(record_.site)) return;
    QStringList sites;
    for (const book::Site& site : reading_.book.sites) sites += site.id;
    fields_.refuse(u"site", Code::Unknown, QStringLiteral("%1 is not a site of the book").arg(quoted(record_.site)),
                   did_you_mean(record_.site, sites, QStringLiteral("add it to the book as a [[site]]")));
  }

  void read_making() {
    read_pad(fields_, reading_, record_);
    record_.quantity = read_required_amount(fields_, u"quantity", reading_);
    record_.corrective_action = fields_.text(u"corrective_action").value_or(QString());
    record_.corrective_by = read_person(fields_, u"corrective_by", reading_);
    const bool action = fields_.has(u"corrective_action");
    if (action != fields_.has(u"corrective_by"))
      fields_.refuse(action ? u"corrective_action" : u"corrective_by", Code::Missing,
                     action ? QStringLiteral("the corrective action does not say who took it")
                            : QStringLiteral("somebody took a corrective action, but not which"),
                     action ? QStringLiteral("write corrective_by") : QStringLiteral("write corrective_action"));
    const auto keep = [](auto part, auto& parts) {
      if (part) parts.push_back(*part);
    };
    each(u"inputs", QStringLiteral("input"),
         [&](const WrittenPart& part) { keep(read_input(part, reading_, record_, product_), record_.inputs); });
    each(u"cooked", QStringLiteral("cooked"),
         [&](const WrittenPart& part) { keep(read_cook_reading(part, reading_, record_), record_.cooked); });
    each(u"cooled", QStringLiteral("cooled"),
         [&](const WrittenPart& part) { keep(read_cool_reading(part, reading_, record_), record_.cooled); });
  }

  void read_package() {
    record_.quantity = read_amount(fields_, u"quantity", reading_);
    record_.supplier_item = fields_.text(u"supplier_item").value_or(QString());
    record_.supplier_lot = fields_.text(u"supplier_lot").value_or(QString());
    record_.stated = read_stated_end(fields_, reading_);
    if (const std::optional<Moment> opened = read_moment(fields_, u"opened", reading_)) record_.opened_at = opened->at;
    if (record_.opened_at && record_.made_at.isValid() && *record_.opened_at > latest_use(record_, reading_.zone()))
      fields_.refuse(u"opened", Code::Conflict, QStringLiteral("opened after made_at"),
                     QStringLiteral("write when the package was first opened, or leave it out"));
    check_supplier_item();
    for (const WrittenRecord::Further& row : rows_.further)
      if (row.adds != QLatin1String("event") && row.adds != QLatin1String("containers"))
        errors_.push_back({Code::Conflict, QStringLiteral("a package of an ingredient has no %1 row").arg(row.adds),
                           row.value.find(u"row")->place, QStringLiteral("leave the row out, or correct its number")});
  }

  void check_supplier_item() {
    const book::Ingredient* ingredient = reading_.book.ingredient(record_.item);
    if (!ingredient || record_.supplier_item.isEmpty() || ingredient->supplier_item(record_.supplier_item)) return;
    QStringList known;
    for (const book::SupplierItem& item : ingredient->supplier_items) known += item.id;
    fields_.refuse(
        u"supplier_item", Code::Unknown,
        QStringLiteral("%1 is not a supplier item of %2").arg(quoted(record_.supplier_item), quoted(record_.item)),
        did_you_mean(record_.supplier_item, known, QStringLiteral("write the id of one of its supplier items")));
  }

  void read_containers_and_events() {
    const Value* cell = fields_.value(u"containers");
    if (cell && cell->kind == Value::Kind::String) {
      record_.containers = containers_of(fields_, u"containers", reading_);
    } else {
      for (const Value* table : fields_.tables(u"containers")) add_groups({*table, false, errors_});
    }
    for (const WrittenRecord::Further& row : rows_.further)
      if (row.adds == QLatin1String("containers")) add_groups({row.value, true, errors_});
    const bool any = cell || !record_.containers.empty();
    if (!any && record_.deed == Deed::Made)
      fields_.refuse(u"containers", Code::Missing, QStringLiteral("the record has no containers"),
                     QStringLiteral("write what it was put up in, as 24 tub 500 g"));
    check_containers();
    each(u"events", QStringLiteral("event"), [&](const WrittenPart& part) { add_event(part); });
  }

  void add_groups(const WrittenPart& part) {
    for (const ContainerGroup& group : read_containers(part, reading_)) record_.containers.push_back(group);
  }

  void check_containers() {
    if (product_)
      for (const ContainerGroup& group : record_.containers) check_kind(*product_, group, errors_);
    if (!record_.quantity) return;
    std::optional<measure::Quantity> held = measure::Quantity{record_.quantity->dimension, 0};
    for (const ContainerGroup& group : record_.containers) {
      const std::optional<measure::Quantity> holds = in_dimension(group.holds, record_.quantity->dimension);
      if (!holds) return;  // pieces against a weight, and nobody knows what a piece weighs
      held = *held + measure::scaled(*holds, {group.count, 1});
    }
    if (!measure::less(*record_.quantity, *held)) return;
    fields_.refuse(u"containers", Code::Conflict,
                   QStringLiteral("the containers hold %1, more than the %2 that was made")
                       .arg(shown(*held), shown(*record_.quantity)),
                   QStringLiteral("correct the quantity or the containers"));
  }

  std::optional<measure::Quantity> in_dimension(measure::Quantity quantity, measure::Dimension wanted) const {
    using measure::Dimension;
    if (quantity.dimension == wanted) return quantity;
    if (!product_ || !product_->unit_weight) return std::nullopt;
    const measure::Quantity unit = *product_->unit_weight;
    const measure::Quantity piece = measure::one(measure::Unit::Piece);
    if (quantity.dimension == Dimension::Count && unit.dimension == wanted)
      return measure::scaled(unit, measure::ratio(quantity, piece));
    if (wanted == Dimension::Count && quantity.dimension == unit.dimension)
      return measure::scaled(piece, measure::ratio(quantity, unit));
    return std::nullopt;
  }

  QString shown(measure::Quantity quantity) const {
    const QString text = measure::display(quantity, reading_.book.kitchen.units);
    return quantity.dimension == measure::Dimension::Count ? text + QStringLiteral(" pieces") : text;
  }

  void add_event(const WrittenPart& part) {
    const std::optional<Event> event = read_event(part, reading_);
    if (!event) return;
    int count = 0;
    for (const ContainerGroup& group : record_.containers) count += group.count;
    if (record_.containers.empty()) count = record_.deed == Deed::Made ? kMostNumber : 1;
    if (!event->containers.empty() && event->containers.back() > count)
      errors_.push_back(
          {Code::Range,
           QStringLiteral("there is no container %1: the record has %2").arg(event->containers.back()).arg(count),
           part.table.find(u"containers")->place, QStringLiteral("correct the numbers of the containers")});
    record_.events.push_back(*event);
  }

  // The parts under a key of the record (JSON) and in further rows (CSV).
  template <class Take>
  void each(QStringView key, const QString& adds, Take take) {
    for (const Value* table : fields_.tables(key)) take(WrittenPart{*table, false, errors_});
    for (const WrittenRecord::Further& row : rows_.further)
      if (row.adds == adds) take(WrittenPart{row.value, true, errors_});
  }

  const WrittenRecord& rows_;
  const Reading& reading_;
  Errors& errors_;
  size_t before_;
  Fields fields_;
  Record record_;
  const book::Product* product_ = nullptr;
};

}  // namespace

Records read_records(const reader::Rows& rows, const book::Book& book, const RecordSettings& settings) {
  Records out;
  const Reading reading{book, settings};
  for (const RecordRows& record_rows : record_rows(rows, out.errors)) {
    const WrittenRecord written = written_record(rows, record_rows);
    if (std::optional<Record> record = RecordReading(written, reading, out.errors).read())
      out.records.push_back(std::move(*record));
  }
  problem::sort(out.errors);
  return out;
}

Records read_records(const std::vector<Value>& rows, const book::Book& book, const RecordSettings& settings) {
  return read_records(reader::Rows{rows.size(), [&](size_t at) { return rows[at]; }, settings.decimal_comma}, book,
                      settings);
}

}  // namespace lardiner::batch
