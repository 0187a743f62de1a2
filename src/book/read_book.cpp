// The files of a kitchen book, read in the order in which they need one another, and checked as one.
#include <QCryptographicHash>
#include <QSet>
#include <algorithm>
#include <memory>
#include <utility>

#include "book/book.h"
#include "book/checks.h"
#include "book/other_size.h"
#include "book/tables.h"
#include "book/values.h"
#include "reader/quote.h"
#include "reader/read.h"

namespace lardiner::book {

using problem::Code;
using problem::Error;
using problem::Errors;
using reader::Fields;
using reader::Value;

namespace {

const QString& kitchen_file() {
  static const QString name = QStringLiteral("kitchen.toml");
  return name;
}

QString base_name(const QString& file) { return file.section(u'/', -1); }

// Names and bytes in the order of the names, without folders, so that where a book lies makes no other book of it; each
// with its length, so that no two books run together alike.
void add_files(QCryptographicHash& hash, const std::vector<SourceFile>& files) {
  std::vector<std::pair<QString, QByteArray>> all;
  for (const SourceFile& file : files) all.emplace_back(base_name(file.name), file.bytes);
  std::sort(all.begin(), all.end());
  const auto add = [&](const QByteArray& bytes) {
    hash.addData(QByteArray::number(bytes.size()) + ':');
    hash.addData(bytes);
  };
  add(QByteArray::number(static_cast<qulonglong>(all.size())));
  for (const auto& [name, bytes] : all) {
    add(name.toUtf8());
    add(bytes);
  }
}

QByteArray hash_of(const std::vector<SourceFile>& files, const std::vector<SourceFile>& rules) {
  QCryptographicHash hash(QCryptographicHash::Sha256);
  add_files(hash, files);
  add_files(hash, rules);
  return hash.result();
}

// One file's tables while they are read.
struct File {
  QString name;
  Value document;
};

class BookReading {
 public:
  explicit BookReading(const std::vector<SourceFile>& rules) : rules_(rules) {}

  void read_files(const std::vector<SourceFile>& files) {
    for (const SourceFile& file : files) {
      problem::Expected<Value> document = reader::read_toml(file.bytes, file.name);
      if (document) {
        files_.push_back({file.name, std::move(*document)});
      } else {
        errors_.push_back(document.error());
        whole_ = false;
        kitchen_unread_ = kitchen_unread_ || base_name(file.name) == kitchen_file();
      }
    }
    const bool named = std::any_of(files.begin(), files.end(),
                                   [](const SourceFile& file) { return base_name(file.name) == kitchen_file(); });
    if (!named)
      errors_.push_back(
          {Code::Missing,
           QStringLiteral("the book has no kitchen.toml"),
           {},
           QStringLiteral("write kitchen.toml with name, time_zone, languages and what the kitchen chose")});
  }

  void read() {
    if (kitchen_unread_) return;  // without its languages and choices every other file would seem at fault
    read_law();
    for (const File& file : files_)
      fields_.push_back(std::make_unique<Fields>(
          file.document,
          base_name(file.name) == kitchen_file() ? QStringLiteral("the kitchen") : QStringLiteral("a file of the book"),
          errors_));
    read_kitchens();
    collect_ids();
    read_tables();
    for (const auto& fields : fields_) fields->finish();
  }

  Reading finished(const QByteArray& hash) {
    Findings findings;
    book_.hash = hash;
    findings.errors = std::move(errors_);
    if (whole_) check(findings);
    problem::sort(findings.errors);
    problem::sort(findings.gaps);
    return {std::move(book_), std::move(findings)};
  }

 private:
  void read_law() {
    for (const SourceFile& file : rules_) {
      if (base_name(file.name) != QLatin1String("allergens.toml")) continue;
      take(read_allergen_law(file.bytes, file.name), book_.law);
    }
  }

  template <class T>
  void take(problem::ExpectedAll<T> law, T& into) {
    if (law)
      into = std::move(*law);
    else
      errors_.insert(errors_.end(), law.error().begin(), law.error().end());
  }

  QStringList rule_set_ids() const {
    QStringList ids;
    for (const SourceFile& file : rules_) {
      QString id = base_name(file.name);
      if (!id.endsWith(QLatin1String(".toml")) || id == QLatin1String("allergens.toml")) continue;
      id.chop(5);
      ids += id;
    }
    ids.sort();
    return ids;
  }

  void read_rules() {
    for (const SourceFile& file : rules_)
      if (base_name(file.name) == book_.kitchen.rule_set + QStringLiteral(".toml"))
        take(read_rule_set(file.bytes, file.name), book_.rules);
  }

