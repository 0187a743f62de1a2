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
  std::string kitchen = ".", at, records, out, medium, format, product, containers, number;
  bool json = false, replace = false, keep_going = false, hold_labels = false, proof = false;
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

CLI::App* add_labels(CLI::App& app, Words& words) {
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
  return command;
}

// One PDF.
void add_pdf(CLI::App* command, Words& words) {
  command->add_option("--out", words.out, "the .pdf to write")->required()->check([](const std::string& place) {
    return text(place).endsWith(QLatin1String(".pdf")) ? "" : "name a .pdf";
  });
  command->add_flag("--replace", words.replace, "let the new file take the place of what is there");
}

CLI::App* add_pad(CLI::App& app, Words& words) {
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
  return command;
}

CLI::App* add_test_page(CLI::App& app, Words& words) {
  CLI::App* command =
      app.add_subcommand("test-page", "what the printer can do on a medium, found out by printing on it");
  command->add_option("medium", words.medium, "id of the medium")->required();
  add_pdf(command, words);
  return command;
}

void describe(CLI::App& app, Words& words) {
  app.require_subcommand(1);
  app.fallthrough();
  app.option_defaults()->always_capture_default(false);
  app.add_option("--kitchen", words.kitchen, "folder of the kitchen book (default: the current one)");
  app.add_option("--at", words.at, "the time of the run, as 2026-02-28T14:30 in the kitchen's zone (default: now)");
  app.add_flag("--json", words.json, "report as JSON");
  app.footer(
      "Exit status: 0 done; 1 the book or the records are at fault; 2 wrong usage; 3 done in part, as asked;\n"
      "4 the machine failed.\n"
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

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  // QCoreApplication took the system's: CLI11 and printf would then write 1,5, and reasons would come in two languages.
  std::setlocale(LC_NUMERIC, "C");
  std::setlocale(LC_MESSAGES, "C");

  Words words;
  CLI::App app("Labels with use-by dates, allergens and codes for a commissary kitchen's batches.", "lardiner");
  describe(app, words);
  CLI::App* check_command = app.add_subcommand("check", "reads the whole kitchen book and prints every problem");
  CLI::App* dates_command =
      app.add_subcommand("dates", "the use-by of each batch record, with the rules that decided and lost");
  add_records(dates_command, words);
  add_labels(app, words);
  CLI::App* pad_command = add_pad(app, words);
  CLI::App* test_page_command = add_test_page(app, words);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? kDone : kWrongUsage;
  }

  const Options options = options_of(words);
  if (check_command->parsed()) return check(options);
  if (dates_command->parsed()) return dates(options, {text(words.records), format_of(words.format)});
  if (test_page_command->parsed()) return test_page(options, {text(words.medium), text(words.out), words.replace});
  if (pad_command->parsed()) {
    const ExitStatus status = pad(options, {text(words.product), text(words.containers), text(words.number),
                                            text(words.medium), text(words.out), words.replace});
    stop_if_asked();
    return status;
  }
  const ExitStatus status =
      labels(options, {text(words.records), format_of(words.format), text(words.out), words.replace, words.keep_going,
                       words.hold_labels, text(words.medium), words.proof, words.start});
  stop_if_asked();
  return status;
}
