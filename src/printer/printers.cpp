// The printers that can be reached, and what each can do.
#include "printer/printers.h"

#include <algorithm>
#include <array>
#include <cstdlib>

#include "printer/attributes.h"
#include "printer/ipp.h"
#include "printer/reasons.h"

namespace lardiner::printer {

namespace {

using problem::Code;
using problem::Error;

constexpr int kLookMilliseconds = 3'000;     // for printers in the network
constexpr int kResolveMilliseconds = 5'000;  // for the address of one
constexpr int kMostResolved = 8;             // so that a large network does not take minutes
constexpr size_t kAddressLength = 1024;

// RFC 8011, 5.4.11.
State state_of(std::optional<int> value) {
  if (!value) return State::Unknown;
  if (*value == IPP_PSTATE_IDLE) return State::Idle;
  if (*value == IPP_PSTATE_PROCESSING) return State::Printing;
  return *value == IPP_PSTATE_STOPPED ? State::Stopped : State::Unknown;
}

// A name in inches and the size beside it may be rounded otherwise.
bool is_same(Size a, Size b) { return std::abs(a.width - b.width) <= 1 && std::abs(a.height - b.height) <= 1; }

void add(std::vector<Medium>& media, const Medium& medium) {
  const bool there = std::any_of(media.begin(), media.end(), [&](const Medium& one) {
    return medium.name.isEmpty() ? is_same(one.size, medium.size) : one.name == medium.name;
  });
  if (!there) media.push_back(medium);
}

// Names first: a size alone counts where no name has it.
std::vector<Medium> media_of(const QStringList& names, const std::vector<Size>& sizes) {
  std::vector<Medium> out;
  for (const QString& name : names)
    if (const auto size = size_of_name(name)) add(out, {name, *size});
  for (const Size size : sizes) add(out, {{}, size});
  return out;
}

void read_media(Printer& printer, const Message& answer) {
  const QStringList names = texts_of(answer, "media-supported");
  const Sizes sizes = sizes_of(answer, "media-size-supported");
  printer.media = media_of(names, sizes.fixed);
  printer.loaded = media_of(texts_of(answer, "media-ready"), sizes_of(answer, "media-col-ready").fixed);
  printer.custom = sizes.ranges;
  if (printer.custom.empty()) printer.custom = custom_sizes({names.begin(), names.end()});
  printer.takes_media_size = texts_of(answer, "media-col-supported").contains(QLatin1String("media-size"));
}

Printer read_printer(const Message& answer, const QString& address) {
  Printer out;
  out.name = text_of(answer, "printer-name");
  out.address = address;
  out.make = text_of(answer, "printer-make-and-model");
  out.state = state_of(number_of(answer, "printer-state"));
  out.reasons = in_words(texts_of(answer, "printer-state-reasons"));
  out.accepting = truth_of(answer, "printer-is-accepting-jobs", true);
  read_media(out, answer);
  out.dots_per_inch = resolutions_of(answer, "printer-resolution-supported");
  out.formats = texts_of(answer, "document-format-supported");
  out.most_copies = most_of(answer, "copies-supported").value_or(0);
  out.page_ranges = truth_of(answer, "page-ranges-supported", false);
  out.can_leave_unscaled = texts_of(answer, "print-scaling-supported").contains(QLatin1String("none"));
  out.one_sided = texts_of(answer, "sides-supported").contains(QLatin1String("one-sided"));
  return out;
}

struct FreeDest {
  void operator()(cups_dest_t* dest) const { cupsFreeDests(1, dest); }
};
using Dest = std::unique_ptr<cups_dest_t, FreeDest>;

struct Search {
  std::vector<Dest> found;
  QByteArray wanted;  ///< empty: all
};

int take(void* user, unsigned flags, cups_dest_t* dest) {
  Search& search = *static_cast<Search*>(user);
  if ((flags & CUPS_DEST_FLAGS_REMOVED) != 0 || dest->instance != nullptr) return 1;
  if (!search.wanted.isEmpty() && search.wanted.compare(dest->name, Qt::CaseInsensitive) != 0) return 1;
  cups_dest_t* copies = nullptr;
  if (cupsCopyDest(dest, 0, &copies) == 1) search.found.emplace_back(copies);
  return search.wanted.isEmpty() ? 1 : 0;
}

std::vector<Dest> search(const QString& wanted) {
  Search all{{}, wanted.toUtf8()};
  cupsEnumDests(CUPS_DEST_FLAGS_NONE, kLookMilliseconds, nullptr, 0, 0, take, &all);
  return std::move(all.found);
}

QString option(const Dest& dest, const char* name) {
  return QString::fromUtf8(cupsGetOption(name, dest->num_options, dest->options));
}

bool is_address(const QString& text) {
  return text.startsWith(QLatin1String("ipp://"), Qt::CaseInsensitive) ||
         text.startsWith(QLatin1String("ipps://"), Qt::CaseInsensitive);
}

bool is_of_service(const QString& address) { return address.contains(QLatin1String("._tcp")); }

// One that is known from the network alone says where it is only when it is asked.
QString resolved(const Dest& dest) {
  std::array<char, kAddressLength> resource{};
  http_t* http = cupsConnectDest(dest.get(), CUPS_DEST_FLAGS_DEVICE, kResolveMilliseconds, nullptr, resource.data(),
                                 resource.size(), nullptr, nullptr);
  if (http != nullptr) httpClose(http);                // found, whether or not it answers
  const QString address = option(dest, "device-uri");  // which it puts in the place of the service's name
  return is_address(address) && !is_of_service(address) ? address : QString();
}

QString address_of_known(const Dest& dest) {
  if (const QString own = option(dest, "printer-uri-supported"); is_address(own)) return own;
  const QString device = option(dest, "device-uri");
  if (is_address(device) && !is_of_service(device)) return device;
  return resolved(dest);
}

QStringList names_of(const std::vector<Dest>& known) {
  QStringList out;
  for (const Dest& dest : known) out << QString::fromUtf8(dest->name);
  out.removeDuplicates();
  out.sort(Qt::CaseInsensitive);
  return out;
}

Error unknown(const QString& name) {
  const QStringList there = names_of(search({}));
  return {Code::Machine,
          QStringLiteral("no printer \"%1\" is known here").arg(name),
          {},
          there.isEmpty() ? QStringLiteral("none is known; name one by its address, as ipp://HOST/ipp/print")
                          : QStringLiteral("there are: %1; or name one by its address, as ipp://HOST/ipp/print")
                                .arg(there.join(QStringLiteral(", ")))};
}

}  // namespace

QString text(State state) {
  switch (state) {
    case State::Idle:
      return QStringLiteral("idle");
    case State::Printing:
      return QStringLiteral("printing");
    case State::Stopped:
      return QStringLiteral("stopped");
    case State::Unknown:
      break;
  }
  return QStringLiteral("unknown");
}

problem::Expected<Printer> printer_at(const QString& address) {
  auto line = Line::to(address);
  if (!line) return tl::unexpected(line.error());
  Message request = line->request(IPP_OP_GET_PRINTER_ATTRIBUTES);
  ask_for(request, {"printer-description", "job-template", "media-col-ready", "media-size-supported"});
  const auto answer = line->ask(std::move(request));
  if (!answer) return tl::unexpected(answer.error());
  if (!is_done(*answer)) return tl::unexpected(refusal(*answer, address));
  return read_printer(*answer, address);
}

std::vector<Known> known_printers() {
  std::vector<Known> out;
  int asked = 0;
  const std::vector<Dest> found = search({});
  for (const QString& name : names_of(found)) {
    const auto one = std::find_if(found.begin(), found.end(),
                                  [&](const Dest& dest) { return name == QString::fromUtf8(dest->name); });
    out.push_back({name, ++asked <= kMostResolved ? address_of_known(*one) : QString()});
  }
  return out;
}

problem::Expected<QString> address_named(const QString& name) {
  if (name.contains(QLatin1String("://"))) return name;
  const std::vector<Dest> found = search(name);
  if (found.empty()) return tl::unexpected(unknown(name));
  const QString address = address_of_known(found.front());
  if (!address.isEmpty()) return address;
  return tl::unexpected(Error{Code::Machine,
                              QStringLiteral("the printer \"%1\" does not answer").arg(name),
                              {},
                              QStringLiteral("see that it is switched on and in the network")});
}

}  // namespace lardiner::printer
