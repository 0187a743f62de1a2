// lardiner check: reads the whole book and prints every problem.
#include "command/commands.h"
#include "command/output.h"

namespace lardiner::command {

namespace {

QString counted(qsizetype count, const char* one, const char* many) {
  return QStringLiteral("%1 %2").arg(count).arg(QLatin1String(count == 1 ? one : many));
}

QString summary(const book::Book& book, const book::Findings& findings) {
  const QString holds =
      QStringLiteral("%1: %2, %3, %4; rule set %5\n")
          .arg(book.kitchen.name, counted(static_cast<qsizetype>(book.ingredients.size()), "ingredient", "ingredients"),
               counted(static_cast<qsizetype>(book.products.size()), "product", "products"),
               counted(static_cast<qsizetype>(book.media.size()), "medium", "media"), book.rules.name);
  const QString found = findings.errors.empty() && findings.gaps.empty()
                            ? QStringLiteral("No problems found.\n")
                            : QStringLiteral("%1, %2.\n")
                                  .arg(counted(static_cast<qsizetype>(findings.errors.size()), "error", "errors"),
                                       counted(static_cast<qsizetype>(findings.gaps.size()), "gap", "gaps"));
  return holds + found;
}

}  // namespace

ExitStatus check(const Options& options) {
  const auto reading = read_kitchen_book(options);
  if (!reading) {
    print_problems(reading.error());
    return exit_status(reading.error());
  }
  const book::Findings& findings = reading->findings;
  if (options.json) {
    print(QJsonObject{{QStringLiteral("kitchen"), reading->book.kitchen.name},
                      {QStringLiteral("book"), QString::fromLatin1(reading->book.hash.toHex())},
                      {QStringLiteral("errors"), json(findings.errors)},
                      {QStringLiteral("gaps"), json(findings.gaps)}});
  } else {
    problem::Errors all = findings.errors;
    all.insert(all.end(), findings.gaps.begin(), findings.gaps.end());
    print_problems(all);
    print(summary(reading->book, findings));
  }
  return findings.errors.empty() && findings.gaps.empty() ? kDone : kInputAtFault;
}

}  // namespace lardiner::command
