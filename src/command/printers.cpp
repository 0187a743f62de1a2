// lardiner printers: the printers that can be reached, with what each can do.
#include "printer/printers.h"

#include <algorithm>

#include "command/commands.h"
#include "command/option_error.h"
#include "command/output.h"

namespace lardiner::command {

namespace {

using printer::Medium;
using printer::Printer;
using printer::Size;

constexpr double kHundredths = 100;  // of a millimetre

bool is_loaded(const Medium& medium, const Printer& printer) {
  return std::any_of(printer.loaded.begin(), printer.loaded.end(),
                     [&](const Medium& one) { return one.size == medium.size; });
}

QString media_text(const Printer& one) {
  QStringList out;
  for (const Medium& medium : one.media) {
    const QString in = is_loaded(medium, one) ? QStringLiteral(", loaded") : QString();
    out << (medium.name.isEmpty() ? text(medium.size) + in
                                  : QStringLiteral("%1 (%2%3)").arg(medium.name, text(medium.size), in));
  }
  for (const printer::CustomSizes& sizes : one.custom)
    out << QStringLiteral("any from %1 to %2").arg(text(sizes.least), text(sizes.most));
  return out.isEmpty() ? QStringLiteral("it does not say") : out.join(QStringLiteral("; "));
}

QString resolutions_text(const Printer& one) {
  QStringList out;
  for (const int dots : one.dots_per_inch) out << QString::number(dots);
  return out.isEmpty() ? QString() : QStringLiteral(", %1 dots per inch").arg(out.join(QStringLiteral(" or ")));
}

QString text_of(const Printer& one) {
  if (one.fault)
    return QStringLiteral("%1: does not answer\n").arg(one.name) +
           (one.address.isEmpty() ? QString() : QStringLiteral("  %1\n").arg(one.address));
  QString state = text(one.state);
  if (!one.reasons.isEmpty()) state += QStringLiteral(": ") + one.reasons.join(QStringLiteral(", "));
  if (!one.accepting) state += QStringLiteral("; takes no jobs now");
  return QStringLiteral("%1: %2\n  %3\n  %4%5\n  media: %6\n  documents: %7\n")
      .arg(one.name, state, one.address, one.make, resolutions_text(one), media_text(one),
           one.formats.join(QStringLiteral(", ")));
}

QJsonObject json_of(Size size) {
  return {{QStringLiteral("width_mm"), size.width / kHundredths},
          {QStringLiteral("height_mm"), size.height / kHundredths}};
}

QJsonArray media_json(const Printer& one) {
  QJsonArray out;
  for (const Medium& medium : one.media) {
    QJsonObject size = json_of(medium.size);
    size.insert(QStringLiteral("name"), medium.name);
    size.insert(QStringLiteral("loaded"), is_loaded(medium, one));
    out.append(size);
  }
  return out;
}

QJsonArray custom_json(const Printer& one) {
  QJsonArray out;
  for (const printer::CustomSizes& sizes : one.custom)
    out.append(
        QJsonObject{{QStringLiteral("least"), json_of(sizes.least)}, {QStringLiteral("most"), json_of(sizes.most)}});
  return out;
}

QJsonObject json_of(const Printer& one) {
  QJsonArray dots;
  for (const int own : one.dots_per_inch) dots.append(own);
  return {{QStringLiteral("name"), one.name},
          {QStringLiteral("address"), one.address},
          {QStringLiteral("answers"), !one.fault},
          {QStringLiteral("make"), one.make},
          {QStringLiteral("state"), text(one.state)},
          {QStringLiteral("reasons"), QJsonArray::fromStringList(one.reasons)},
          {QStringLiteral("takes_jobs"), one.accepting && !one.fault},
          {QStringLiteral("media"), media_json(one)},
          {QStringLiteral("custom_sizes"), custom_json(one)},
          {QStringLiteral("dots_per_inch"), dots},
          {QStringLiteral("documents"), QJsonArray::fromStringList(one.formats)}};
}

// One that does not answer stands in the list all the same.
std::vector<Printer> all_printers() {
  std::vector<Printer> out;
  for (const printer::Known& known : printer::known_printers()) {
    auto one = printer::printer_at(known.address);
    if (!one) {
      Printer silent;
      silent.address = known.address;
      silent.fault = one.error();
      one = silent;
    }
    one->name = known.name;
    out.push_back(*std::move(one));
  }
  return out;
}

problem::Expected<std::vector<Printer>> wanted(const QString& address) {
  if (address.isEmpty()) return all_printers();
  auto one = printer::printer_at(address);
  if (!one)
    return tl::unexpected(one.error().code == problem::Code::Malformed
                              ? of_option(QStringLiteral("--at-address"), one.error())
                              : one.error());
  return std::vector<Printer>{*std::move(one)};
}

}  // namespace

ExitStatus printers(const Options& options, const PrintersOptions& wish) {
  const auto found = wanted(wish.address);
  if (!found) return refuse({found.error()}, options.json);
  QString text;
  QJsonArray json;
  for (const Printer& one : *found) {
    text += text_of(one);
    json.append(json_of(one));
  }
  if (found->empty())
    text =
        QStringLiteral("no printers are known here; name one by its address, as --at-address ipp://HOST/ipp/print\n");
  return reported(options.json ? print(QJsonObject{{QStringLiteral("printers"), json}}) : print(text), kDone);
}

}  // namespace lardiner::command
