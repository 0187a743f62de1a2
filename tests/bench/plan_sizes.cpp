// Times the day's plan of 500 products in six levels at three sizes of orders and lots on hand.
//   bench_plan TEMPLATES/RULES
// Prints a line for each size, processor milliseconds of the best of several and the most memory held so far, then how
// the cost grew against the rows. Aim: 2,000 orders and 5,000 lots in at most 150 ms and 100 MB, cost near linear.
#include <algorithm>
#include <cstdio>
#include <random>

#include "book_files.h"
#include "cpu_time.h"
#include "plan/day_plan.h"

namespace {

using namespace lardiner;

constexpr int kLevels = 6;
constexpr int kProducts = 500;
constexpr int kIngredients = 300;
constexpr int kRounds = 7;

struct Size {
  int orders, lots;
};
constexpr Size kSizes[] = {{500, 1250}, {2000, 5000}, {8000, 20000}};

const char* const kAllergens[] = {"milk", "egg", "wheat", "soy", "sesame", "fish:cod", "peanut"};

QByteArray ingredient_toml(int n) {
  const QByteArray id = "goods-" + QByteArray::number(n);
  const QByteArray contains = n % 4 == 0 ? "[\"" + QByteArray(kAllergens[n / 4 % 7]) + "\"]" : QByteArray("\"none\"");
  const QByteArray raw = n % 10 == 3 ? "must_be_cooked = true\nfood = \"poultry\"\n" : "must_be_cooked = false\n";
  return "[[ingredient]]\nid = \"" + id + "\"\nname = \"" + id + "\"\ntcs = \"" + (n % 2 ? "yes" : "no") +
         "\"\ntcs_basis = \"bench\"\n" + raw + "edible = \"" + QByteArray::number(70 + n % 31) +
         " %\"\n[[ingredient.supplier_item]]\nid = \"" + id + "-a\"\nsupplier = \"A\"\ncontains = " + contains +
         "\nchecked = 2026-01-01\nsource = \"letter\"\n";
}

// The code of a product in letters: AAA, AAB, …
QByteArray letters(int n) {
  QByteArray out(3, 'A');
  for (int i = 2; i >= 0; --i, n /= 26) out[i] = static_cast<char>('A' + n % 26);
  return out;
}

int level_of(int product) { return product * kLevels / kProducts; }

QByteArray line(const QByteArray& item, int grams) {
  return "{ item = \"" + item + "\", amount = \"" + QByteArray::number(grams) + " g\" },";
}

QByteArray product_toml(int n, std::mt19937& random) {
  const auto any = [&](int below) { return static_cast<int>(random() % static_cast<unsigned>(below)); };
  QByteArray lines;
  int grams = 0;
  const auto add = [&](const QByteArray& item) {
    const int weight = 50 + any(900);
    grams += weight;
    lines += line(item, weight);
  };
  const int level = level_of(n);
  const int each = kProducts / kLevels;
  for (int i = 0; i < 2 && level + 1 < kLevels; ++i) {
    const int sub = std::min(kProducts - 1, (level + 1) * each + 2 + any(each - 4));
    if (level_of(sub) > level) add("made-" + QByteArray::number(sub));
  }
  for (int i = 0; i < 4; ++i) add("goods-" + QByteArray::number(any(kIngredients)));
  return "[[product]]\nid = \"made-" + QByteArray::number(n) + "\"\nname = \"made " + QByteArray::number(n) +
         "\"\nkind = \"component\"\ncode = \"" + letters(n) + "\"\nitem_number = \"" +
         QByteArray::number(10'000'000 + n) + "\"\ntcs = \"yes\"\ntcs_basis = \"bench\"\nmakes = \"" +
         QByteArray::number(grams * 95 / 100) + " g\"\ncook_yield = \"95 %\"\nprocess = \"cook\"\nformula = [" + lines +
         "]\nstep = [{ kind = \"cook\", text = \"cook\", takes = \"20 to 40 min\" }]\n[[product.shelf_life]]\nstate = "
         "\"chilled\"\nkeeps = \"" +
         QByteArray::number(4 + n % 4) +
         " days\"\nauthority = \"kitchen rule\"\n[[product.container]]\nkind = \"tub\"\nholds = \"500 g\"\nmedia = "
         "\"lid\"\npurpose = \"inside\"\n";
}

book::Book bench_book(const char* rules) {
  std::mt19937 random(4);
  QByteArray items;
  for (int i = 0; i < kIngredients; ++i) items += ingredient_toml(i);
  for (int i = 0; i < kProducts; ++i) items += product_toml(i, random);
  const book::Reading reading = book::read_book(
      {{QStringLiteral("kitchen.toml"), test_support::kitchen_toml()}, {QStringLiteral("items.toml"), items}},
      test_support::toml_files(QString::fromUtf8(rules)));
  if (!reading.findings.errors.empty()) {
    std::fputs(qPrintable(problem::text(reading.findings.errors.front())), stderr);
    std::exit(1);
  }
  return reading.book;
}

measure::Quantity kilograms(std::int64_t tenths) { return measure::quantity({tenths, 10}, measure::Unit::Kilogram); }

std::vector<plan::Order> orders_for(int count, const QDateTime& now, std::mt19937& random) {
  std::vector<plan::Order> orders(static_cast<size_t>(count));
  for (plan::Order& order : orders) {
    order.product = QStringLiteral("made-%1").arg(random() % (kProducts / 2));
    order.number = QString::number(random() % 1'000'000);
    order.quantity = kilograms(static_cast<std::int64_t>(5 + random() % 100));
    order.due = now.addSecs(24 * 3600 + static_cast<int>(random() % (4 * 24 * 60)) * 60);
    if (random() % 2) order.life = book::Length{book::Length::Unit::Days, 1 + static_cast<int>(random() % 2), 1};
  }
  return orders;
}

std::vector<plan::OnHand> lots_for(int count, const QDateTime& now, std::mt19937& random) {
  std::vector<plan::OnHand> lots(static_cast<size_t>(count));
  for (plan::OnHand& lot : lots) {
    lot.item = random() % 2 ? QStringLiteral("made-%1").arg(random() % kProducts)
                            : QStringLiteral("goods-%1").arg(random() % kIngredients);
    lot.lot = QString::number(random() % 1'000'000);
    lot.quantity = kilograms(static_cast<std::int64_t>(1 + random() % 40));
    const QDateTime midnight(now.date(), QTime(0, 0), now.timeZone());
    lot.use_by = batch::StatedEnd{midnight.addDays(static_cast<int>(random() % 9)), true, book::EndKind::UseBy};
  }
  return lots;
}

// Processor milliseconds of the best round.
double measured(const book::Book& book, Size size) {
  const QDateTime now(QDate(2026, 10, 7), QTime(6, 0), QTimeZone("America/New_York"));
  std::mt19937 random(static_cast<unsigned>(size.orders));
  const std::vector<plan::Order> orders = orders_for(size.orders, now, random);
  const std::vector<plan::OnHand> lots = lots_for(size.lots, now, random);
  double best = 1e9;
  plan::DayPlan plan;
  for (int i = 0; i < kRounds; ++i)
    best = std::min(best, bench::timed([&] { plan = plan::day_plan(book, orders, lots, now); }) * 1000);
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  std::printf("plan: %5d orders, %5d lots: %6.1f ms, at most %ld MB; %zu makings, %zu takes, %zu unmet\n", size.orders,
              size.lots, best, used.ru_maxrss / 1024, plan.makings.size(), plan.takes.size(), plan.unmet.size());
  return best;
}

}  // namespace

int main(int count, char** words) {
  if (count != 2) return 2;
  const book::Book book = bench_book(words[1]);
  double before = 0;
  for (const Size& size : kSizes) {
    const double now = measured(book, size);
    if (before > 0) std::printf("plan: four times the rows cost %.2f times as much\n", now / before);
    before = now;
  }
  return 0;
}
