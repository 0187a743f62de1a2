// Times our own work on records that are in memory already, and ZXing-C++ alone on the same addresses.
//   bench_labels DATA KITCHEN RECORDS.csv CONTENT EACH-NTH
// Prints "name value" lines, processor seconds; writes every nth label to CONTENT for others to draw.
#include <ZXing/BitMatrix.h>
#include <ZXing/MultiFormatWriter.h>

#include <QCoreApplication>
#include <QFile>
#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include "command/kitchen.h"
#include "command/records.h"
#include "content.h"
#include "cpu_time.h"
#include "press.h"
#include "symbol/qr.h"

using namespace lardiner;

namespace {

constexpr int kRounds = 3;  // of which the middle one counts

template <class T>
T got(problem::ExpectedAll<T>&& result) {
  if (result) return std::move(*result);
  for (const problem::Error& error : result.error()) std::fprintf(stderr, "%s\n", qUtf8Printable(problem::text(error)));
  std::exit(1);
}

struct Prepared {
  book::Book book;
  std::vector<batch::Batch> batches;
  std::vector<words::Language> languages;
  paper::Faces faces;
  bench::Templates templates;
};

Prepared prepared(const QStringList& arguments) {
  command::Options options;
  options.data = arguments[1];
  options.kitchen = arguments[2];
  book::Book book = got(command::usable_book(options));
  const QDateTime now(QDate(2026, 11, 25), QTime(18, 0), book.kitchen.zone);
  command::Run run = got(command::read_run(arguments[3], command::RecordFormat::Csv, book, now));
  for (const batch::Batch& batch : run.batches)
    run.errors.insert(run.errors.end(), batch.refused.begin(), batch.refused.end());
  if (!run.errors.empty()) got(problem::ExpectedAll<int>(tl::unexpected(run.errors)));
  bench::Templates templates;
  templates[book::Purpose::Inside] = got(command::read_template(options, QStringLiteral("inside")));
  templates[book::Purpose::Finisher] = got(command::read_template(options, QStringLiteral("finisher")));
  templates[book::Purpose::Sale] = got(command::read_template(options, QStringLiteral("sale")));
  return {std::move(book), std::move(run.batches), got(command::read_languages(options)),
          got(command::read_faces(options)), std::move(templates)};
}

std::vector<facts::LabelRun> runs_of(const Prepared& all) {
  std::vector<facts::LabelRun> out;
  for (const batch::Batch& batch : all.batches)
    for (facts::LabelRun& run : got(facts::label_runs(all.book, batch, all.languages, {})))
      out.push_back(std::move(run));
  return out;
}

std::vector<QByteArray> uris_of(const std::vector<facts::LabelRun>& runs) {
  std::vector<QByteArray> out;
  for (const facts::LabelRun& run : runs)
    for (const facts::ContainerFacts& container : run.containers) out.push_back(container.uri);
  return out;
}

// As a program would that has nothing but the library: the size and level that our labels have.
void encode_with_zxing_alone(const std::vector<QByteArray>& uris) {
  int modules = 0;
  for (const QByteArray& uri : uris) {
    const int level = 1 + 2 * static_cast<int>(symbol::strongest_correction(uri));  // ZXing takes 1, 3, 5, 7 for L to H
    const ZXing::MultiFormatWriter writer =
        ZXing::MultiFormatWriter(ZXing::BarcodeFormat::QRCode).setEccLevel(level).setMargin(0);
    modules += writer.encode(std::wstring(uri.begin(), uri.end()), 0, 0).width();
  }
  if (modules == 0) std::exit(1);
}

void report(const char* name, double value) { std::printf("%s %.9g\n", name, value); }

double middle(std::vector<double> seconds) {
  std::sort(seconds.begin(), seconds.end());
  return seconds[seconds.size() / 2];
}

void time_everything(const Prepared& all, const std::vector<facts::LabelRun>& runs, const std::vector<QByteArray>& uris,
                     const bench::Codes& codes) {
  const bench::Workshop workshop{all.book, all.faces, all.templates};
  const auto print_all = [&](const std::vector<facts::LabelRun>& some, const bench::Codes* made) {
    bench::Press press(workshop, made);
    for (const facts::LabelRun& run : some) press.print(run);
    press.finish();
    return press.bytes();
  };
  std::vector<double> zxing, whole, beforehand, facts_only, layout_only;
  qsizetype bytes = 0;
  for (int round = 0; round < kRounds; ++round) {
    zxing.push_back(bench::timed([&] { encode_with_zxing_alone(uris); }));
    whole.push_back(bench::timed([&] { bytes = print_all(runs_of(all), nullptr); }));
    beforehand.push_back(bench::timed([&] { print_all(runs_of(all), &codes); }));
    facts_only.push_back(bench::timed([&] { runs_of(all); }));
    layout_only.push_back(bench::timed([&] {
      for (const facts::LabelRun& run : runs) bench::laid_out(workshop, run);
    }));
  }
  report("labels", static_cast<double>(uris.size()));
  report("runs", static_cast<double>(runs.size()));
  report("bytes", static_cast<double>(bytes));
  report("zxing", middle(zxing));
  report("whole", middle(whole));
  report("beforehand", middle(beforehand));
  report("facts", middle(facts_only));
  report("layout", middle(layout_only));
}

void write_content(const Prepared& all, const std::vector<facts::LabelRun>& runs, const bench::Codes& codes,
                   const QString& path, int nth) {
  const bench::Workshop workshop{all.book, all.faces, all.templates};
  QFile file(path);
  if (!file.open(QIODevice::WriteOnly)) std::exit(1);
  int count = 0;
  for (const facts::LabelRun& run : runs) {
    const paper::LabelLayout layout = bench::laid_out(workshop, run);
    for (const facts::ContainerFacts& container : run.containers)
      if (count++ % nth == 0) file.write(bench::written_down(layout, container, codes[container.uri], all.faces));
  }
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  const QStringList arguments = QCoreApplication::arguments();
  if (arguments.size() != 6) return 2;
  const Prepared all = prepared(arguments);
  const std::vector<facts::LabelRun> runs = runs_of(all);
  const std::vector<QByteArray> uris = uris_of(runs);
  bench::Codes codes;
  for (const QByteArray& uri : uris) codes.insert(uri, bench::encoded(uri));
  const auto [least, most] =
      std::minmax_element(uris.begin(), uris.end(), [](const auto& a, const auto& b) { return a.size() < b.size(); });
  report("shortest_uri", static_cast<double>(least->size()));
  report("longest_uri", static_cast<double>(most->size()));
  time_everything(all, runs, uris, codes);
  write_content(all, runs, codes, arguments[4], arguments[5].toInt());
  return 0;
}
