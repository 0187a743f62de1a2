// The command line: which subcommand, with which options, and its exit status.
#include <CLI/CLI.hpp>
#include <QCoreApplication>
#include <algorithm>
#include <clocale>
#include <optional>
#include <thread>

#include "command/commands.h"
#include "command/stop.h"
#include "scan/read_pictures.h"

using namespace lardiner::command;

namespace {

constexpr int kMostSeconds = 600;  // of scan, for a file
constexpr int kMostCopies = 9999, kLongestWait = 86400;
constexpr const char* kWhichItem = "of which item, where two suppliers use the same lot";

QString text(const std::string& value) { return QString::fromStdString(value); }

// What CLI11 fills in.
struct Words {
  std::string kitchen = ".", at, records, out, medium, format, product, containers, number, give, from, times, units,
              on_hand, paper, ledger, lot, item, head, file, by, day, note, to, address = "127.0.0.1", certificate, key,
              pins, initials, printer, pages, job_name, orders;
  std::vector<std::string> there, words, printers;
  bool json = false, replace = false, keep_going = false, hold_labels = false, proof = false, fill_vessel = false,
       hold = false, rebuild = false, chains = false, strong = false, remove = false;
  int port = 8420, days = 3, seconds = lardiner::scan::Bounds{}.seconds, copies = 1, wait = 600;
  std::optional<int> start;
};

RecordFormat format_of(const std::string& word) {
  if (word == "csv") return RecordFormat::Csv;
  return word == "jsonl" ? RecordFormat::JsonLines : RecordFormat::Guess;
}

void add_records(CLI::App* command, Words& words) {
  command->add_option("records", words.records, "batch records: a .csv or .jsonl file, or - for standard input")
      ->required();
  command->add_option("--format", words.format, "csv or jsonl, where the name does not tell")
      ->check(CLI::IsMember({"csv", "jsonl"}));
}

void add_labels(CLI::App& app, Words& words) {
  CLI::App* command = app.add_subcommand("labels", "batch records, or lots of the ledger -> labels as PDF");
  CLI::Option* records =
      command->add_option("records", words.records, "batch records: a .csv or .jsonl file, or - for standard input");
  command->add_option("--format", words.format, "csv or jsonl, where the name does not tell")
      ->check(CLI::IsMember({"csv", "jsonl"}));
  CLI::Option* lot =
      command->add_option("--lot", words.words, "a lot of the ledger, as it stands now; may be given again");
  lot->excludes(records)->take_all()->expected(1);
  command->add_option("--containers", words.containers, "of the lot, as 1-4, 9 (default: all that are in the kitchen)")
      ->needs(lot);
  command->add_option("--by", words.by, "initials of who prints, for the ledger");
  command->add_option("--out", words.out, "a folder, which gets a PDF for each medium; or one .pdf")
      ->required()
      ->check([](const std::string& place) { return place.empty() ? "--out is empty: name a folder or a .pdf" : ""; });
  command->add_option("--medium", words.medium, "print all labels on this medium of the book");
  command->add_option("--start", words.start, "begin at this place of a part-used sheet of labels; the first is 1");
  command->add_flag("--proof", words.proof,
                    "beside each PDF a page that shows every label, its sizes of type and its code, and what gave way");
  command->add_flag("--replace", words.replace, "let the new labels take the place of what is there");
  command->add_flag("--keep-going", words.keep_going, "print the good batches when others are refused (exit status 3)");
  command->add_flag("--hold-labels", words.hold_labels, "print HOLD labels for refused batches (exit status 3)");
}

// One PDF.
void add_pdf(CLI::App* command, Words& words) {
  command->add_option("--out", words.out, "the .pdf to write")->required()->check([](const std::string& place) {
    return text(place).endsWith(QLatin1String(".pdf")) ? "" : "name a .pdf";
  });
  command->add_flag("--replace", words.replace, "let the new file take the place of what is there");
}

void add_pad(CLI::App& app, Words& words) {
  CLI::App* command = app.add_subcommand(
      "pad",
      "labels to fill in by hand when the power is out, of batches that are not made yet; lots are of the day of "
      "the run");
  command->add_option("product", words.product, "id of the product")->required();
  command->add_option("--containers", words.containers, "of each batch, all of one kind: \"12 tub 500 g\"")->required();
  command
      ->add_option(
          "--number", words.number,
          "the running number of the batch, or as 901-905 of one batch each; no other batch of the product may "
          "have it on that day")
      ->required();
  command->add_option("--medium", words.medium, "print on this medium of the book")->required();
  add_pdf(command, words);
}

void add_test_page(CLI::App& app, Words& words) {
  CLI::App* command =
      app.add_subcommand("test-page", "what the printer can do on a medium, found out by printing on it");
  command->add_option("medium", words.medium, "id of the medium")->required();
  add_pdf(command, words);
}

// An empty value, as of a variable that is not set, is not the same as none.
void refuse_empty(CLI::App* command) {
  for (CLI::Option* option : command->get_options())
    if (option->get_items_expected_max() > 0)
      option->check(
          [](const std::string& value) { return value.empty() ? "it is empty: write it, or leave it out" : ""; });
}

void add_paper(CLI::App* command, Words& words) {
  command
      ->add_option("--paper", words.paper, "a4 or letter (default: a4 of a metric kitchen, letter of a customary one)")
      ->check(CLI::IsMember({"a4", "letter"}));
  command->add_flag("--replace", words.replace, "let what is written take the place of what is there");
}

void add_on_hand(CLI::App* command, Words& words) {
  command->add_option("--on-hand", words.on_hand, "lots that are there: a .csv or .jsonl file, or -");
}

// What the sheets of a single batch have in common.
void add_sheet(CLI::App* command, Words& words) {
  command->add_option("product", words.product, "id of the product")->required();
  command->add_option("--number", words.number,
                      "the running number of the batch: its lot is that of the day of the run");
  add_on_hand(command, words);
  command->add_option("--out", words.out, "the .pdf to write (default: the sheet as text)")
      ->check(
          [](const std::string& place) { return text(place).endsWith(QLatin1String(".pdf")) ? "" : "name a .pdf"; });
  add_paper(command, words);
}

void add_prep(CLI::App& app, Words& words) {
  CLI::App* command = app.add_subcommand("prep", "the sheet of a batch: what is pulled, weighed and done");
  add_sheet(command, words);
  CLI::Option* give = command->add_option("--give", words.give,
                                          "what shall come out: \"4.2 kg\", \"120 pieces\", \"12 tub 500 g\" "
                                          "(default: the formula once, as written)");
  CLI::Option* from = command->add_option("--from", words.from, "use up what is there of an item: \"butter=3.2 kg\"");
  CLI::Option* fill = command->add_flag("--fill-vessel", words.fill_vessel, "as much as the product's vessel takes");
  CLI::Option* times = command->add_option("--times", words.times, "the formula so many times: 2.5");
  give->excludes(from, fill, times);
  from->excludes(fill, times);
  fill->excludes(times);
  refuse_empty(command);
}

void add_assembly(CLI::App& app, Words& words) {
  CLI::App* command = app.add_subcommand(
      "assembly", "the sheet of a batch that is put together unit by unit: each unit, tray and total");
  add_sheet(command, words);
  command->add_option("--units", words.units, "how many (default: what --there is enough for at worst)");
  command->add_option("--there", words.there, "what is there of an item: \"cod-fillet=20 lb\"; once for each item")
      ->expected(1)
      ->take_all();
  refuse_empty(command);
}

void add_plan(CLI::App& app, Words& words) {
  CLI::App* command = app.add_subcommand(
      "plan", "orders and what is on hand -> what to make, pull and buy, with start windows and all sheets");
  command->add_option("orders", words.records, "orders: a .csv or .jsonl file, or - for standard input")->required();
  command->add_option("--format", words.format, "csv or jsonl, where the name of the orders does not tell")
      ->check(CLI::IsMember({"csv", "jsonl"}));
  add_on_hand(command, words);
  command->add_option("--number", words.number, "the running number of the first batch (default: 1)");
  command->add_option(
      "--out", words.out,
      "a folder: all sheets as plan.pdf, windows.svg, records.jsonl for labels, plan.json (default: the "
      "plan as text)");
  add_paper(command, words);
  refuse_empty(command);
}

void add_record(CLI::App& app, Words& words) {
  CLI::App* command = app.add_subcommand("record", "batch records and what befell the lots -> the ledger");
  command
      ->add_option("words", words.words,
                   "a .csv or .jsonl file, - for standard input, or one row as KEY=VALUE words: event=frozen "
                   "lot=A26329CLB01K containers=13-24 by=JO")
      ->required();
  command->add_option("--format", words.format, "csv or jsonl, where the name does not tell")
      ->check(CLI::IsMember({"csv", "jsonl"}));
  command->add_flag("--hold", words.hold, "record batches without a date all the same, not released (exit status 3)");
}

void add_lot(CLI::App* command, Words& words) {
  command->add_option("lot", words.lot, "as on the label")->required();
  command->add_option("--item", words.item, kWhichItem);
}

// Of no use to a person: not in --help.
void add_read_codes(CLI::App& app, Words& words) {
  app.add_subcommand("read-codes", "what scan runs for each file, in a process of its own")
      ->group("")
      ->add_option("seconds", words.seconds, "at most so long")
      ->required()
      ->check(CLI::Range(1, kMostSeconds));
}

void add_ledger_reports(CLI::App& app, Words& words) {
  CLI::App* scan = app.add_subcommand("scan", "pictures, PDFs or code text -> what each code is, and its history");
  scan->add_option("words", words.words,
                   "pictures (PNG, JPEG, WebP), PDFs, what a scanner read, or a lot typed by hand")
      ->required();
  scan->add_option("--item", words.item, kWhichItem);
  scan->add_option("--seconds", words.seconds, "at most so long for each file (default: 20)")
      ->check(CLI::Range(1, kMostSeconds));
  add_lot(app.add_subcommand("history", "one lot: is it good, until when and why; all that is known of it"), words);
  CLI::App* trace = app.add_subcommand("trace", "what a lot was made of and what was made of it, through any depth");
  add_lot(trace, words);
  trace->add_option("--out", words.out, "the picture of the lineage as well: a .svg or a .pdf")
      ->check([](const std::string& place) {
        return text(place).endsWith(QLatin1String(".svg")) || text(place).endsWith(QLatin1String(".pdf"))
                   ? ""
                   : "name a .svg or a .pdf";
      });
  trace->add_flag("--replace", words.replace, "let the new picture take the place of what is there");
  app.add_subcommand("due", "deadlines that run, what to discard, what ends today, what to use first")
      ->add_option("--days", words.days, "of what is to be used first: days after today (default: 3)")
      ->check(CLI::Range(0, 366));
}

// A sheet of the ledger, on the terminal or as a PDF.
void add_ledger_sheet(CLI::App* command, Words& words) {
  command->add_option("--out", words.out, "the .pdf to write (default: the sheet as text)")
      ->check(
          [](const std::string& place) { return text(place).endsWith(QLatin1String(".pdf")) ? "" : "name a .pdf"; });
  add_paper(command, words);
}

void add_ledger_sheets(CLI::App& app, Words& words) {
  CLI::App* day = app.add_subcommand("day-record", "the records of a day, for an inspector and for its review");
  day->add_option("day", words.day, "as 2026-11-25")->required();
  add_ledger_sheet(day, words);
  CLI::App* note = app.add_subcommand("dispatch-note", "what left with a note, as the sheet that goes with it");
  note->add_option("note", words.note, "its number, as the dispatch was recorded")->required();
  add_ledger_sheet(note, words);
  CLI::App* recall = app.add_subcommand("recall", "everything that holds a lot, and where it went");
  add_lot(recall, words);
  add_ledger_sheet(recall, words);
}

void add_export(CLI::App& app, Words& words) {
  CLI::App* command = app.add_subcommand("export", "what came in, was made and left, for others to read");
  command->require_subcommand(1);
  const auto add = [&](const char* name, const char* what, const char* out) {
    CLI::App* form = command->add_subcommand(name, what);
    form->add_option("--from", words.from, "the first day, as 2026-02-28");
    form->add_option("--to", words.to, "the last day");
    form->add_option("--lot", words.lot, "one lot with all that it was made of and all that was made of it");
    form->add_option("--item", words.item, kWhichItem);
    form->add_option("--out", words.out, out)->required();
    form->add_flag("--replace", words.replace, "let the new file take the place of what is there");
    refuse_empty(form);
  };
  add("spreadsheet", "the key data elements of traceability, a row for each event and input", "a .csv or .xlsx");
  add("epcis", "the same events as an EPCIS 2.0 document in JSON-LD", "a .jsonld");
}

void add_ledger_care(CLI::App& app, Words& words) {
  CLI::App* verify = app.add_subcommand("verify", "whether the entries of the ledger are those that were recorded");
  verify->add_option("--head", words.head, "a head that a day record or a backup states: finds a tail cut off");
  CLI::Option* rebuild =
      verify->add_flag("--rebuild", words.rebuild, "compute the state of every lot anew from the entries");
  verify->add_flag("--chains", words.chains, "the chains alone: not whether the state of the lots is what they give")
      ->excludes(rebuild);
  app.add_subcommand("backup", "a copy of the ledger that verifies, made while it is in use")
      ->add_option("file", words.file, "the file to write")
      ->required();
  app.add_subcommand("restore", "a ledger out of a backup that verifies; nothing is written over")
      ->add_option("file", words.file, "the backup")
      ->required();
}

void add_station(CLI::App& app, Words& words) {
  CLI::App* station = app.add_subcommand("station", "serves the kitchen's web page until Ctrl-C");
  station->add_option("--address", words.address,
                      "of this machine, to be listened on (default: 127.0.0.1, itself alone)");
  station->add_option("--port", words.port, "to be listened on (default: 8420)")->check(CLI::Range(0, 65535));
  CLI::Option* certificate = station->add_option("--certificate", words.certificate, "for TLS: the kitchen's, as PEM");
  CLI::Option* key = station->add_option("--key", words.key, "its key, as PEM");
  certificate->needs(key);
  key->needs(certificate);
  station
      ->add_option("--name", words.words, "a name besides its addresses by which browsers call it; may be given again")
      ->take_all()
      ->expected(1);
  station
      ->add_option("--printer", words.printers,
                   "for labels: its name among `printers` or its address, or NAME=ADDRESS to call it otherwise; may be "
                   "given again")
      ->take_all()
      ->expected(1);
  station->add_option("--orders", words.orders, "orders, a .csv or .jsonl file: their start windows stand on Today")
      ->check(CLI::ExistingFile);
  CLI::App* pin = app.add_subcommand(
      "pin", "sets somebody's PIN for the station: 4 to 12 figures, asked for or read from standard input");
  pin->add_option("initials", words.initials, "of a person in the book")->required();
  pin->add_flag("--strong", words.strong,
                "the strong word instead, for release, recall and corrections: 8 characters or more");
  pin->add_flag("--remove", words.remove, "takes out both, of who has left")->excludes("--strong");
  for (CLI::App* command : {station, pin})
    command->add_option("--pins", words.pins, "file of the PINs (default: the ledger's name with .pins)");
}

void add_printing(CLI::App& app, Words& words) {
  CLI::App* printers = app.add_subcommand("printers", "the printers that can be reached, their state and their media");
  printers->add_option("--at-address", words.printer, "only the one at this address, as ipp://HOST/ipp/print");
  refuse_empty(printers);
  CLI::App* print = app.add_subcommand("print", "a PDF -> a printer, and how far it came");
  print->add_option("file", words.file, "the .pdf")->required();
  print->add_option("--printer", words.printer, "its name among `printers`, or its address")->required();
  print->add_option("--medium", words.medium, "of the book: refuse a file that was made for another");
  print->add_option("--copies", words.copies, "of each page (default: 1)")->check(CLI::Range(1, kMostCopies));
  print->add_option("--pages", words.pages, "as 3-9, or 3- to the end (default: all)");
  print->add_option("--job-name", words.job_name,
                    "under which it stands at the printer; not sent while a job of that name is there unfinished "
                    "(default: the file's name)");
  print->add_option("--wait", words.wait, "seconds to watch it; then it stays at the printer (default: 600)")
      ->check(CLI::Range(0, kLongestWait));
  refuse_empty(print);
}

SheetOptions sheet_of(const Words& words) {
  return {text(words.number), text(words.on_hand), text(words.out), text(words.paper), words.replace};
}

QStringList texts(const std::vector<std::string>& values) {
  QStringList out;
  for (const std::string& value : values) out << text(value);
  return out;
}

void describe(CLI::App& app, Words& words) {
  app.require_subcommand(1);
  app.fallthrough();
  app.option_defaults()->always_capture_default(false);
  app.add_option("--kitchen", words.kitchen, "folder of the kitchen book (default: the current one)");
  app.add_option("--ledger", words.ledger,
                 "the ledger's file (default: ledger/STATION.sqlite in the kitchen's folder)");
  app.add_option("--at", words.at, "the time of the run, as 2026-02-28T14:30 in the kitchen's zone (default: now)");
  app.add_flag("--json", words.json, "report as JSON");
  app.footer(
      "Exit status: 0 done; 1 the book or the records are at fault; 2 wrong usage; 3 done in part, as asked,\n"
      "or a plan that cannot meet every order; 4 the machine failed.\n"
      "Lardiner computes from the kitchen's own rules and the published rule set it adopted. It replaces neither the\n"
      "local food code, nor the kitchen's food-safety plan, nor the judgement of a licensed person.");
}

Options options_of(const Words& words) {
  Options options;
  options.kitchen = text(words.kitchen);
  options.ledger = text(words.ledger);
  options.at = text(words.at);
  options.json = words.json;
  options.threads = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
  options.data = QCoreApplication::applicationDirPath() + QStringLiteral("/" LARDINER_DATA_DIR);
  return options;
}

void add_commands(CLI::App& app, Words& words) {
  app.add_subcommand("check", "reads the whole kitchen book and prints every problem");
  add_records(app.add_subcommand("dates", "the use-by of each batch record, with the rules that decided and lost"),
              words);
  add_labels(app, words);
  add_pad(app, words);
  add_test_page(app, words);
  add_prep(app, words);
  add_assembly(app, words);
  add_plan(app, words);
  add_record(app, words);
  add_ledger_reports(app, words);
  add_ledger_sheets(app, words);
  add_export(app, words);
  add_ledger_care(app, words);
  add_station(app, words);
  add_printing(app, words);
  add_read_codes(app, words);
}

ExitStatus run(const CLI::App& app, const Words& words) {
  const Options options = options_of(words);
  const RecordFormat format = format_of(words.format);
  const auto asked_for = [&app](const char* command) { return app.got_subcommand(command); };
  if (asked_for("check")) return check(options);
  if (asked_for("dates")) return dates(options, {text(words.records), format});
  if (asked_for("test-page")) return test_page(options, {text(words.medium), text(words.out), words.replace});
  if (asked_for("prep"))
    return prep(options, {text(words.product), text(words.give), text(words.from), text(words.times), words.fill_vessel,
                          sheet_of(words)});
  if (asked_for("assembly"))
    return assembly(options, {text(words.product), text(words.units), texts(words.there), sheet_of(words)});
  if (asked_for("plan"))
    return plan_day(options, {text(words.records), format, text(words.on_hand), text(words.number), text(words.out),
                              text(words.paper), words.replace});
  if (asked_for("record")) return record(options, {texts(words.words), format, words.hold});
  if (asked_for("scan"))
    return scan_all(options,
                    {texts(words.words), text(words.item), words.seconds, QCoreApplication::applicationFilePath()});
  if (asked_for("read-codes")) return read_codes_for_scan(words.seconds);
  if (asked_for("history")) return history_of(options, {text(words.lot), text(words.item)});
  if (asked_for("trace")) return trace(options, {text(words.lot), text(words.item), text(words.out), words.replace});
  if (asked_for("day-record")) return day_record(options, {text(words.day), sheet_of(words)});
  if (asked_for("dispatch-note")) return dispatch_note(options, {text(words.note), sheet_of(words)});
  if (asked_for("recall")) return recall(options, {text(words.lot), text(words.item), sheet_of(words)});
  if (asked_for("export")) {
    const ExportOptions wish{text(words.from), text(words.to),  text(words.lot),
                             text(words.item), text(words.out), words.replace};
    return app.get_subcommand("export")->got_subcommand("epcis") ? export_epcis(options, wish)
                                                                 : export_spreadsheet(options, wish);
  }
  if (asked_for("due")) return due_now(options, {words.days});
  if (asked_for("verify")) return verify_ledger(options, {text(words.head), words.rebuild, words.chains});
  if (asked_for("backup")) return backup(options, text(words.file));
  if (asked_for("restore")) return restore(options, text(words.file));
  if (asked_for("station"))
    return serve_station(options, {text(words.address), words.port, text(words.certificate), text(words.key),
                                   texts(words.words), text(words.pins), QCoreApplication::applicationFilePath(),
                                   texts(words.printers), text(words.orders)});
  if (asked_for("pin")) return set_pin(options, {text(words.initials), words.strong, words.remove, text(words.pins)});
  if (asked_for("printers")) return printers(options, {text(words.printer)});
  if (asked_for("print"))
    return print_file(options, {text(words.file), text(words.printer), text(words.medium), words.copies,
                                text(words.pages), text(words.job_name), words.wait});
  if (asked_for("pad"))
    return pad(options, {text(words.product), text(words.containers), text(words.number), text(words.medium),
                         text(words.out), words.replace});
  return labels(options, {text(words.records), texts(words.words), text(words.containers), text(words.by), format,
                          text(words.out), words.replace, words.keep_going, words.hold_labels, text(words.medium),
                          words.proof, words.start});
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  // QCoreApplication took the system's: CLI11 and printf would then write 1,5, and reasons would come in two languages.
  std::setlocale(LC_NUMERIC, "C");
  std::setlocale(LC_MESSAGES, "C");

  Words words;
  CLI::App app("Labels, prep sheets and day plans for a commissary kitchen's batches.", "lardiner");
  describe(app, words);
  add_commands(app, words);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? kDone : kWrongUsage;
  }
  const ExitStatus status = run(app, words);
  stop_if_asked();
  return status;
}
