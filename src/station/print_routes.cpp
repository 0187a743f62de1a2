// Printing: labels asked of a printer, how that stands, what is to be done when it stops, and what labels are in it.
#include <QUrl>
#include <algorithm>

#include "station/container_numbers.h"
#include "station/print_page.h"
#include "station/visit.h"

namespace lardiner::station {

using problem::Errors;

namespace {

constexpr int kRefreshSeconds = 2;

QString clock_of(const Visit& visit, const QDateTime& at) {
  return at.isValid() ? visit.language().date_time(at.toTimeZone(visit.desk().book().kitchen.zone)) : QString();
}

QString mark_of(const PrintShown& print) {
  if (!print.standing) return QStringLiteral("good");
  const PrintState state = print.standing->state;
  if (state == PrintState::Printing) return QStringLiteral("plain");
  return state == PrintState::Waiting || state == PrintState::NoMedium ? QStringLiteral("wait")
                                                                       : QStringLiteral("stop");
}

bool is_over_there(const PrintShown& print) {
  return print.standing && (print.standing->state == PrintState::Ended || print.standing->state == PrintState::Lost);
}

// The last good one is among the first, none, up to all; the printer's own count is offered.
void add_choice(const Visit& visit, const PrintShown& print, Part& ask) {
  if (!print.sent) return;
  Part& sent = ask.add("SENT");
  const auto all = static_cast<int>(print.containers.size());
  const int likely = std::clamp(print.standing->done.value_or(0) / print.copies, 0, all);
  for (int good = 0; good <= all; ++good) {
    Part& label = sent.add("LABEL");
    const QString number =
        good == 0 ? visit.word("page.none_came_out") : QString::number(print.containers[size_t(good) - 1]);
    label.set("VALUE", QString::number(good))
        .set("SHOWN", number)
        .set("SELECTED", good == likely ? QStringLiteral("selected") : QString());
  }
}

Reply shown(const Visit& visit, const PrintShown& print, const Errors& errors) {
  Part part;
  part.set("ID", print.id).set("LOT", print.lot).set("ITEM", print.item).set("NAME", visit.name_of(print.item));
  part.set("PRINTER_NAME", print.printer).set("MEDIUM", print.medium);
  part.set("BY", visit.signed_in() ? print.by : QString());
  part.set("STATE", visit.word(state_key(print))).set("MARK", mark_of(print)).set("COUNT", counted(print));
  if (visit.signed_in())  // it may say why a lot is held, and where a printer is
    for (const QString& why : whys(print, visit.language())) part.add("WHY").set("TEXT", why);
  add_problems(part, errors);
  const bool open = print.standing && visit.signed_in();
  const bool ask = open && (is_over_there(print) || !visit.request().query.value(QStringLiteral("end")).isEmpty());
  if (open && print.standing->state == PrintState::NoMedium) part.add("LOAD");
  if (open && !ask) part.add("MAY_END");
  if (ask) add_choice(visit, print, part.add("ASK"));
  Reply reply = visit.page(QStringLiteral("print"), visit.word("page.print") + u' ' + print.id, std::move(part),
                           errors.empty() ? 200 : 422);
  if (print.standing && !ask && errors.empty()) reply.refresh_seconds = kRefreshSeconds;
  return reply;
}

void add_printer(const Visit& visit, Part& part, const PrinterShown& printer, int number) {
  Part& row = part.add("PRINTER").set("PRINTER_NAME", printer.name).set("NUMBER", QString::number(number));
  if (printer.medium.isEmpty())
    row.add("UNPROVEN");
  else
    row.add("IN_IT")
        .set("MEDIUM", printer.medium)
        .set("SINCE", clock_of(visit, printer.at))
        .set("BY", visit.signed_in() ? printer.by : QString());
  if (!visit.signed_in()) return;
  Part& form = row.add("SIGNED");
  const QString wanted = visit.request().query.value(QStringLiteral("medium"));
  for (const book::Media& medium : visit.desk().book().media)
    form.add("MEDIUM_OFFER")
        .set("MEDIUM_ID", medium.id)
        .set("CHOSEN", medium.id == wanted ? QStringLiteral("selected") : QString());
}

/// Which labels of which printer somebody is to look at.
struct Proof {
  QString printer, medium;
};

Reply all_printers(const Visit& visit, const Errors& errors, const std::optional<Proof>& proof) {
  const auto printers = visit.desk().printers();
  if (!printers) return visit.trouble(500, {printers.error()});
  const auto prints = visit.desk().open_prints();
  if (!prints) return visit.trouble(500, {prints.error()});
  Part part;
  add_problems(part, errors);
  if (printers->empty()) part.add("NO_PRINTER");
  if (proof) part.add("PROVE").set("PRINTER_NAME", proof->printer).set("MEDIUM", proof->medium);
  int number = 0;
  for (const PrinterShown& printer : *printers) add_printer(visit, part, printer, ++number);
  if (!prints->empty()) add_prints(visit, part.add("OPEN"), *prints);
  return visit.page(QStringLiteral("printers"), visit.word("page.printers"), std::move(part),
                    errors.empty() ? 200 : 422);
}

int whole(const QString& text, int otherwise) {
  bool read = false;
  const int number = text.toInt(&read);
  return read ? number : otherwise;
}

}  // namespace

void add_printers(Part& part, const std::vector<PrinterShown>& printers, const Fields& chosen) {
  const QString copies = chosen.value(QStringLiteral("copies"));
  part.set("COPIES", copies.isEmpty() ? QStringLiteral("1") : copies);
  for (const PrinterShown& printer : printers)
    part.add("PRINTER_OFFER")
        .set("PRINTER_NAME", printer.name)
        .set("MEDIUM_IN_IT", printer.medium)
        .set("CHOSEN",
             printer.name == chosen.value(QStringLiteral("printer")) ? QStringLiteral("selected") : QString());
}

void add_prints(const Visit& visit, Part& part, const std::vector<PrintShown>& prints) {
  for (const PrintShown& print : prints)
    part.add("PRINT")
        .set("ID", print.id)
        .set("LOT", print.lot)
        .set("NAME", visit.name_of(print.item))
        .set("STATE", visit.word(state_key(print)));
}

problem::ExpectedAll<ToPrint> labels_wished(const Visit& visit, const QString& lot) {
  const Fields& form = visit.request().form;
  const auto containers = container_numbers(form.values(QStringLiteral("containers")));
  if (!containers) return tl::unexpected(Errors{containers.error()});
  ToPrint wish;
  wish.lot = lot;
  wish.containers = *containers;
  wish.medium = form.value(QStringLiteral("medium"));
  wish.by = visit.who().initials;
  wish.hold = !form.value(QStringLiteral("hold")).isEmpty();
  return wish;
}

problem::ExpectedAll<Reply> print_labels(const Visit& visit, const ToPrint& wish) {
  const Fields& form = visit.request().form;
  const auto print = visit.desk().ask_print(wish, form.value(QStringLiteral("printer")),
                                            whole(form.value(QStringLiteral("copies")), 1));
  if (!print) return tl::unexpected(print.error());
  return redirection(QStringLiteral("/print/") + *print);
}

Reply print_page(const Visit& visit, const QString& id) {
  const auto print = visit.desk().print(id);
  if (!print) return visit.trouble(500, {print.error()});
  return *print ? shown(visit, **print, {}) : visit.message(404, "page.no_such_page");
}

Reply end_print(const Visit& visit, const QString& id) {
  const Fields& form = visit.request().form;
  const bool again = form.value(QStringLiteral("go")) == QLatin1String("again");
  const auto next =
      visit.desk().end_print({id, whole(form.value(QStringLiteral("good")), 0), again, visit.who().initials});
  if (next) return redirection(QStringLiteral("/print/") + (next->isEmpty() ? id : *next));
  const auto print = visit.desk().print(id);
  return print && *print ? shown(visit, **print, next.error()) : visit.trouble(422, next.error());
}

Reply printers_page(const Visit& visit) { return all_printers(visit, {}, std::nullopt); }

// The test label first; it is in the printer once somebody has looked at it.
Reply load_printer(const Visit& visit) {
  const Fields& form = visit.request().form;
  const Proof proof{form.value(QStringLiteral("printer")), form.value(QStringLiteral("medium"))};
  const bool seen = form.value(QStringLiteral("step")) == QLatin1String("loaded");
  const auto done = seen ? visit.desk().medium_loaded(proof.printer, proof.medium, visit.who().initials)
                         : visit.desk().print_test_label(proof.printer, proof.medium);
  if (!done) return all_printers(visit, done.error(), std::nullopt);
  return seen ? redirection(QStringLiteral("/printers")) : all_printers(visit, {}, proof);
}

}  // namespace lardiner::station