  void read_kitchens() {
    bool found = false;
    for (size_t i = 0; i < files_.size(); ++i) {
      if (base_name(files_[i].name) != kitchen_file()) continue;
      if (found) {
        errors_.push_back({Code::Duplicate, QStringLiteral("the book has two files named kitchen.toml"),
                           files_[i].document.place, QStringLiteral("keep one of the two")});
        continue;
      }
      found = true;
      book_.kitchen = read_kitchen(*fields_[i], {rule_set_ids(), book_.law.list_ids()});
      read_rules();
      const std::vector<const Value*> amendments = fields_[i]->tables(u"amendment");
      if (!book_.rules.id.isEmpty()) amend(book_.rules, amendments, errors_);
    }
  }

  void collect_ids() {
    for (const auto& fields : fields_)
      for (const QStringView key : {QStringView(u"ingredient"), QStringView(u"product")})
        collect_ids(fields->source().find(key));
    ids_.removeDuplicates();
  }

  void collect_ids(const Value* tables) {
    if (tables == nullptr) return;
    if (tables->kind == Value::Kind::Table) collect_id(*tables);
    for (const Value& table : tables->items) collect_id(table);
  }

  void collect_id(const Value& table) {
    const Value* id = table.find(u"id");
    if (id != nullptr && id->kind == Value::Kind::String) ids_ += id->text;
  }

  template <class T, class Read>
  void read_each(QStringView key, std::vector<T>& into, Read read_one) {
    const Context context{book_, ids_, QSet<QString>(ids_.begin(), ids_.end()), whole_, errors_};
    for (const auto& fields : fields_)
      for (const Value* table : fields->tables(key)) {
        const size_t before = errors_.size();
        into.push_back(read_one(*table, context));
        const Value* id = table->find(u"id");
        if (errors_.size() > before && id != nullptr) faulty_.insert(id->text);
      }
  }

  void read_tables() {
    read_each(u"media", book_.media, read_media);
    find_ingredient_media();
    read_each(u"vessel", book_.vessels, read_vessel);
    read_each(u"site", book_.sites, read_site);
    read_each(u"person", book_.people, read_person);
    read_each(u"place", book_.places, read_storage_place);
    read_each(u"ingredient", book_.ingredients, read_ingredient);
    read_each(u"product", book_.products, read_product);
    index(book_.ingredients, book_.ingredient_index);
    index(book_.products, book_.product_index);
    take_formulas(book_, whole_, errors_);
  }

  void find_ingredient_media() {
    const QString& id = book_.kitchen.ingredient_media;
    if (id.isEmpty() || !whole_ || book_.medium(id) != nullptr) return;
    QStringList known;
    for (const Media& media : book_.media) known += media.id;
    for (const auto& fields : fields_)
      if (fields->source().find(u"ingredient_media") != nullptr)
        fields->refuse(u"ingredient_media", Code::Unknown, QStringLiteral("no medium has the id ") + reader::quoted(id),
                       meant(id, known, QStringLiteral("a [[media]] table")));
  }

  // The first of two that share an id stands.
  template <class T>
  static void index(const std::vector<T>& all, QHash<QString, int>& index) {
    for (size_t i = 0; i < all.size(); ++i)
      if (!all[i].id.isEmpty() && !index.contains(all[i].id)) index.insert(all[i].id, static_cast<int>(i));
  }

  // Products whose tables have faults, and what contains them or an ingredient with faults.
  QSet<const Product*> doubtful(const Reach& reached) const {
    QSet<const Product*> all;
    for (const Product* product : reached.products) {
      bool doubt = faulty_.contains(product->id) || faulty_.contains(product->formula_of) || product->formula.empty();
      for (const FormulaLine& line : product->formula)
        doubt = doubt || faulty_.contains(line.item) || all.contains(book_.product(line.item));
      if (doubt) all.insert(product);
    }
    return all;
  }

  void check(Findings& findings) const {
    QStringList all;
    for (const Product& product : book_.products) all += product.id;
    const Reach reached = reach(book_, all);
    const Standings standings(book_, reached);
    Weighing weighing(book_);
    const QSet<const Product*> doubted = doubtful(reached);
    const Checking checking{book_, reached, standings, weighing, findings, doubted};
    for (const auto check : {check_ids, check_loops, check_temperatures, check_shelf_lives, check_containers,
                             check_restricted, check_declarations, check_weights, check_making, check_gaps})
      check(checking);
  }

  const std::vector<SourceFile>& rules_;
  std::vector<File> files_;
  std::vector<std::unique_ptr<Fields>> fields_;
  QStringList ids_;
  bool whole_ = true;
  bool kitchen_unread_ = false;
  QSet<QString> faulty_;  // ids of the tables that have faults
  Book book_;
  Errors errors_;
};

}  // namespace

Reading read_book(const std::vector<SourceFile>& files, const std::vector<SourceFile>& rules) {
  BookReading reading(rules);
  reading.read_files(files);
  reading.read();
  return reading.finished(hash_of(files, rules));
}

}  // namespace lardiner::book
