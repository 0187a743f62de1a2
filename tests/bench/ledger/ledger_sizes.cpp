// A ledger of BATCHES batches: how fast it takes entries, opens, traces, tells a history and what is due; and what bare
// SQLite does on the same disk.   bench_ledger FOLDER BATCHES…
#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <algorithm>
#include <chrono>
#include <cstdio>

#include "bare_sqlite.h"
#include "kitchen_years.h"
#include "ledger/due.h"
#include "ledger/lineage.h"
#include "ledger/verify.h"

using namespace lardiner;
using namespace lardiner::ledger;
using history::Event;

namespace {

double now() { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

template <class Work>
double seconds(const Work& work) {
  const double start = now();
  work();
  return now() - start;
}

template <class Value>
Value must(problem::Expected<Value> value) {
  if (value) return std::move(*value);
  std::fprintf(stderr, "%s\n", qPrintable(problem::text(value.error())));
  std::exit(1);
}

void append(Ledger& ledger, std::vector<Event> events) {
  const QDateTime at = events.back().at;
  const auto entries = ledger.append(std::move(events), stamp(std::max(at, kMorning.addYears(40))));
  if (entries) return;
  std::fprintf(stderr, "%s", qPrintable(problem::text(entries.error())));
  std::exit(1);
}

// Figures of one size, for the ratios to the others.
struct Figures {
  double appends = 0, trace_us = 0, history_ms = 0, due_ms = 0;
};

class Bench {
 public:
  Bench(const QString& folder, qint64 batches)
      : batches_(batches),
        path_(folder + QStringLiteral("/ledger-%1.sqlite").arg(batches)),
        bare_(folder + QStringLiteral("/bare.sqlite")) {}

  Figures run() {
    std::printf("%lld batches\n", static_cast<long long>(batches_));
    fill();
    time_appends();
    time_opening();
    time_traces();
    time_history();
    time_due();
    return figures_;
  }

 private:
  void fill() {
    for (const char* end : {"", "-wal", "-shm"}) QFile::remove(path_ + QLatin1String(end));
    Ledger ledger = must(Ledger::open(path_, Access::Write));
    const double spent = seconds([&] {
      std::vector<Event> events;
      for (qint64 number = 0; number < batches_; ++number) {
        for (Event& event : bench::batch_events(number, batches_)) events.push_back(std::move(event));
        if (events.size() >= 2000 || number + 1 == batches_) append(ledger, std::exchange(events, {}));
      }
    });
    const qint64 entries = ledger.heads().front().count;
    std::printf("  filled in %.0f s: %lld entries, %.2f GB\n", spent, static_cast<long long>(entries),
                static_cast<double>(QFileInfo(path_).size()) / 1e9);
  }

  // Durable, ten at a time: what a kitchen's next days would be.
  void time_appends() {
    Ledger ledger = must(Ledger::open(path_, Access::Write));
    const qint64 first = ledger.heads().front().count + 1;
    std::vector<Event> events;
    for (qint64 number = batches_; number < batches_ + 2500; ++number)
      for (Event& event : bench::batch_events(number, batches_ * 2 + 10'000)) events.push_back(std::move(event));
    const size_t count = events.size() / 10 * 10;
    const double ours = seconds([&] {
      for (size_t at = 0; at < count; at += 10)
        append(ledger, {std::make_move_iterator(events.begin() + static_cast<long>(at)),
                        std::make_move_iterator(events.begin() + static_cast<long>(at) + 10)});
    });
    std::vector<QByteArray> bodies;
    Statement& rows = ledger.store().statement("SELECT CAST(body AS BLOB) FROM event WHERE number >= ? ORDER BY seq");
    rows.with(first);
    while (rows.next()) bodies.push_back(rows.bytes(0));
    for (const char* end : {"", "-wal", "-shm"}) QFile::remove(bare_ + QLatin1String(end));
    const double bare = bench::bare_appends(QFile::encodeName(bare_), bodies);
    figures_.appends = static_cast<double>(count) / ours;
    std::printf("  appends in tens, projections kept: %.0f a second, %.0f %% of bare SQLite's %.0f (aim 35)\n",
                figures_.appends, 100 * figures_.appends / bare, bare);
  }

  void time_opening() {
    const double spent = seconds([&] { must(Ledger::open(path_, Access::Write)); });
    std::printf("  opening: %.1f ms (aim 50)\n", spent * 1e3);
  }

  // Lots of the lowest and of the highest level, through all of the years.
  std::vector<qint64> sample(Ledger& ledger) const {
    std::vector<qint64> lots;
    for (int at = 1; at <= 200; ++at) {
      const qint64 round = batches_ / bench::kLevels * at / 202;
      const qint64 number = round * bench::kLevels + (at % 2 == 0 ? 0 : bench::kLevels - 1);
      lots.push_back(ledger.lots().id(bench::lot(number), bench::item(number)).value_or(0));
    }
    return lots;
  }

  void time_traces() {
    Ledger ledger = must(Ledger::open(path_, Access::Read));
    const std::vector<qint64> lots = sample(ledger);
    const auto trace = [&] {
      qint64 reached = 0;
      for (const qint64 lot : lots)
        for (const Direction way : {Direction::Forward, Direction::Backward})
          reached += static_cast<qint64>(lots_reached(ledger.store(), lot, way).size());
      return reached;
    };
    double ours = 1e9, bare = 1e9;
    qint64 reached = trace();
    for (int round = 0; round < 5; ++round) {  // in turn, the best of five
      ours = std::min(ours, seconds(trace));
      const bench::Traced traced = bench::bare_traces(QFile::encodeName(path_), lots);
      bare = std::min(bare, traced.seconds);
      if (traced.rows != reached)
        std::printf("  bare SQLite reaches %lld lots, we %lld\n", static_cast<long long>(traced.rows),
                    static_cast<long long>(reached));
    }
    figures_.trace_us = ours * 1e6 / static_cast<double>(reached);
    std::printf(
        "  trace both ways: %.2f us a lot in the answer (aim 5), %.2f times a bare recursive query (aim 1.5), %lld "
        "lots\n",
        figures_.trace_us, ours / bare, static_cast<long long>(reached));
  }

  void time_history() {
    Ledger ledger = must(Ledger::open(path_, Access::Read));
    const std::vector<qint64> lots = sample(ledger);
    double longest = 0;
    for (const qint64 lot : lots)
      longest = std::max(longest, seconds([&] {
                           lineage(ledger.store(), lot);
                           ledger.lots().lot(lot);
                         }));
    figures_.history_ms = longest * 1e3;
    std::printf("  history with its lineage, the longest of %zu: %.2f ms (aim 10)\n", lots.size(), figures_.history_ms);
  }

  void time_due() {
    Ledger ledger = must(Ledger::open(path_, Access::Read));
    size_t lines = 0;
    const double spent = seconds([&] { lines = must(due(ledger.store(), bench::made_at(batches_), kZone, 3)).size(); });
    figures_.due_ms = spent * 1e3;
    std::printf("  due: %.1f ms (aim 50), %zu lines\n", figures_.due_ms, lines);
  }

  qint64 batches_;
  QString path_, bare_;
  Figures figures_;
};

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  if (argc < 3) return 2;
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  std::vector<Figures> all;
  for (int at = 2; at < argc; ++at)
    all.push_back(Bench(QString::fromLocal8Bit(argv[1]), QByteArray(argv[at]).toLongLong()).run());
  for (size_t at = 1; at < all.size(); ++at)
    std::printf("%s batches cost, for %s: append %.2f times, trace %.2f, history %.2f, due %.2f\n", argv[at + 2],
                argv[2], all[0].appends / all[at].appends, all[at].trace_us / all[0].trace_us,
                all[at].history_ms / all[0].history_ms, all[at].due_ms / all[0].due_ms);
  return 0;
}
