// Sends the prints of one printer, one after the other, and follows each to its end.
#include "command/print_queue.h"

#include <algorithm>

#include "command/label_bytes.h"
#include "command/medium_page.h"
#include "printer/printers.h"

namespace lardiner::command {

using history::Event;
using history::Kind;
using ledger::Print;
using printer::JobStatus;
using station::PrintState;

namespace {

constexpr int kPauseSeconds = 2;             // between looks at the ledger, when nobody wakes
constexpr int kLongestFollowed = 24 * 3600;  // a job that nobody minds for a day is looked for anew

QString text_of(const problem::Errors& errors) {
  QStringList parts;
  for (const problem::Error& error : errors) parts << error.what;
  return parts.join(QStringLiteral("; "));
}

// Which of the open prints is this printer's next.
std::optional<Print> first_of(std::vector<Print> open, const QString& printer) {
  const auto found =
      std::find_if(open.begin(), open.end(), [&](const Print& one) { return one.asked.event.printer == printer; });
  return found == open.end() ? std::nullopt : std::optional(std::move(*found));
}

bool is_open(LedgerRun& run, const Print& print) { return ledger::is_open_print(run.ledger.store(), print.asked.id); }

Event done_event(const Print& print) {
  Event event = ledger::of_print(Kind::PrintDone, print);
  event.by = print.asked.event.by;
  event.containers = print.containers;
  event.count = static_cast<int>(print.containers.size());
  event.of = print.asked.id;
  return event;
}

LotToPrint labels_of(const Print& print) {
  const Event& asked = print.asked.event;
  return {asked.lot, asked.containers, asked.medium, asked.by, asked.what == QLatin1String("hold"), print.asked.id};
}

printer::JobWish wish_of(const Print& print, const book::Media& medium) {
  printer::JobWish wish;
  wish.name = print.job_name;
  wish.page = page_of(medium);
  wish.dots_per_inch = medium.dots_per_inch;
  wish.copies = std::max(1, print.asked.event.count);
  return wish;
}

}  // namespace

PrintQueue::PrintQueue(const Options& options, const QString& ledger_path, NamedPrinter printer, PrintBoard& board)
    : options_(options), ledger_path_(ledger_path), printer_(std::move(printer)), board_(board), thread_([this] {
        run();
      }) {}

PrintQueue::~PrintQueue() { thread_.join(); }

void PrintQueue::run() {
  while (!board_.stopping()) {
    look();
    board_.wait(kPauseSeconds);
  }
}

// What cannot be read the station's pages tell. For a print the book and the clock are read anew.
void PrintQueue::look() {
  if (!ledger_) {
    auto ledger = ledger::Ledger::open(ledger_path_, ledger::Access::Write);
    if (!ledger) return;
    ledger_.emplace(std::move(*ledger));
  }
  ledger_->store().forget_fault();
  const auto open = ledger::open_prints(ledger_->store());
  const auto print = open ? first_of(*open, printer_.name) : std::nullopt;
  if (!print) return;
  auto run = read_ledger_run(options_, ledger::Access::Write);
  if (!run) return tell(*print, PrintState::Waiting, text_of(run.error()));
  go_on(*run, *print);
}

void PrintQueue::go_on(LedgerRun& run, const Print& print) { print.sent ? find(run, print) : send(run, print); }

void PrintQueue::send(LedgerRun& run, const Print& print) {
  const QString& medium_id = print.asked.event.medium;
  const auto waits = [&](const QString& why) { tell(print, PrintState::Waiting, why); };
  const auto in_it = ledger::loaded(run.ledger.store(), printer_.name);
  if (!in_it) return waits(in_it.error().what);
  if (!*in_it || (*in_it)->event.medium != medium_id) return tell(print, PrintState::NoMedium, QString());
  const book::Media* medium = run.book.medium(medium_id);
  if (!medium) return waits(QStringLiteral("the book has no medium \"%1\" any more").arg(medium_id));
  const auto at = printer::printer_at(printer_.address);
  if (!at) return waits(at.error().what);
  const auto terms = printer::terms_for(wish_of(print, *medium), *at);
  if (!terms) return waits(terms.error().what);
  if (const auto error = printer::validate_job(*at, *terms)) return waits(error->what);
  const auto languages = read_languages(options_);
  if (!languages) return waits(text_of(languages.error()));
  board_.sending(print.asked.id.text(), true);
  const auto file = print_lot(options_, run.book, *languages, run.now, labels_of(print));
  if (file) tell(print, PrintState::Printing, QString());
  const auto job = file ? printer::send_job(*at, *terms, file->pdf) : problem::Expected<int>();
  board_.sending(print.asked.id.text(), false);
  if (!file) return waits(text_of(file.error()));
  if (!job) return tell(print, PrintState::Lost, job.error().what);
  follow(run, print, *job);
}

void PrintQueue::find(LedgerRun& run, const Print& print) {
  const auto job = printer::find_job(printer_.address, print.job_name);
  if (!job) return tell(print, PrintState::Silent, job.error().what);
  if (!*job) return tell(print, PrintState::Lost, QString());
  if ((*job)->ended()) return ended(run, print, **job);
  follow(run, print, (*job)->id);
}

void PrintQueue::follow(LedgerRun& run, const Print& print, int job) {
  const auto changed = [&](const JobStatus& now) {
    tell(print, now.stopped() || now.printer_at_fault ? PrintState::Stopped : PrintState::Printing, now);
    if (now.labels_out) forget_medium(run, print);
  };
  const auto go_on = [&] { return !board_.stopping() && is_open(run, print); };
  const auto end = printer::follow_job(printer_.address, job, {kLongestFollowed, changed, go_on});
  if (!end) return tell(print, PrintState::Silent, end.error().what);
  if (end->ended() && is_open(run, print)) ended(run, print, *end);
}

// All came out: it is done. Else somebody has to look at the labels.
void PrintQueue::ended(LedgerRun& run, const Print& print, const JobStatus& job) {
  if (job.state != printer::JobState::Completed) return tell(print, PrintState::Ended, job);
  const problem::Errors errors = record(run, done_event(print));
  if (!errors.empty()) return tell(print, PrintState::Waiting, text_of(errors));
  board_.forget(print.asked.id.text());
  board_.wake();
}

// The next roll may be another.
void PrintQueue::forget_medium(LedgerRun& run, const Print& print) {
  const auto known = ledger::loaded(run.ledger.store(), printer_.name);
  if (!known || !*known || (*known)->event.medium.isEmpty()) return;
  Event unknown;
  unknown.kind = Kind::MediumLoaded;
  unknown.by = print.asked.event.by;
  unknown.printer = printer_.name;
  unknown.reason = QStringLiteral("out of labels");
  record(run, std::move(unknown));
}

problem::Errors PrintQueue::record(LedgerRun& run, Event event) {
  if (const auto now = time_of_run(options_, run.zone())) run.now = *now;
  event.at = run.now;
  const auto recorded = run.ledger.append({std::move(event)}, run.stamp());
  return recorded ? problem::Errors{} : recorded.error();
}

void PrintQueue::tell(const Print& print, PrintState state, const QString& text) {
  board_.set(print.asked.id.text(), {state, text, {}, std::nullopt});
}

void PrintQueue::tell(const Print& print, PrintState state, const JobStatus& job) {
  QStringList reasons = job.reasons;
  if (!job.ended()) reasons += job.printer_reasons;
  reasons.removeDuplicates();
  board_.set(print.asked.id.text(), {state, {}, reasons, job.done()});
}

}  // namespace lardiner::command
