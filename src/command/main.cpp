// The command line: which subcommand, with which options, and its exit status.
#include <CLI/CLI.hpp>
#include <QCoreApplication>
#include <algorithm>
#include <clocale>
#include <optional>
#include <thread>

#include "command/commands.h"
#include "command/stop.h"

using namespace lardiner::command;

namespace {

QString text(const std::string& value) { return QString::fromStdString(value); }

// What CLI11 fills in.
struct Words {
  std::string kitchen = ".", at, records, out, medium, format, product, containers, number, give, from, times, units,
              on_hand, paper;
  std::vector<std::string> there;
  bool json = false, replace = false, keep_going = false, hold_labels = false, proof = false, fill_vessel = false;
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
  CLI::App* command = app.add_subcommand("labels", "batch records -> labels as PDF, everything or nothing");
  add_records(command, words);
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
  if (asked_for("pad"))
    return pad(options, {text(words.product), text(words.containers), text(words.number), text(words.medium),
                         text(words.out), words.replace});
  return labels(options, {text(words.records), format, text(words.out), words.replace, words.keep_going,
                          words.hold_labels, text(words.medium), words.proof, words.start});
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
