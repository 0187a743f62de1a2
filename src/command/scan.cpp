// lardiner scan: pictures, PDFs or typed text -> what each code is, and the history that it opens.
#include <QJsonArray>
#include <algorithm>

#include "command/commands.h"
#include "command/files.h"
#include "command/lot_report.h"
#include "command/output.h"
#include "command/scanned.h"
#include "scan/child.h"

namespace lardiner::command {

namespace {

using problem::Code;
using problem::Error;
using problem::Errors;

// A text, and where it was read.
struct Read {
  QString text;
  QString from;    ///< "walk-in.jpg, page 2"; empty: typed
  QString format;  ///< "QRCode"; empty: typed
};

QString place_of(const QString& file, const scan::Code& code, int pages) {
  return pages > 1 ? QStringLiteral("%1, page %2").arg(file).arg(code.page) : file;
}

void read_picture(const QString& path, const QByteArray& bytes, const ScanOptions& wish, std::vector<Read>& all,
                  Errors& errors) {
  scan::Bounds bounds;
  bounds.seconds = wish.seconds;
  const scan::Child child{wish.program, {QStringLiteral("read-codes")}};
  const auto found = scan::read_codes_in_child(child, bytes, path, bounds);
  if (!found) return errors.push_back(found.error());
  for (const scan::Code& code : found->codes)
    all.push_back({code.text, place_of(path, code, found->pages), code.format});
  if (!found->stopped.isEmpty())
    errors.push_back({Code::Range,
                      found->stopped,
                      {path, 0, 0, {}, 1, 1},
                      QStringLiteral("give it longer with --seconds, or scan the rest by itself")});
  if (found->codes.empty() && found->stopped.isEmpty())
    errors.push_back({Code::Missing,
                      QStringLiteral("no code is found in it"),
                      {path, 0, 0, {}, 1, 1},
                      QStringLiteral("take the picture nearer and straight on, in even light; or type the lot")});
}

// What is meant as a file, be it there or not: a lot that is not recorded has neither a slash nor an ending.
bool names_file(LedgerRun& run, const QString& word) {
  if (word == QLatin1String("-") || is_file(word)) return true;
  if (word.contains(QLatin1String("://")) || !run.ledger.lots().named(word).empty()) return false;
  for (const char* ending : {".png", ".jpg", ".jpeg", ".webp", ".pdf"})
    if (word.endsWith(QLatin1String(ending), Qt::CaseInsensitive)) return true;
  return word.contains(u'/');
}

// Words that name a file are pictures; the others are what a scanner read, or a person typed.
std::vector<Read> read_all(LedgerRun& run, const ScanOptions& wish, Errors& errors) {
  std::vector<Read> all;
  for (const QString& word : wish.words) {
    if (!names_file(run, word)) {
      all.push_back({word, {}, {}});
      continue;
    }
    const auto bytes = read_file(word);
    if (!bytes)
      errors.push_back(bytes.error());
    else
      read_picture(word, *bytes, wish, all, errors);
  }
  return all;
}

struct Answer {
  Read read;
  Scanned what;
  std::optional<LotReport> report;
  Asked asked;
};

QString text_of(const LedgerRun& run, const Answer& answer) {
  QString out = answer.read.from.isEmpty() ? QString() : answer.read.from + QStringLiteral(": ");
  out += answer.what.what + u'\n';
  if (answer.report) out += text(run, *answer.report, answer.asked);
  return out;
}

QJsonObject json_of(const LedgerRun& run, const Answer& answer) {
  QJsonObject out{{QStringLiteral("text"), answer.read.text},
                  {QStringLiteral("from"), answer.read.from},
                  {QStringLiteral("format"), answer.read.format},
                  {QStringLiteral("what"), answer.what.what},
                  {QStringLiteral("known"), answer.report.has_value()}};
  if (answer.what.container) out.insert(QStringLiteral("container"), *answer.what.container);
  if (answer.report) out.insert(QStringLiteral("history"), json_of(run, *answer.report, answer.asked));
  return out;
}

}  // namespace

ExitStatus scan_all(const Options& options, const ScanOptions& wish) {
  auto run = read_ledger_run(options, ledger::Access::Read);
  if (!run) return refuse(run.error(), options.json);
  Errors errors;
  std::vector<Answer> answers;
  for (const Read& read : read_all(*run, wish, errors)) {
    Answer answer{read, scanned(*run, read.text, wish.item), std::nullopt, {}};
    answer.asked = {answer.what.container, answer.what.label_end, !answer.what.label_end.isEmpty()};
    if (answer.what.lot) {
      auto report = lot_report(*run, *answer.what.lot);
      if (report)
        answer.report = std::move(*report);
      else
        errors.push_back(report.error());
    }
    if (answer.what.unknown) errors.push_back({Code::Unknown, answer.what.what, {}, {}});
    if (answer.what.several) errors.push_back(*answer.what.several);
    answers.push_back(std::move(answer));
  }
  print_problems(errors);
  QString out;
  QJsonArray all;
  for (const Answer& answer : answers) {
    out += text_of(*run, answer);
    all.append(json_of(*run, answer));
  }
  const bool printed =
      options.json ? print(QJsonObject{{QStringLiteral("codes"), all}, {QStringLiteral("problems"), json(errors)}})
                   : print(out);
  return reported(printed, errors.empty() ? kDone : exit_status(errors));
}

}  // namespace lardiner::command
