// lardiner check: reads the whole book, with the words and templates of its labels, and prints every problem.
#include "command/commands.h"
#include "command/output.h"
#include "facts/label_language.h"

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

// What the book's labels need beside the book: words in their languages, and templates that can be read.
void check_labels(const Options& options, const book::Book& book, problem::Errors& errors) {
  const auto take = [&errors](const problem::Errors& found) {
    errors.insert(errors.end(), found.begin(), found.end());
  };
  QStringList templates{QStringLiteral("inside"), QStringLiteral("finisher"), QStringLiteral("sale"),
                        QStringLiteral("hold"), QStringLiteral("pad")};
  for (const book::Product& product : book.products)
    for (const book::ContainerSpec& container : product.containers)
      if (template_names(options).contains(container.label_template)) templates += container.label_template;
  templates.removeDuplicates();
  for (const QString& name : templates)
    if (const auto label = read_template(options, name); !label) take(label.error());
  const auto languages = read_languages(options);
  if (!languages) return take(languages.error());
  for (const book::Product& product : book.products)
    for (const book::ContainerSpec& container : product.containers)
      for (const QString& code : container.languages)
        if (const auto language = facts::label_language(*languages, book.kitchen, code, container.place); !language)
          errors.push_back(language.error());
}

}  // namespace

ExitStatus check(const Options& options) {
  auto reading = read_kitchen_book(options);
  if (!reading) return refuse(reading.error(), options.json);
  const bool named = !reading->book.kitchen.name.isEmpty();  // else kitchen.toml itself could not be read
  if (named) check_labels(options, reading->book, reading->findings.errors);
  book::Findings& findings = reading->findings;
  problem::Errors all = findings.errors;
  all.insert(all.end(), findings.gaps.begin(), findings.gaps.end());
  if (!options.json) print_problems(all);
  const bool printed =
      options.json ? print(QJsonObject{{QStringLiteral("kitchen"), reading->book.kitchen.name},
                                       {QStringLiteral("book"), QString::fromLatin1(reading->book.hash.toHex())},
                                       {QStringLiteral("errors"), json(findings.errors)},
                                       {QStringLiteral("gaps"), json(findings.gaps)}})
                   : !named || print(summary(reading->book, findings));
  return reported(printed, all.empty() ? kDone : exit_status(all));
}

}  // namespace lardiner::command
