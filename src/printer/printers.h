// The printers that can be reached, and what each can do.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "printer/media_match.h"
#include "problem/error.h"

namespace lardiner::printer {

enum class State { Unknown, Idle, Printing, Stopped };

/// "idle", "printing", "stopped", "unknown".
QString text(State state);

struct Printer {
  QString name, address, make;
  State state = State::Unknown;
  QStringList reasons;  ///< in plain words
  bool accepting = true;
  std::vector<Medium> media;   ///< that it names
  std::vector<Medium> loaded;  ///< of which these are in it; empty where it does not say
  std::vector<CustomSizes> custom;
  std::vector<int> dots_per_inch;  ///< empty: it does not say
  QStringList formats;
  int most_copies = 0;  ///< 0: it does not say
  bool page_ranges = false;
  bool takes_media_size = false;  ///< media-col with media-size (PWG 5100.3)
  bool can_leave_unscaled = false, one_sided = false;
  std::optional<problem::Error> fault;  ///< it is known by name alone: it does not answer
};

/// Asks the printer at an ipp:// or ipps:// address. Errors: Malformed for what is no address, else Machine.
/// Source: RFC 8011, 4.2.5 and 5.4; PWG 5100.7 for what it holds of media.
problem::Expected<Printer> printer_at(const QString& address);

/// A printer that this machine knows: its own (CUPS), or one that makes itself known in the network (DNS-SD).
struct Known {
  QString name;
  QString address;  ///< empty: it has none for IPP, or none was found in time
};

/// All of them, by name; of several with one name the first. Takes some seconds: 3 to look, and at the most 5
/// for the address of each of the first 8 that are known from the network alone.
std::vector<Known> known_printers();

/// The address of a known one, or `name` itself where it is an address. Errors: Machine, with the names that there are.
problem::Expected<QString> address_named(const QString& name);

}  // namespace lardiner::printer
