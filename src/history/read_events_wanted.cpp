// Which keys a row of each kind of event may have, and which it must: the table of EVENTS.md.
#include "history/read_events_wanted.h"

namespace lardiner::history {

namespace {

using enum Key;
using Row = std::vector<Wanted>;

constexpr bool kMust = true;

Row of_lot(std::initializer_list<Wanted> more) {
  Row row{{Lot, kMust}, {Item}, {Containers}};
  row.insert(row.end(), more);
  return row;
}

// A lot that happens to be in a place, or all that is.
Row of_lot_or_place(std::initializer_list<Wanted> more) {
  Row row{{Lot}, {Item}, {Place}};
  row.insert(row.end(), more);
  return row;
}

Row make(Kind kind) {
  switch (kind) {
    case Kind::Received:
      return {{Lot, kMust},    {Item, kMust}, {SupplierItem}, {Quantity, kMust}, {Count},
              {ContainerKind}, {State},       {Ends},         {Temperature},     {Place},
              {From},          {Note},        {Order},        {Accepted},        {Reason}};
    case Kind::Moved:
      return of_lot({{Place, kMust}});
    case Kind::Cooled:
      return {{Lot, kMust}, {Item}, {Temperature, kMust}};
    case Kind::Frozen:
    case Kind::Thawed:
    case Kind::Opened:
      return of_lot({{Place}});
    case Kind::HotHeld:
    case Kind::Finished:
      return of_lot({{Temperature}, {Place}});
    case Kind::TimeControl:
      return of_lot({{Temperature, kMust}, {Place}});
    case Kind::Reheated:
      return of_lot({{Temperature, kMust}, {Held}, {Place}});
    case Kind::Split:
      return {{Lot, kMust}, {Item}, {Containers, kMust}, {Count, kMust}, {ContainerKind, kMust}, {Quantity}, {Place}};
    case Kind::Used:
      return of_lot({{Quantity, kMust}, {Reason}});
    case Kind::Counted:
      return of_lot({{Left, kMust}, {Place}});
    case Kind::Dispatched:
      return of_lot({{Site, kMust}, {Order}, {Note}, {Temperature}});
    case Kind::Arrived:
      return {{Lot}, {Item}, {Containers}, {Note}, {Site}, {Temperature}, {Accepted, kMust}, {Reason}};
    case Kind::Returned:
      return of_lot({{Site, kMust}, {Note}, {Reason, kMust}, {Temperature}, {Place}});
    case Kind::Discarded:
      return of_lot({{Reason, kMust}});
    case Kind::Hold:
      return of_lot_or_place({{Reason, kMust}});
    case Kind::Release:
      return {{Of, kMust}, {Reason, kMust}, {Lot}, {Item}};
    case Kind::Voided:
      return of_lot({{Reason, kMust}});
    case Kind::PlaceTemperature:
      return {{Place, kMust}, {Temperature, kMust}, {Note}};
    case Kind::Reading:
      return of_lot({{What, kMust}, {Temperature, kMust}, {Place}});
    case Kind::CorrectiveAction:
      return of_lot_or_place({{Action, kMust}, {Reason}});
    case Kind::Review:
      return {{Day, kMust}, {Note}};
    case Kind::Correction:
      return {{Lot}, {Item}, {Of}, {Ends}, {SupplierItem}, {Adds}, {Reason, kMust}};
    case Kind::RecallOpened:
      return {{Lot, kMust}, {Item}, {SupplierItem}, {Reason, kMust}};
    case Kind::RecallClosed:
      return {{Of, kMust}, {Reason, kMust}};
    case Kind::Check:
      return {{Checked, kMust}, {InOrder, kMust}, {Place}, {Note}};
    case Kind::Made:
    case Kind::Printed:
    case Kind::Reprinted:
    case Kind::PrintAsked:
    case Kind::PrintSent:
    case Kind::PrintDone:
    case Kind::MediumLoaded:
      return {};
  }
  return {};
}

std::vector<Row> make_all() {
  std::vector<Row> rows;
  for (const QString& text : kind_words()) rows.push_back(make(*kind_of(text)));
  return rows;
}

}  // namespace

const std::vector<Wanted>& wanted(Kind kind) {
  static const std::vector<Row> rows = make_all();
  return rows[static_cast<size_t>(kind)];
}

QStringList written_words() {
  QStringList words;
  for (const QString& text : kind_words())
    if (!wanted(*kind_of(text)).empty()) words += text;
  return words;
}

QString hint_of_unwritten(Kind kind) {
  if (kind == Kind::Made) return QStringLiteral("what was made is a record of its own: leave event out (RECORDS.md)");
  return wanted(kind).empty() ? QStringLiteral("the program writes that itself, when it prints labels") : QString();
}

}  // namespace lardiner::history
