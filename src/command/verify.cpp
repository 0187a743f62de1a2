// lardiner verify, backup, restore: whether the entries are those that were recorded, and copies of them that are.
#include "ledger/verify.h"

#include <QFileInfo>
#include <QJsonArray>

#include "command/commands.h"
#include "command/ledger_run.h"
#include "command/output.h"
#include "ledger/backup.h"
#include "ledger/computed_anew.h"

namespace lardiner::command {

namespace {

using ledger::Head;
using problem::Code;
using problem::Error;

QJsonArray json_of(const std::vector<Head>& heads) {
  QJsonArray all;
  for (const Head& head : heads)
    all.append(QJsonObject{{QStringLiteral("station"), head.station},
                           {QStringLiteral("entries"), head.count},
                           {QStringLiteral("head"), ledger::text(head)}});
  return all;
}

QString text_of(const std::vector<Head>& heads) {
  QString out;
  for (const Head& head : heads)
    out +=
        QStringLiteral("station %1: %2 entries, head %3\n").arg(head.station).arg(head.count).arg(ledger::text(head));
  return out.isEmpty() ? QStringLiteral("no entries\n") : out;
}

Error broken(const QString& path, const ledger::Broken& first) {
  return {Code::Conflict,
          ledger::text(first),
          {path, 0, 0, {}, 1, 1},
          QStringLiteral(
              "keep this file as it is, tell who answers for the records, and restore the last backup that verifies")};
}

Error unlike(const QString& path, const QStringList& tables) {
  return {Code::Conflict,
          QStringLiteral("the entries verify, but what was computed from them is not what they give (%1)")
              .arg(tables.join(QStringLiteral(", "))),
          {path, 0, 0, {}, 1, 1},
          QStringLiteral("tell who answers for the records, then compute it anew: lardiner verify --rebuild")};
}

// What is wrong with the tables that are computed from the entries.
problem::Errors look_at_tables(LedgerRun& run, const VerifyOptions& wish) {
  if (wish.chains) return {};
  if (wish.rebuild) {
    const auto rebuilt = run.ledger.rebuild();
    return rebuilt ? problem::Errors() : rebuilt.error();
  }
  const auto tables = ledger::unlike_tables(run.ledger.store().path());
  if (!tables) return tables.error();
  return tables->isEmpty() ? problem::Errors() : problem::Errors{unlike(run.ledger.store().path(), *tables)};
}

// No file is made where there is none.
problem::ExpectedAll<LedgerRun> ledger_to_verify(const Options& options, const VerifyOptions& wish) {
  auto book = usable_book(options);
  if (!book) return tl::unexpected(book.error());
  const bool there = QFileInfo::exists(ledger_path(options, book->kitchen));
  return ledger_run(options, std::move(*book), wish.rebuild && there ? ledger::Access::Write : ledger::Access::Read);
}

ExitStatus report_copy(const Options& options, const problem::Expected<std::vector<Head>>& heads, const QString& to) {
  if (!heads) return refuse({heads.error()}, options.json);
  const bool printed =
      options.json ? print(QJsonObject{{QStringLiteral("file"), to}, {QStringLiteral("chains"), json_of(*heads)}})
                   : print(to + QStringLiteral(": verified\n") + text_of(*heads));
  return reported(printed, kDone);
}

}  // namespace

ExitStatus verify_ledger(const Options& options, const VerifyOptions& wish) {
  const std::optional<Head> known = ledger::head_of(wish.head);
  if (!wish.head.isEmpty() && !known)
    return wrong_usage({Code::Malformed,
                        QStringLiteral("--head: \"%1\" is no head").arg(wish.head),
                        {},
                        QStringLiteral("write it as it stands on the day record: A-123- and 64 digits")},
                       options.json);
  auto run = ledger_to_verify(options, wish);
  if (!run) return refuse(run.error(), options.json);
  const auto verified = ledger::verify(run->ledger.store(), known);
  if (!verified) return refuse({verified.error()}, options.json);
  problem::Errors errors;
  for (const ledger::Broken& one : verified->broken) errors.push_back(broken(run->ledger.store().path(), one));
  if (errors.empty()) errors = look_at_tables(*run, wish);
  print_problems(errors);
  const bool printed = options.json ? print(QJsonObject{{QStringLiteral("entries"), verified->entries},
                                                        {QStringLiteral("chains"), json_of(verified->heads)},
                                                        {QStringLiteral("problems"), json(errors)}})
                                    : print(errors.empty() ? text_of(verified->heads) : QString());
  return reported(printed, errors.empty() ? kDone : exit_status(errors));
}

ExitStatus backup(const Options& options, const QString& to) {
  const auto book = usable_book(options);
  if (!book) return refuse(book.error(), options.json);
  return report_copy(options, ledger::back_up(ledger_path(options, book->kitchen), to), to);
}

ExitStatus restore(const Options& options, const QString& from) {
  const auto book = usable_book(options);
  if (!book) return refuse(book.error(), options.json);
  const QString to = ledger_path(options, book->kitchen);
  make_ledger_folder(options);
  return report_copy(options, ledger::restore(from, to), to);
}

}  // namespace lardiner::command
