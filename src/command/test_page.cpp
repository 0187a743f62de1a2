// lardiner test-page: what the printer can do on a medium, found out by printing on it.
#include "command/commands.h"
#include "command/files.h"
#include "command/output.h"
#include "command/test_label.h"

namespace lardiner::command {

namespace {

problem::Expected<bool> put_in_place(const TestPageOptions& wish, const QByteArray& pdf) {
  const QString name = QStringLiteral("test-page.pdf");
  auto drafts = NewFolder::beside(wish.out, NewFolder::Shape::OneFile, wish.replace);
  if (!drafts) return tl::unexpected(drafts.error());
  const auto written = drafts->write(name, pdf);
  if (!written) return tl::unexpected(written.error());
  return drafts->keep_only(name);
}

bool report(const Options& options, const TestPageOptions& wish, size_t labels) {
  if (options.json)
    return print(QJsonObject{{QStringLiteral("file"), wish.out}, {QStringLiteral("labels"), static_cast<int>(labels)}});
  return print(
      QStringLiteral("%1: %2 labels. Write the least module that your phone reads into module_dots of the medium "
                     "\"%3\".\n")
          .arg(wish.out)
          .arg(labels)
          .arg(wish.medium));
}

}  // namespace

ExitStatus test_page(const Options& options, const TestPageOptions& wish) {
  const auto book = usable_book(options);
  if (!book) return refuse(book.error(), options.json);
  const auto now = time_of_run(options, book->kitchen.zone);
  if (!now) return refuse({now.error()}, options.json);
  if (const auto error = unknown_medium(*book, wish.medium)) return refuse({*error}, options.json);
  const auto page = test_labels(options, *book, *book->medium(wish.medium), *now, false);
  if (!page) return refuse(page.error(), options.json);
  const auto kept = put_in_place(wish, page->pdf);
  if (!kept) return refuse({kept.error()}, options.json);
  return reported(report(options, wish, page->labels), kDone);
}

}  // namespace lardiner::command
