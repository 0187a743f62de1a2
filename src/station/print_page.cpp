// How a print stands, in the words of a page.
#include "station/print_page.h"

#include <algorithm>
#include <array>

namespace lardiner::station {

namespace {

// What printers most often say, as src/printer/reasons.cpp has it, and the page's word for it.
constexpr std::array kReasons{std::pair("out of labels", "page.out_of_labels"),
                              std::pair("labels are jammed", "page.jammed"),
                              std::pair("the cover is open", "page.cover_open"),
                              std::pair("out of ribbon or ink", "page.out_of_ribbon"),
                              std::pair("offline", "page.offline"),
                              std::pair("paused", "page.paused")};

QString in_language(const QString& reason, const words::Language& language) {
  const auto found = std::find_if(kReasons.begin(), kReasons.end(),
                                  [&](const auto& one) { return reason == QLatin1String(one.first); });
  return found == kReasons.end() ? reason : language.word(QLatin1String(found->second));
}

}  // namespace

const char* state_key(const PrintShown& print) {
  const auto all = static_cast<int>(print.containers.size());
  if (!print.standing) return print.came_out == all ? "page.print_done" : "page.print_in_part";
  static constexpr const char* kKeys[] = {"page.print_waiting",  "page.print_no_medium", "page.print_silent",
                                          "page.print_printing", "page.print_stopped",   "page.print_ended",
                                          "page.print_lost"};
  return kKeys[static_cast<size_t>(print.standing->state)];
}

bool asks_somebody(const PrintShown& print) {
  return print.standing && print.standing->state != PrintState::Waiting &&
         print.standing->state != PrintState::Printing;
}

QString counted(const PrintShown& print) {
  const auto all = static_cast<int>(print.containers.size()) * (print.standing ? print.copies : 1);
  const std::optional<int> done = print.standing ? print.standing->done : std::optional(print.came_out);
  return done ? QStringLiteral("%1 / %2").arg(*done).arg(all) : QString::number(all);
}

QStringList whys(const PrintShown& print, const words::Language& language) {
  if (!print.standing) return print.reason.isEmpty() ? QStringList() : QStringList{print.reason};
  QStringList all;
  for (const QString& reason : print.standing->reasons) all << in_language(reason, language);
  if (!print.standing->text.isEmpty()) all << print.standing->text;
  return all;
}

}  // namespace lardiner::station
