// lardiner station: the kitchen's web page.
#include <malloc.h>

#include <QDir>
#include <algorithm>
#include <atomic>
#include <chrono>
#include <cstdio>
#include <thread>

#include "command/commands.h"
#include "command/files.h"
#include "command/kitchen_desk.h"
#include "command/option_error.h"
#include "command/output.h"
#include "command/pin.h"
#include "command/print_queue.h"
#include "command/stop.h"
#include "printer/printers.h"
#include "station/desks.h"
#include "station/routes.h"
#include "station/server.h"

namespace lardiner::command {

using problem::Code;
using problem::Error;
using problem::Errors;

namespace {

constexpr const char* kFiles[] = {"style.css", "station.js", "openapi.json"};
constexpr const char* kFonts[] = {"AtkinsonHyperlegibleNext-Regular.ttf",
                                  "AtkinsonHyperlegibleNext-Bold.ttf",
                                  "NotoSans-Regular.ttf",
                                  "NotoSans-Bold.ttf",
                                  "NotoSansSC-Regular.ttf",
                                  "NotoSansSC-Bold.ttf"};

problem::ExpectedAll<std::vector<station::PageSource>> page_sources(const QString& folder) {
  std::vector<station::PageSource> sources;
  for (const QString& file : QDir(folder).entryList({QStringLiteral("*.html")}, QDir::Files, QDir::Name)) {
    const auto bytes = read_file(folder + u'/' + file);
    if (!bytes) return tl::unexpected(Errors{bytes.error()});
    sources.push_back({folder + u'/' + file, file.chopped(5), *bytes});
  }
  return sources;
}

problem::ExpectedAll<QHash<QString, QByteArray>> files_of(const Options& options) {
  QHash<QString, QByteArray> files;
  const auto add = [&](const QString& name, const QString& path) -> std::optional<Error> {
    const auto bytes = read_file(path);
    if (!bytes) return bytes.error();
    files.insert(name, *bytes);
    return std::nullopt;
  };
  Errors errors;
  for (const char* name : kFiles)
    if (const auto error =
            add(QLatin1String(name), options.data + QStringLiteral("/templates/station/") + QLatin1String(name)))
      errors.push_back(*error);
  for (const char* name : kFonts)
    if (const auto error = add(QLatin1String(name), options.data + QStringLiteral("/fonts/") + QLatin1String(name)))
      errors.push_back(*error);
  if (!errors.empty()) return tl::unexpected(errors);
  return files;
}

// What the station is made of before it serves anybody.
struct Made {
  station::Pages pages;
  QHash<QString, QByteArray> files;
  station::Pins pins;
  std::unique_ptr<KeptBook> book;
};

problem::ExpectedAll<Made> make(const Options& options, const StationOptions& wish) {
  auto packs = read_languages(options);
  if (!packs) return tl::unexpected(packs.error());
  const auto sources = page_sources(options.data + QStringLiteral("/templates/station"));
  if (!sources) return tl::unexpected(sources.error());
  auto pages = station::Pages::read(*sources, *packs);
  if (!pages) return tl::unexpected(pages.error());
  auto files = files_of(options);
  if (!files) return tl::unexpected(files.error());
  auto book = KeptBook::open(options, std::move(*packs));
  if (!book) return tl::unexpected(book.error());
  auto pins = open_pins(options, (*book)->now()->book.kitchen, wish.pins);
  if (!pins) return tl::unexpected(Errors{pins.error()});
  return Made{std::move(*pages), std::move(*files), std::move(*pins), std::move(*book)};
}

// Until a stop is asked for.
void serve(station::Server& server) {
  watch_for_stop();
  std::atomic<bool> over = false;
  std::thread watcher([&] {
    using namespace std::chrono_literals;
    while (!stop_asked() && !over) std::this_thread::sleep_for(100ms);
    server.stop();
  });
  server.run();
  over = true;
  watcher.join();
}

bool is_this_machine(const QString& address) {
  return address.startsWith(QLatin1String("127.")) || address == QLatin1String("::1") ||
         address == QLatin1String("localhost");
}

Error readable_by_others() {
  return {Code::Unsafe,
          QStringLiteral("warning: without a certificate PINs can be read by others on the network"),
          {},
          QStringLiteral("give it the kitchen's certificate: --certificate and --key")};
}

// "labels=ipp://…": what the kitchen calls a printer, and where it is; a name or an address alone is its own name.
problem::ExpectedAll<std::vector<NamedPrinter>> printers_of(const QStringList& written) {
  std::vector<NamedPrinter> all;
  Errors errors;
  for (const QString& one : written) {
    const bool alone = one.section(u'=', 0, 0).contains(QLatin1String("://"));
    const qsizetype sign = alone ? -1 : one.indexOf(u'=');
    const QString name = one.left(sign).trimmed(), at = one.mid(sign + 1).trimmed();
    const auto address = printer::address_named(at);
    if (!address)
      errors.push_back(of_option(QStringLiteral("--printer"), address.error()));
    else if (name.isEmpty() ||
             std::any_of(all.begin(), all.end(), [&](const auto& other) { return other.name == name; }))
      errors.push_back(of_option(QStringLiteral("--printer"), {Code::Duplicate,
                                                               QStringLiteral("\"%1\" has no name of its own").arg(one),
                                                               {},
                                                               QStringLiteral("write NAME=ADDRESS, each name once")}));
    else
      all.push_back({name, *address});
  }
  if (!errors.empty()) return tl::unexpected(errors);
  return all;
}

int desks_of(const Options& options) { return std::clamp(options.threads, 2, 16); }

// Threads that share a store of memory wait for one another at every page: each gets one of its own.
void give_each_thread_its_memory(const Options& options, const station::Listening& listening) {
  mallopt(M_ARENA_MAX, listening.threads + desks_of(options) + 1);
}

}  // namespace

ExitStatus serve_station(const Options& options, const StationOptions& wish) {
  const auto printers = printers_of(wish.printers);
  if (!printers) return refuse(printers.error(), options.json);
  auto made = make(options, wish);
  if (!made) return refuse(made.error(), options.json);
  PrintBoard board;
  KeptPlan plan(wish.orders);
  // One desk beforehand, so that what is at fault is told here and not to the first who asks.
  if (const auto desk = kitchen_desk(options, wish.program, *made->book, plan, *printers, board); !desk)
    return refuse(desk.error(), options.json);
  const station::Listening listening{wish.address, wish.port, wish.certificate, wish.key};
  give_each_thread_its_memory(options, listening);
  station::SignIn sign_in(made->pins, station::random_of_system);
  const station::Shop shop{made->pages, sign_in, made->files, wish.names};
  station::Desks desks(desks_of(options),
                       [&] { return kitchen_desk(options, wish.program, *made->book, plan, *printers, board); });
  const auto answer = [&](const station::Request& request) {
    return desks.ask([&](station::Desk& desk) { return station::answer(shop, desk, request); }, station::out_of_order);
  };
  station::Server server(listening, answer, [](const QString& page, const QString& what) {
    print_problems(
        {{Code::Machine, QStringLiteral("a page could not be made: %1").arg(what), {page, 0, 0, {}, 1, 1}, {}}});
  });
  const auto port = server.bind();
  if (!port) return refuse({port.error()}, options.json);
  if (wish.certificate.isEmpty() && !is_this_machine(wish.address)) print_problems({readable_by_others()});
  const QString scheme = wish.certificate.isEmpty() ? QStringLiteral("http") : QStringLiteral("https");
  const QString shown = wish.address.contains(u':') ? u'[' + wish.address + u']' : wish.address;
  print(QStringLiteral("%1 is served at %2://%3:%4/ until Ctrl-C\n")
            .arg(made->book->now()->book.kitchen.name, scheme, shown)
            .arg(*port));
  std::fflush(stdout);
  {
    const QString path = ledger_path(options, made->book->now()->book.kitchen);
    std::vector<std::unique_ptr<PrintQueue>> queues;
    for (const NamedPrinter& printer : *printers)
      queues.push_back(std::make_unique<PrintQueue>(options, path, printer, board));
    serve(server);
    board.stop();
  }
  return kDone;
}

}  // namespace lardiner::command
