// The words of what can happen, and the names of entries.
#include "history/event.h"

#include "random_events.h"

using namespace lardiner::history;

TEST_CASE("every kind of event has a word of its own, which gives the kind back", "[history][event]") {
  CHECK(kind_words().size() == static_cast<qsizetype>(random::kinds().size()));
  QStringList words = kind_words();
  CHECK(words.removeDuplicates() == 0);
  for (const Kind kind : random::kinds()) CHECK(kind_of(word(kind)) == kind);
  CHECK(word(Kind::Used) == QStringLiteral("part-used"));
  CHECK(word(Kind::PlaceTemperature) == QStringLiteral("place-temperature"));
  CHECK(word(Kind::RecallOpened) == QStringLiteral("recall"));
}

TEST_CASE("a kind keeps its number, by which ledgers find its entries", "[history][event]") {
  CHECK(kind_words().join(u' ') ==
        QStringLiteral(
            "received made moved cooled frozen thawed opened hot-held time-control reheated finished split "
            "part-used counted dispatched arrived returned discarded hold release printed reprinted voided "
            "place-temperature reading corrective-action review correction recall recall-closed check print-asked "
            "print-sent print-done medium-loaded"));
  for (qsizetype number = 0; number < kind_words().size(); ++number)
    CHECK(static_cast<qsizetype>(*kind_of(kind_words()[number])) == number);
}

TEST_CASE("another word is no kind of event", "[history][event]") {
  CHECK(kind_of(QStringLiteral("eaten")) == std::nullopt);
  CHECK(kind_of(QStringLiteral("Moved")) == std::nullopt);
  CHECK(kind_of(QString()) == std::nullopt);
}

TEST_CASE("an entry is named by its station and its number", "[history][event]") {
  const EntryId id{QStringLiteral("A"), 123};
  CHECK(id.text() == QStringLiteral("A-123"));
  CHECK(entry_id(QStringLiteral("A-123")) == id);
  CHECK(entry_id(QStringLiteral("A-999999999999999999"))->number == 999999999999999999);
  CHECK_FALSE(EntryId().valid());
  CHECK(EntryId().text().isEmpty());
}

TEST_CASE("what is no station and number names no entry", "[history][event]") {
  for (const char* const text :
       {"", "A", "A-", "-1", "A-0", "A-012", "a-1", "A-1 ", "A-1x", "A--1", "A-+1", "A 1", "A-1000000000000000000"})
    CHECK(entry_id(QString::fromLatin1(text)) == std::nullopt);
}
