// Places where food stands: what they are held to, and each book that is refused for one, with all that is said.
#include "book/storage_place.h"

#include "tables.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

QByteArray table(const QByteArray& kind, const QByteArray& more = {}) {
  return "[[place]]\nname = \"walk-in 1\"\nkind = \"" + kind + "\"\n" + more + "\n";
}

HeldTo limits(const QByteArray& kind, const QByteArray& more = {}) {
  const Book book = book_test::book_with(table(kind, more));
  const StoragePlace* place = book.storage_place(QStringLiteral("walk-in 1"));
  REQUIRE(place != nullptr);
  return held_to(*place, book.rules);
}

QString told(const QByteArray& tables) { return problem::text(book_test::read_with(tables).findings.errors); }

measure::Temperature fahrenheit(int degrees) { return {degrees * 10, measure::Scale::Fahrenheit}; }

}  // namespace

TEST_CASE("a chilled place is held to the cold holding of the rule set, a hot one to its hot holding",
          "[book][place][src:food-code-2022/3-501.16]") {
  CHECK(text(limits("chilled")) == "41 °F (5 °C) or below");
  CHECK(text(limits("hot")) == "135 °F (57 °C) or above");
  CHECK(limits("chilled").met_by(fahrenheit(41)));
  CHECK_FALSE(limits("chilled").met_by(fahrenheit(42)));
  CHECK(limits("hot").met_by(fahrenheit(135)));
  CHECK_FALSE(limits("hot").met_by(fahrenheit(134)));
}

// Food Code 2022 3-501.11, value from memory: frozen food stays frozen, without a figure.
TEST_CASE("nothing is known of a frozen or an ambient place but what the kitchen states", "[book][place][src:memory]") {
  CHECK_FALSE(limits("frozen").known());
  CHECK_FALSE(limits("ambient").known());
  CHECK(text(limits("frozen", "at_most = \"0 °F (-18 °C)\"")) == "0 °F (-18 °C) or below");
  CHECK(text(limits("ambient", "at_least = \"50 °F (10 °C)\"\nat_most = \"70 °F (21 °C)\"")) ==
        "50 °F (10 °C) to 70 °F (21 °C)");
}

TEST_CASE("the kitchen's own limit counts where it is stricter, and a side that it leaves out stays the rule set's",
          "[book][place][src:practice]") {
  CHECK(text(limits("chilled", "at_most = \"38 °F\"")) == "38 °F (3 °C) or below");
  CHECK(text(limits("chilled", "at_least = \"32 °F (0 °C)\"")) == "32 °F (0 °C) to 41 °F (5 °C)");
  CHECK(text(limits("hot", "at_least = \"140 °F\"\nat_most = \"200 °F\"")) == "140 °F (60 °C) to 200 °F (93 °C)");
  const HeldTo both = limits("chilled", "at_least = \"32 °F (0 °C)\"");
  CHECK(both.met_by(fahrenheit(32)));
  CHECK_FALSE(both.met_by(fahrenheit(31)));
}

TEST_CASE("a limit equal to the rule set's is no looser than it", "[book][place][src:food-code-2022/3-501.16]") {
  CHECK(told(table("chilled", "at_most = \"41 °F (5 °C)\"")) == QString());
  CHECK(told(table("chilled", "at_most = \"5 °C\"")) == QString());
  CHECK(told(table("hot", "at_least = \"135 °F (57 °C)\"")) == QString());
}

