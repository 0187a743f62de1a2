// What a job asks of a printer, held against what the printer can do: pure.
#include "printer/job_request.h"

#include <QStringList>
#include <algorithm>

namespace lardiner::printer {

namespace {

using problem::Code;
using problem::Error;

constexpr size_t kMostListed = 8;  // media in an error

Error refused(const QString& what, const QString& hint) { return {Code::Machine, what, {}, hint}; }

bool is_loaded(const Medium& medium, const Printer& printer) {
  return std::any_of(printer.loaded.begin(), printer.loaded.end(),
                     [&](const Medium& one) { return one.size == medium.size; });
}

QString text_of(const Medium& medium, const Printer& printer) {
  const QString in = is_loaded(medium, printer) ? QStringLiteral(", loaded") : QString();
  if (medium.name.isEmpty()) return text(medium.size) + in;
  return QStringLiteral("%1 (%2%3)").arg(medium.name, text(medium.size), in);
}

// What is loaded comes first.
QString media_text(const Printer& printer) {
  std::vector<Medium> media = printer.media;
  std::stable_partition(media.begin(), media.end(), [&](const Medium& one) { return is_loaded(one, printer); });
  QStringList out;
  for (const Medium& medium : media)
    if (static_cast<size_t>(out.size()) < kMostListed) out << text_of(medium, printer);
  if (media.size() > kMostListed) out << QStringLiteral("%1 more").arg(media.size() - kMostListed);
  for (const CustomSizes& sizes : printer.custom)
    out << QStringLiteral("any from %1 to %2").arg(text(sizes.least), text(sizes.most));
  return out.join(QStringLiteral("; "));
}

bool takes_pdf(const Printer& printer) {
  return printer.formats.isEmpty() || printer.formats.contains(QLatin1String("application/pdf"));
}

Error takes_no_pdf(const Printer& printer) {
  return refused(QStringLiteral("the printer \"%1\" does not take PDF; it takes %2")
                     .arg(printer.name, printer.formats.join(QStringLiteral(", "))),
                 QStringLiteral("set it up in this machine's own printing (CUPS), which turns PDF into what it takes, "
                                "and print by its name there"));
}

// A printer that names no media is asked for the size itself, and refuses what it does not have.
std::optional<Match> medium_for(Size page, const Printer& printer) {
  if (printer.media.empty() && printer.loaded.empty() && printer.custom.empty())
    return Match{{custom_name(page), page}, false, true};
  std::vector<Medium> media = printer.loaded;
  media.insert(media.end(), printer.media.begin(), printer.media.end());
  return match(page, media, printer.custom);
}

Error no_medium(Size page, const Printer& printer) {
  return refused(QStringLiteral("the printer \"%1\" has no medium of %2; it has %3")
                     .arg(printer.name, text(page), media_text(printer)),
                 QStringLiteral("set the medium at the printer, or make the labels for one that it has"));
}

// The printer's own, or one of which each dot of the document is a whole number of dots.
std::optional<int> resolution_for(int dots_per_inch, const Printer& printer) {
  std::optional<int> least;
  for (const int own : printer.dots_per_inch)
    if (own % dots_per_inch == 0 && (!least || own < *least)) least = own;
  return least;
}

bool is_much_finer(int dots_per_inch, const Printer& printer) {
  return std::any_of(printer.dots_per_inch.begin(), printer.dots_per_inch.end(),
                     [&](int own) { return own >= 2 * dots_per_inch; });
}

Error other_resolution(int dots_per_inch, const Printer& printer) {
  QStringList own;
  for (const int dots : printer.dots_per_inch) own << QString::number(dots);
  return refused(QStringLiteral("the printer \"%1\" prints %2 dots per inch, and the medium is for %3")
                     .arg(printer.name, own.join(QStringLiteral(", ")))
                     .arg(dots_per_inch),
                 QStringLiteral("write the printer's into dots_per_inch of the medium and make the labels again"));
}

std::optional<Error> fault_of(const JobWish& wish, const Printer& printer) {
  if (!takes_pdf(printer)) return takes_no_pdf(printer);
  if (!printer.accepting)
    return refused(QStringLiteral("the printer \"%1\" takes no jobs now").arg(printer.name),
                   QStringLiteral("let it take jobs again, at the printer or where it was set up"));
  if (printer.most_copies > 0 && wish.copies > printer.most_copies)
    return refused(
        QStringLiteral("the printer \"%1\" makes at the most %2 copies").arg(printer.name).arg(printer.most_copies),
        QStringLiteral("print several times"));
  if (wish.pages && !printer.page_ranges)
    return refused(QStringLiteral("the printer \"%1\" cannot print a part of the pages").arg(printer.name),
                   QStringLiteral("make a PDF of the labels that are wanted"));
  return std::nullopt;
}

}  // namespace

problem::Expected<JobTerms> terms_for(const JobWish& wish, const Printer& printer) {
  if (const auto fault = fault_of(wish, printer)) return tl::unexpected(*fault);
  const auto medium = medium_for(wish.page, printer);
  if (!medium) return tl::unexpected(no_medium(wish.page, printer));
  std::optional<int> dots;
  if (wish.dots_per_inch && !printer.dots_per_inch.empty()) {
    dots = resolution_for(*wish.dots_per_inch, printer);
    if (!dots && !is_much_finer(*wish.dots_per_inch, printer))
      return tl::unexpected(other_resolution(*wish.dots_per_inch, printer));
  }
  const bool nameless = medium->custom || medium->medium.name.isEmpty();
  return JobTerms{wish.name,
                  *medium,
                  dots,
                  wish.copies,
                  wish.pages,
                  nameless && (printer.takes_media_size || medium->medium.name.isEmpty()),
                  printer.can_leave_unscaled,
                  printer.one_sided};
}

}  // namespace lardiner::printer
