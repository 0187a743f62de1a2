// The words of what can happen, and the names of entries.
#include "history/event.h"

#include <QHash>
#include <QTimeZone>
#include <algorithm>

namespace lardiner::history {

namespace {

struct Named {
  Kind kind;
  QLatin1String word;
};

// In the order of `Kind`.
constexpr Named kKinds[] = {{Kind::Received, QLatin1String("received")},
                            {Kind::Made, QLatin1String("made")},
                            {Kind::Moved, QLatin1String("moved")},
                            {Kind::Cooled, QLatin1String("cooled")},
                            {Kind::Frozen, QLatin1String("frozen")},
                            {Kind::Thawed, QLatin1String("thawed")},
                            {Kind::Opened, QLatin1String("opened")},
                            {Kind::HotHeld, QLatin1String("hot-held")},
                            {Kind::TimeControl, QLatin1String("time-control")},
                            {Kind::Reheated, QLatin1String("reheated")},
                            {Kind::Finished, QLatin1String("finished")},
                            {Kind::Split, QLatin1String("split")},
                            {Kind::Used, QLatin1String("part-used")},
                            {Kind::Counted, QLatin1String("counted")},
                            {Kind::Dispatched, QLatin1String("dispatched")},
                            {Kind::Arrived, QLatin1String("arrived")},
                            {Kind::Returned, QLatin1String("returned")},
                            {Kind::Discarded, QLatin1String("discarded")},
                            {Kind::Hold, QLatin1String("hold")},
                            {Kind::Release, QLatin1String("release")},
                            {Kind::Printed, QLatin1String("printed")},
                            {Kind::Reprinted, QLatin1String("reprinted")},
                            {Kind::Voided, QLatin1String("voided")},
                            {Kind::PlaceTemperature, QLatin1String("place-temperature")},
                            {Kind::Reading, QLatin1String("reading")},
                            {Kind::CorrectiveAction, QLatin1String("corrective-action")},
                            {Kind::Review, QLatin1String("review")},
                            {Kind::Correction, QLatin1String("correction")},
                            {Kind::RecallOpened, QLatin1String("recall")},
                            {Kind::RecallClosed, QLatin1String("recall-closed")},
                            {Kind::Check, QLatin1String("check")},
                            {Kind::PrintAsked, QLatin1String("print-asked")},
                            {Kind::PrintSent, QLatin1String("print-sent")},
                            {Kind::PrintDone, QLatin1String("print-done")},
                            {Kind::MediumLoaded, QLatin1String("medium-loaded")}};

bool is_station_letter(QChar letter) {
  return (letter >= u'A' && letter <= u'Z') || (letter >= u'0' && letter <= u'9');
}

bool is_figure(QChar letter) { return letter >= u'0' && letter <= u'9'; }

}  // namespace

QString word(Kind kind) { return kKinds[static_cast<size_t>(kind)].word; }

std::optional<Kind> kind_of(const QString& word) {
  static const QHash<QString, Kind> all = [] {
    QHash<QString, Kind> kinds;
    for (const Named& named : kKinds) kinds.insert(named.word, named.kind);
    return kinds;
  }();
  const auto found = all.constFind(word);
  return found == all.constEnd() ? std::nullopt : std::optional(*found);
}

QStringList kind_words() {
  QStringList words;
  for (const Named& named : kKinds) words += named.word;
  return words;
}

QDate local_day(const Entry& entry) { return entry.event.at.toTimeZone(QTimeZone(entry.zone.toLatin1())).date(); }

QString EntryId::text() const { return valid() ? station + u'-' + QString::number(number) : QString(); }

std::optional<EntryId> entry_id(const QString& text) {
  constexpr qsizetype kMostFigures = 18;  // fewer than 64 bits hold
  const qsizetype hyphen = text.indexOf(u'-');
  if (hyphen < 1) return std::nullopt;
  const QStringView station = QStringView(text).left(hyphen);
  const QStringView figures = QStringView(text).mid(hyphen + 1);
  if (figures.isEmpty() || figures.size() > kMostFigures || figures.front() == u'0') return std::nullopt;
  if (!std::all_of(station.begin(), station.end(), is_station_letter)) return std::nullopt;
  if (!std::all_of(figures.begin(), figures.end(), is_figure)) return std::nullopt;
  return EntryId{station.toString(), figures.toLongLong()};
}

}  // namespace lardiner::history