TEST_CASE("a limit looser than the rule set's is refused with its section",
          "[book][place][src:food-code-2022/3-501.16]") {
  CHECK(
      told(table("chilled", "at_most = \"42 °F\"")) ==
      QStringLiteral(
          R"~(more.toml:4:11: place "walk-in 1": at_most, 42 °F (5 °C), is above the cold holding of 41 °F (5 °C) (FDA Food Code 2022 3-501.16(A)(2))
  at_most = "42 °F"
            ^^^^^^^
  write 41 °F (5 °C) or below, or leave it out
)~"));
  CHECK(
      told(table("hot", "at_least = \"130 °F (54 °C)\"")) ==
      QStringLiteral(
          R"~(more.toml:4:12: place "walk-in 1": at_least, 130 °F (54 °C), is below the hot holding of 135 °F (57 °C) (FDA Food Code 2022 3-501.16(A)(1))
  at_least = "130 °F (54 °C)"
             ^^^^^^^^^^^^^^^^
  write 135 °F (57 °C) or above, or leave it out
)~"));
}

TEST_CASE("the amended rule set is what a place may not be looser than", "[book][place]") {
  const auto read = [](const QByteArray& at_most) {
    std::vector<SourceFile> files = book_test::kitchen();
    book_test::file_of(files, QStringLiteral("kitchen.toml")).bytes +=
        "\n[[amendment]]\nfigure = \"cold-holding\"\nvalue = \"38 °F (3 °C)\"\nauthority = \"kitchen rule\"\n";
    files.push_back({QStringLiteral("more.toml"), table("chilled", "at_most = \"" + at_most + "\"")});
    return problem::text(book_test::read(files).findings.errors);
  };
  CHECK(read("38 °F (3 °C)") == QString());
  CHECK(read("41 °F (5 °C)").contains(QStringLiteral("is above the cold holding of 38 °F (3 °C) (kitchen rule")));
}

// Food Code 2022 3-501.11, value from memory.
TEST_CASE("a frozen place is colder than melting ice", "[book][place][src:memory]") {
  CHECK(told(table("frozen", "at_most = \"31 °F (-1 °C)\"")) == QString());
  CHECK(
      told(table("frozen", "at_most = \"32 °F (0 °C)\"")) ==
      QStringLiteral(
          R"~(more.toml:4:11: place "walk-in 1": at_most, 32 °F (0 °C), is not below 32 °F (0 °C): nothing stays frozen solid there
  at_most = "32 °F (0 °C)"
            ^^^^^^^^^^^^^^
  write at_most as the kitchen's plan has it: "0 °F (-18 °C)"
)~"));
  CHECK(told(table("frozen", "at_least = \"-20 °F\"")) ==
        QStringLiteral(R"~(more.toml:4:12: place "walk-in 1" is frozen and has at_least alone
  at_least = "-20 °F"
             ^^^^^^^^
  write at_most as the kitchen's plan has it: "0 °F (-18 °C)"
)~"));
}

TEST_CASE("limits that leave no temperature are refused", "[book][place]") {
  CHECK(told(table("ambient", "at_least = \"60 °F\"\nat_most = \"70 °F\"")) == QString());
  CHECK(told(table("ambient", "at_least = \"70 °F (21 °C)\"\nat_most = \"60 °F (16 °C)\"")) ==
        QStringLiteral(R"~(more.toml:5:11: place "walk-in 1" is to be at least 70 °F (21 °C) and at most 60 °F (16 °C)
  at_most = "60 °F (16 °C)"
            ^^^^^^^^^^^^^^^
  leave room between the two
)~"));
  CHECK(told(table("chilled", "at_least = \"45 °F (7 °C)\""))
            .startsWith(QStringLiteral(
                "more.toml:4:12: place \"walk-in 1\" is to be at least 45 °F (7 °C) and at most 41 °F (5 °C)\n")));
}

TEST_CASE("a place has a name of its own and a kind", "[book][place]") {
  CHECK(told("[[place]]\nname = \"van\"\n") == QStringLiteral(R"~(more.toml:1:1: place "van" has no kind
  [[place]]
  ^^^^^^^^^
  state kind: "chilled", "frozen", "hot" or "ambient"
)~"));
  CHECK(told("[[place]]\nkind = \"hot\"\n").contains(QStringLiteral("has no name\n")));
  CHECK(told(table("cold")) == QStringLiteral(R"~(more.toml:3:8: place "walk-in 1": kind cannot be "cold"
  kind = "cold"
         ^^^^^^
  write "chilled", "frozen", "hot" or "ambient"
)~"));
  CHECK(told(table("hot") + table("chilled")) ==
        QStringLiteral(R"~(more.toml:5:1: the place "walk-in 1" is there twice, first in more.toml:1
  [[place]]
  ^^^^^^^^^
  give each its own
)~"));
  CHECK(told("[[place]]\nname = \"" + QByteArray(61, 'p') + "\"\nkind = \"hot\"\n")
            .contains(QStringLiteral("is longer than 60 characters\n")));
  CHECK(told("[[place]]\nname = \"" + QByteArray(60, 'p') + "\"\nkind = \"hot\"\n") == QString());
  CHECK(told("[[place]]\nname = \"walk\\u0007in\"\nkind = \"hot\"\n")
            .contains(QStringLiteral("has a control code in it\n")));
}
