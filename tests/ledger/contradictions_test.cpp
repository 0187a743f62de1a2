// What an entry says that cannot be beside what is recorded is refused as it is appended.
#include <QTemporaryDir>

#include "show.h"
#include "small_history.h"

using namespace lardiner;
using namespace lardiner::ledger;
using history::Event;
using history::Kind;

namespace {

const QString kSalsa = QStringLiteral("A26329SAL01K");

struct Sent {
  QTemporaryDir folder;
  problem::Expected<Ledger> ledger = Ledger::open(folder.filePath(QStringLiteral("ledger.sqlite")), Access::Write);

  Sent() {
    REQUIRE(ledger);
    REQUIRE(append(received("tomatillo", "T-1", kMorning, 5000)).isEmpty());
    REQUIRE(append(made(kSalsa, "salsa", kMorning, 4, {{"tomatillo", "T-1"}})).isEmpty());
    REQUIRE(append(way(Kind::Dispatched, 60, {1, 2})).isEmpty());
  }

  QString append(Event event) {
    const auto entries = ledger->append({std::move(event)}, stamp(kMorning.addSecs(86'400)));
    return entries ? QString() : problem::text(entries.error());
  }

  static Event way(Kind kind, int minutes, std::vector<int> containers = {}) {
    Event event = of_lot(kind, kSalsa, kMorning.addSecs(60 * minutes), std::move(containers));
    event.site = QStringLiteral("mill-road");
    event.note = QStringLiteral("DN-1");
    if (kind == Kind::Returned) event.reason = QStringLiteral("warm");
    return event;
  }
};

}  // namespace

TEST_CASE("nothing arrives or comes back before it left", "[ledger][contradictions]") {
  Sent sent;
  CHECK(sent.append(Sent::way(Kind::Arrived, 59)) ==
        "container 1 of lot A26329SAL01K left at Wed 25 Nov 2026 08:00, and was arrived at Wed 25 Nov 2026 07:59\n"
        "  correct the time of one of the two\n");
  CHECK(sent.append(Sent::way(Kind::Returned, 59)).startsWith("container 1 of lot A26329SAL01K left at "));
  Event note = Sent::way(Kind::Arrived, 59);
  note.lot.clear();
  CHECK(sent.append(note).startsWith("container 1 of lot A26329SAL01K left at "));
  CHECK(sent.append(Sent::way(Kind::Arrived, 60)).isEmpty());
}

TEST_CASE("nothing comes back before it arrived", "[ledger][contradictions]") {
  Sent sent;
  REQUIRE(sent.append(Sent::way(Kind::Arrived, 90, {1})).isEmpty());
  CHECK(sent.append(Sent::way(Kind::Returned, 80, {1})) ==
        "container 1 of lot A26329SAL01K arrived at Wed 25 Nov 2026 08:30, and was returned at Wed 25 Nov 2026 08:20\n"
        "  correct the time of one of the two\n");
  CHECK(sent.append(Sent::way(Kind::Returned, 80, {2})).isEmpty());
  CHECK(sent.append(Sent::way(Kind::Returned, 90, {1})).isEmpty());
}

TEST_CASE("what left for one site does not arrive at another, or by another note", "[ledger][contradictions]") {
  Sent sent;
  Event other = Sent::way(Kind::Arrived, 90, {1});
  other.site = QStringLiteral("hill-road");
  CHECK(sent.append(other) ==
        "container 1 of lot A26329SAL01K left for mill-road\n"
        "  correct the site; what went on from one site to another comes back first\n");
  other = Sent::way(Kind::Arrived, 90, {1});
  other.note = QStringLiteral("DN-2");
  CHECK(sent.append(other) == "container 1 of lot A26329SAL01K left with the note DN-1\n  correct the note\n");
  other.note.clear();
  other.site.clear();
  CHECK(sent.append(other).isEmpty());
}

TEST_CASE("a note goes to one site", "[ledger][contradictions]") {
  Sent sent;
  Event other = Sent::way(Kind::Dispatched, 70, {3});
  other.site = QStringLiteral("hill-road");
  CHECK(sent.append(other) == "note DN-1 is of what left for mill-road\n  give each site a note of its own\n");
  other.site = QStringLiteral("mill-road");
  CHECK(sent.append(other).isEmpty());
}

TEST_CASE("a hold does not end before it began, nor a recall", "[ledger][contradictions]") {
  Sent sent;
  REQUIRE(sent.append(of_lot(Kind::Hold, kSalsa, kMorning.addSecs(3600))).isEmpty());
  Event release = of_lot(Kind::Release, kSalsa, kMorning.addSecs(3540));
  release.of = {QStringLiteral("A"), 4};
  CHECK(sent.append(release) ==
        "entry A-4 began at Wed 25 Nov 2026 08:00, and cannot end at Wed 25 Nov 2026 07:59\n"
        "  correct the time, or the entry that it is of\n");
  release.at = kMorning.addSecs(3600);
  CHECK(sent.append(release).isEmpty());
  REQUIRE(sent.append(of_lot(Kind::RecallOpened, kSalsa, kMorning.addSecs(7200))).isEmpty());
  Event closed = of_lot(Kind::RecallClosed, QString(), kMorning.addSecs(7140));
  closed.of = {QStringLiteral("A"), 6};
  CHECK(sent.append(closed).startsWith("entry A-6 began at "));
  closed.at = kMorning.addSecs(7200);
  CHECK(sent.append(closed).isEmpty());
}

TEST_CASE("a delivery is recorded once; a second one of the lot is another", "[ledger][contradictions]") {
  Sent sent;
  CHECK(sent.append(received("tomatillo", "T-1", kMorning, 5000)) ==
        "this delivery of lot T-1 is recorded already, as entry A-1\n"
        "  leave it out; of two alike at one time write the number of each delivery's note\n");
  Event second = received("tomatillo", "T-1", kMorning, 5000);
  second.note = QStringLiteral("MF-2");
  CHECK(sent.append(second).isEmpty());
  CHECK(sent.append(received("tomatillo", "T-1", kMorning.addSecs(60), 5000)).isEmpty());
}

TEST_CASE("a ledger that has what is refused today is read and computed as it stands", "[ledger][contradictions]") {
  Sent sent;
  REQUIRE(sent.append(Sent::way(Kind::Arrived, 90)).isEmpty());
  CHECK(sent.ledger->rebuild());
}
