// lardiner print: sends a PDF to a printer and says how far it came.
#include <QFileInfo>
#include <QRegularExpression>
#include <algorithm>
#include <cstdlib>
#include <limits>

#include "command/commands.h"
#include "command/files.h"
#include "command/medium_page.h"
#include "command/option_error.h"
#include "command/output.h"
#include "command/print_report.h"
#include "command/stop.h"
#include "printer/job.h"
#include "printer/pdf_page.h"
#include "printer/printers.h"

namespace lardiner::command {

namespace {

using printer::JobStatus;
using printer::JobWish;
using printer::PageRange;
using printer::PdfPages;
using printer::Printer;
using printer::Size;
using problem::Code;
using problem::Error;
using problem::Errors;

Error of_pages(const QString& written, const QString& what, const QString& hint) {
  return of_option(QStringLiteral("--pages"), {Code::Range, QStringLiteral("\"%1\" %2").arg(written, what), {}, hint});
}

// "3-9", "3-", "3"; of a file that does not say how many it has, to its end is to the largest number there is.
problem::Expected<std::optional<PageRange>> page_range(const QString& written, int count) {
  if (written.isEmpty()) return std::nullopt;
  static const QRegularExpression form(QStringLiteral("^([0-9]{1,7})(?:(-)([0-9]{1,7})?)?$"));
  const auto found = form.match(written);
  if (!found.hasMatch())
    return tl::unexpected(
        of_pages(written, QStringLiteral("is no range of pages"), QStringLiteral("write it as 3-9, or 3- to the end")));
  const int end = count > 0 ? count : std::numeric_limits<int>::max();
  PageRange out{found.captured(1).toInt(), end};
  if (found.captured(2).isEmpty()) out.last = out.first;
  if (!found.captured(3).isEmpty()) out.last = found.captured(3).toInt();
  if (std::max(out.first, out.last) > end)
    return tl::unexpected(
        of_pages(written, QStringLiteral("goes beyond the last page"), QStringLiteral("the file has %1").arg(count)));
  if (out.first < 1 || out.last < out.first)
    return tl::unexpected(
        of_pages(written, QStringLiteral("is no range of pages"), QStringLiteral("write it as 3-9, or 3- to the end")));
  return out;
}

bool is_same(Size a, Size b) {
  return std::abs(a.width - b.width) <= printer::kTolerance && std::abs(a.height - b.height) <= printer::kTolerance;
}

Error made_for_another(const PrintOptions& wish, Size page, Size medium) {
  return {Code::Conflict,
          QStringLiteral("its pages are %1, and the medium \"%2\" is %3").arg(text(page), wish.medium, text(medium)),
          {wish.file, 0, 0, {}, 1, 1},
          QStringLiteral("print the file that was made for this medium, or name the medium of this file")};
}

// The size that is asked of the printer, and the resolution: the book's where a medium is named.
problem::ExpectedAll<JobWish> wish_for(const Options& options, const PrintOptions& wish, const PdfPages& pdf) {
  JobWish out;
  out.name = wish.job_name.isEmpty() ? QFileInfo(wish.file).fileName() : wish.job_name;
  out.page = as_cut(pdf.size);
  out.copies = wish.copies;
  auto pages = page_range(wish.pages, pdf.count);
  if (!pages) return tl::unexpected(Errors{pages.error()});
  out.pages = *pages;
  if (wish.medium.isEmpty()) return out;
  const auto book = usable_book(options);
  if (!book) return tl::unexpected(book.error());
  if (const auto error = unknown_medium(*book, wish.medium)) return tl::unexpected(Errors{*error});
  const book::Media& medium = *book->medium(wish.medium);
  out.page = page_of(medium);
  if (!is_same(out.page, pdf.size)) return tl::unexpected(Errors{made_for_another(wish, pdf.size, out.page)});
  out.dots_per_inch = medium.dots_per_inch;
  return out;
}

problem::Expected<Printer> printer_named(const QString& name) {
  const auto address = printer::address_named(name);
  if (!address) return tl::unexpected(address.error());
  auto found = printer::printer_at(*address);
  if (!found && found.error().code == Code::Malformed)
    return tl::unexpected(of_option(QStringLiteral("--printer"), found.error()));
  return found;
}

// A job that a former run sent is not sent again while it is there.
std::optional<Error> already_there(const PrintOptions& wish, const Printer& at) {
  if (wish.job_name.isEmpty()) return std::nullopt;
  const auto found = printer::find_job(at.address, wish.job_name);
  if (!found) return found.error();
  if (!*found || (*found)->ended()) return std::nullopt;
  return Error{Code::Machine,
               QStringLiteral("the printer \"%1\" already has the job \"%2\", number %3: %4")
                   .arg(at.name, wish.job_name)
                   .arg((*found)->id)
                   .arg(text(**found, 0)),
               {},
               QStringLiteral("let it be printed, or cancel it at the printer; another --job-name is another job")};
}

PrintJob job_of(const PrintOptions& wish, const Printer& at, const PdfPages& pdf, const JobWish& asked) {
  PrintJob out{wish.file, at.name, 0, asked.pages.value_or(PageRange{1, pdf.count}), pdf.count, true, wish.copies};
  out.to_end = pdf.count == 0 || out.pages.last == pdf.count;
  if (pdf.count > 0) out.page_count = out.pages.last - out.pages.first + 1;
  return out;
}

problem::Expected<JobStatus> watched(const Options& options, const PrintOptions& wish, const Printer& at,
                                     const PrintJob& job) {
  QString last;
  const auto say = [&](const JobStatus& status) {
    const QString now = text(status, job.total());
    if (!options.json && now != last) print(QStringLiteral("job %1: %2\n").arg(job.id).arg(now));
    last = now;
  };
  auto end = printer::follow_job(at.address, job.id, {wish.seconds, say, [] { return !stop_asked(); }});
  if (!end)
    end.error().what = QStringLiteral("it is not known how far job %1 came: %2").arg(job.id).arg(end.error().what);
  return end;
}

ExitStatus report(const Options& options, const PrintJob& job, const JobStatus& end) {
  const bool done = end.state == printer::JobState::Completed;
  Errors errors;
  if (!done) errors.push_back(not_printed(job, end));
  print_problems(errors);
  QJsonObject object = json(job, end);
  object.insert(QStringLiteral("problems"), json(errors));
  const bool told = options.json ? print(object) : print(done ? printed_text(job, end) : QString());
  return reported(told, done ? kDone : kMachineFailed);
}

}  // namespace

ExitStatus print_file(const Options& options, const PrintOptions& wish) {
  const auto pdf = read_file(wish.file);
  if (!pdf) return refuse({pdf.error()}, options.json);
  const auto pages = printer::pages_of(*pdf, wish.file);
  if (!pages) return refuse({pages.error()}, options.json);
  const auto asked = wish_for(options, wish, *pages);
  if (!asked) return refuse(asked.error(), options.json);
  const auto at = printer_named(wish.printer);
  if (!at) return refuse({at.error()}, options.json);
  const auto terms = printer::terms_for(*asked, *at);
  if (!terms) return refuse({terms.error()}, options.json);
  if (const auto error = already_there(wish, *at)) return refuse({*error}, options.json);
  watch_for_stop();
  const auto id = printer::send_job(*at, *terms, *pdf);
  if (!id) return refuse({id.error()}, options.json);
  PrintJob job = job_of(wish, *at, *pages, *asked);
  job.id = *id;
  const auto end = watched(options, wish, *at, job);
  if (!end) return refuse({end.error()}, options.json);
  return report(options, job, *end);
}

}  // namespace lardiner::command
