// An independent program, GLPK's glpsol, agrees on what must be made and bought: small cases without time as a linear
// program that makes and buys the least.
#include <QFile>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <map>

#include "random_kitchen.h"

using namespace lardiner;
using namespace lardiner::plan;
using namespace lardiner::plan::kitchen;

namespace {

constexpr double kGram = 1e9;

QByteArray number(double value) { return QByteArray::number(value, 'g', 17); }

double grams(measure::Quantity q) { return static_cast<double>(q.amount) / kGram; }

QByteArray variable(const char* what, const QString& item) { return what + item.toLatin1().replace('-', '_'); }

// What one gram of a product takes of each item, in grams.
std::map<QString, double> taken_by_gram(const book::Book& book, const book::Product& product) {
  std::map<QString, double> out;
  for (const book::FormulaLine& line : product.formula) {
    const book::Ingredient* goods = book.ingredient(line.item);
    const double edible = goods ? double(goods->edible.num()) / double(goods->edible.den()) : 1;
    out[line.item] += grams(line.amount) / edible / grams(*product.makes);
  }
  return out;
}

// Of each item: what is made (or bought) and taken is at least what the orders and the other makings want, in grams.
QByteArray program_of(const Case& of) {
  std::map<QString, QByteArray> wanted;
  std::map<QString, double> ordered, there;
  for (const Order& order : of.orders) ordered[order.product] += grams(order.quantity);
  for (const OnHand& lot : of.lots) there[lot.item] += grams(lot.quantity);
  QByteArray least, rows, bounds;
  for (const book::Product& product : of.book.products) {
    least += " + " + variable("make_", product.id) + "\n";
    for (const auto& [item, by_gram] : taken_by_gram(of.book, product))
      wanted[item] += " - " + number(by_gram) + " " + variable("make_", product.id);
  }
  for (const QString& item : of.book.item_ids()) {
    const bool made = of.book.product(item) != nullptr;
    if (!made) least += " + " + variable("buy_", item) + "\n";
    rows += " " + variable("has_", item) + ": " + variable(made ? "make_" : "buy_", item) + " + " +
            variable("take_", item) + wanted[item] + " >= " + number(ordered[item]) + "\n";
    bounds += " 0 <= " + variable("take_", item) + " <= " + number(there[item]) + "\n";
  }
  return "Minimize\n least:" + least + "Subject To\n" + rows + "Bounds\n" + bounds + "End\n";
}

// The value of each variable, in the order in which the program first names them.
std::vector<double> solved(const QByteArray& program, const QString& glpsol) {
  const QTemporaryDir folder;
  QFile file(folder.filePath(QStringLiteral("plan.lp")));
  REQUIRE(file.open(QIODevice::WriteOnly));
  file.write(program);
  file.close();
  QProcess run;
  run.start(glpsol, {QStringLiteral("--lp"), file.fileName(), QStringLiteral("--write"),
                     folder.filePath(QStringLiteral("answer"))});
  REQUIRE(run.waitForFinished());
  QFile answer(folder.filePath(QStringLiteral("answer")));
  REQUIRE(answer.open(QIODevice::ReadOnly));
  std::vector<double> values;
  for (const QByteArray& line : answer.readAll().split('\n')) {
    const QList<QByteArray> words = line.split(' ');
    if (words.front() == "j") values.push_back(words.at(3).toDouble());
  }
  return values;
}

bool agrees(double ours, double theirs) { return std::abs(ours - theirs) <= 1e-6 * std::max(1.0, std::abs(theirs)); }

}  // namespace

TEST_CASE("a linear program makes and buys the same amounts", "[plan][day_plan][src:glpk]") {
  const QString glpsol = QStandardPaths::findExecutable(QStringLiteral("glpsol"));
  if (glpsol.isEmpty()) FAIL("the program \"glpsol\" is missing: install Debian's package glpk-utils");
  for (unsigned seed = 1; seed <= 12; ++seed) {
    INFO("seed " << seed);
    Case of(seed, {false, false}, 8, 12);
    for (Order& order : of.orders) order.life.reset();
    for (OnHand& lot : of.lots) lot.use_by = batch::StatedEnd{at("2027-01-01"), true, book::EndKind::UseBy};
    const DayPlan plan = of.plan();
    REQUIRE(plan.unmet.empty());
    std::map<QString, double> made;
    for (const PlannedMaking& m : plan.makings) made[m.product->id] += grams(m.output);
    const std::vector<double> theirs = solved(program_of(of), glpsol);
    REQUIRE(theirs.size() >= of.book.products.size() + of.book.ingredients.size());
    size_t next = 0;  // the objective names the makings first, then what is bought, in the order of item_ids
    for (const book::Product& product : of.book.products) CHECK(agrees(made[product.id], theirs[next++]));
    for (const QString& item : of.book.item_ids())
      if (of.book.ingredient(item)) CHECK(agrees(grams(bought(plan, item.toLatin1().constData())), theirs[next++]));
  }
}
