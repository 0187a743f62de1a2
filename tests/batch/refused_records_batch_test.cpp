// Records that are refused when they are computed: each with its whole text and place.
#include "refused_records.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

QString first(const char* lines) { return refused(lines, 0); }
QString second(const char* lines) { return refused(lines, 1); }

}  // namespace

TEST_CASE("refused: no number: no ledger to take one from", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}]}
)~") ==
        told(R"~(
day.jsonl:1:13: the record has no number, and there is no ledger to take the next number from
  {"product": "dip", "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}]}
              ^^^^^
  write number, the running number of the batch
)~"));
}

TEST_CASE("refused: a given lot with a wrong check character", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "lot": "A26329DIP01X"}
)~") ==
        told(R"~(
day.jsonl:1:180: the check character of lot "A26329DIP01X" does not hold
  …tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "lot": "A26329DIP01X"}
                                                                                  ^^^^^^^^^^^^^^
  copy it once more from the label; the lot of this batch is A26329DIP01W
)~"));
}

TEST_CASE("refused: a given lot of another day", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "lot": "A26329DIP02U"}
)~") ==
        told(R"~(
day.jsonl:1:180: lot "A26329DIP02U" is that of a different batch
  …tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "lot": "A26329DIP02U"}
                                                                                  ^^^^^^^^^^^^^^
  the lot of this batch is A26329DIP01W; correct the lot, or the record's day, product or number
)~"));
}

TEST_CASE("refused: a TCS input without a date", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise"}]}
)~") ==
        told(R"~(
day.jsonl:1:133: "mayonnaise" needs time and temperature control, and its date is not written
  {"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise"}]}
                                                                                                                                      ^^^^^^^^^^^^
  write use_by, as it stands on its package or label
)~"));
}

TEST_CASE("refused: a TCS line of the formula that is not among the inputs", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": []}
)~") ==
        told(R"~(
day.jsonl:1:13: "mayonnaise" is in the formula of "dip", but not among the inputs, so its date is not known
  {"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": []}
              ^^^^^
  write it as an input with its lot or use_by, or what went in instead of it
)~"));
}

TEST_CASE("refused: one of our lots that is not in the run, without a date", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "chili", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "burger", "lot": "A26324BUR012"}]}
)~") ==
        told(R"~(
day.jsonl:1:135: "burger", lot A26324BUR012, needs time and temperature control, and its date is not written
  …5 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "burger", "lot": "A26324BUR012"}]}
                                                                                  ^^^^^^^^
  write use_by, as it stands on its label, or have the record of its lot in the same run
)~"));
}

TEST_CASE("refused: an opened can that is not among the inputs", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "tuna-salad", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}]}
)~") ==
        told(R"~(
day.jsonl:1:13: "tuna" is in the formula of "tuna-salad", but not among the inputs, so its date is not known
  {"product": "tuna-salad", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_b…
              ^^^^^^^^^^^^
  write it as an input with its lot or use_by, or what went in instead of it
)~"));
}

TEST_CASE("refused: an input used after its date", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-11-24", "lot": "M-1"}]}
)~") ==
        told(R"~(
day.jsonl:1:133: "mayonnaise", lot M-1, was used at Wed 25 Nov 2026 08:10, after its end, Tue 24 Nov 2026 (maker's use-by)
  …5 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-11-24", "lot": "M-1"}]}
                                                                                  ^^^^^^^^^^^^
  discard the batch, or correct the date if it was written wrongly
)~"));
}

TEST_CASE("refused: an input opened too long ago", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20", "opened": "2026-11-18"}]}
)~") ==
        told(R"~(
day.jsonl:1:133: "mayonnaise" was used at Wed 25 Nov 2026 08:10, after its end, Tue 24 Nov 2026 (opened package, 7 days, day 1 is Wed 18 Nov 2026, FDA Food Code 2022 3-501.17(B))
  …5 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20", "opened": "2026-11-18"}]}
                                                                                  ^^^^^^^^^^^^
  discard the batch, or correct the date if it was written wrongly
)~"));
}

TEST_CASE("refused: a dry input past its best before in a dry product", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "spice-mix", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mustard", "best_before": "2026-11-01"}]}
)~") ==
        told(R"~(
day.jsonl:1:139: "mustard" was used at Wed 25 Nov 2026 08:10, after its end, Sun 1 Nov 2026 (maker's best before)
  …5 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mustard", "best_before": "2026-11-01"}]}
                                                                                  ^^^^^^^^^
  discard the batch, or correct the date if it was written wrongly
)~"));
}

TEST_CASE("refused: no cook reading", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "burger", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "ground-beef", "use_by": "2026-11-26"}]}
)~") ==
        told(R"~(
day.jsonl:1:13: "burger" is cooked here, but no cook reading is written
  {"product": "burger", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "ground-beef", "use_by":…
              ^^^^^^^^
  write one that meets 155 °F (68 °C) 17 s (ground-meat, FDA Food Code 2022 3-401.11(A)(2)); without it the food counts as raw
)~"));
}

TEST_CASE("refused: a cook reading below the minimum", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "burger", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "ground-beef", "use_by": "2026-11-26"}], "cooked": [{"at": "2026-11-25 09:00", "core": "154 °F", "held": "17 s"}]}
)~") ==
        told(R"~(
day.jsonl:1:223: the cook reading 154 °F for 17 s does not meet 155 °F (68 °C) 17 s (ground-meat, FDA Food Code 2022 3-401.11(A)(2))
  …beef", "use_by": "2026-11-26"}], "cooked": [{"at": "2026-11-25 09:00", "core": "154 °F", "held": "17 s"}]}
                                                                                  ^^^^^^^^
  cook it on and write the reading that meets it, or hold the batch
)~"));
}

TEST_CASE("refused: a cook reading below the product's own temperature", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "stew", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "chicken-thigh", "use_by": "2026-11-26"}], "cooked": [{"at": "2026-11-25 09:00", "core": "170 °F", "held": "20 s"}]}
)~") ==
        told(R"~(
day.jsonl:1:223: the cook reading 170 °F for 20 s does not meet 175 °F (79 °C) instant (cook_to of the book)
  …high", "use_by": "2026-11-26"}], "cooked": [{"at": "2026-11-25 09:00", "core": "170 °F", "held": "20 s"}]}
                                                                                  ^^^^^^^^
  cook it on and write the reading that meets it, or hold the batch
)~"));
}

TEST_CASE("refused: raw food cooked after its date", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "burger", "number": 1, "made_at": "2026-11-25 22:00", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "ground-beef", "use_by": "2026-11-25"}], "cooked": [{"at": "2026-11-26 00:30", "core": "165 °F", "held": "20 s"}]}
)~") ==
        told(R"~(
day.jsonl:1:136: "ground-beef" was cooked at Thu 26 Nov 2026 00:30, after its end, Wed 25 Nov 2026
  …5 22:00", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "ground-beef", "use_by": "2026-11-25"}], "cooked": [{"at": "2026-11-26 00:30", …
                                                                                  ^^^^^^^^^^^^^
  discard the batch, or correct the date if it was written wrongly
)~"));
}

TEST_CASE("refused: cooling that was missed", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "stock", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "chicken-thigh", "use_by": "2026-11-26"}], "cooked": [{"at": "2026-11-25 09:00", "core": "165 °F", "held": "20 s"}], "cooled": [{"at": "2026-11-25 09:30", "core": "140 °F"}, {"at": "2026-11-25 12:05", "core": "70 °F"}]}
)~") ==
        told(R"~(
day.jsonl:1:13: not released, cooling missed: 70 °F (21 °C) was not reached within 2 h, by Wed 25 Nov 2026 11:30: at 12:05 it read 70 °F
  {"product": "stock", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "chicken-thigh", "use_by"…
              ^^^^^^^
  reheat and cool it once, or discard it, and write corrective_action and corrective_by
)~"));
}

TEST_CASE("refused: an allergen that nobody agreed to", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}, {"item": "sesame"}]}
)~") ==
        told(R"~(
day.jsonl:1:181: "sesame" adds sesame to "dip", and nobody agreed to it
  …ub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}, {"item": "sesame"}]}
                                                                                  ^^^^^^^^
  have somebody who may say so agree, and write agreed_by
)~"));
}

TEST_CASE("refused: an ingredient whose allergens are not declared", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "puzzle", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "butter", "use_by": "2026-12-20"}]}
)~") ==
        told(R"~(
ingredients.toml:319:1: supplier item "mystery-spice-a" of ingredient "mystery-spice" does not declare its allergens
  [[ingredient.supplier_item]]
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  add contains = ["milk"] or contains = "none", with checked and source
)~"));
}

TEST_CASE("refused: a lot of the run under another item", "[batch][refused_records]") {
  CHECK(second(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}]}
{"product": "fish-pie", "number": 2, "made_at": "2026-11-25 09:00", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "cod", "use_by": "2026-11-26"}, {"item": "dip", "use_by": "2026-11-26"}, {"item": "butter", "lot": "A26329DIP01W"}]}
)~") ==
        told(R"~(
day.jsonl:2:220: lot A26329DIP01W is of "dip", not of "butter"
  …d", "use_by": "2026-11-26"}, {"item": "dip", "use_by": "2026-11-26"}, {"item": "butter", "lot": "A26329DIP01W"}]}
                                                                                  ^^^^^^^^
  correct the item or the lot
)~"));
}

TEST_CASE("refused: a lot of the run used before it was made", "[batch][refused_records]") {
  CHECK(second(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}]}
{"product": "fish-pie", "number": 2, "made_at": "2026-11-25 07:00", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "cod", "use_by": "2026-11-26"}, {"item": "dip", "lot": "A26329DIP01W"}]}
)~") ==
        told(R"~(
day.jsonl:2:179: "dip", lot A26329DIP01W, was made at Wed 25 Nov 2026 08:10, after it was used at Wed 25 Nov 2026 07:00
  …": "4 tub 500 g", "inputs": [{"item": "cod", "use_by": "2026-11-26"}, {"item": "dip", "lot": "A26329DIP01W"}]}
                                                                                  ^^^^^
  correct the lot, or the time of one of the two
)~"));
}

TEST_CASE("refused: a lot of the run that is refused itself", "[batch][refused_records]") {
  CHECK(second(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": []}
{"product": "fish-pie", "number": 2, "made_at": "2026-11-25 09:00", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "cod", "use_by": "2026-11-26"}, {"item": "dip", "lot": "A26329DIP01W"}]}
)~") ==
        told(R"~(
day.jsonl:2:179: "dip", lot A26329DIP01W, which went into this batch, is refused itself
  …": "4 tub 500 g", "inputs": [{"item": "cod", "use_by": "2026-11-26"}, {"item": "dip", "lot": "A26329DIP01W"}]}
                                                                                  ^^^^^
  put right what is wrong with that lot, or hold this batch too
)~"));
}

TEST_CASE("refused: a lot of the run that was discarded", "[batch][refused_records]") {
  CHECK(second(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "events": [{"what": "discarded", "at": "2026-11-25 08:30"}]}
{"product": "fish-pie", "number": 2, "made_at": "2026-11-25 09:00", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "cod", "use_by": "2026-11-26"}, {"item": "dip", "lot": "A26329DIP01W"}]}
)~") ==
        told(R"~(
day.jsonl:2:179: lot A26329DIP01W was discarded before it was used
  …": "4 tub 500 g", "inputs": [{"item": "cod", "use_by": "2026-11-26"}, {"item": "dip", "lot": "A26329DIP01W"}]}
                                                                                  ^^^^^
  correct the lot, or the time of one of the two
)~"));
}

TEST_CASE("refused: a lot of the run frozen on the input's line", "[batch][refused_records]") {
  CHECK(second(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}]}
{"product": "fish-pie", "number": 2, "made_at": "2026-11-25 09:00", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "cod", "use_by": "2026-11-26"}, {"item": "dip", "lot": "A26329DIP01W", "frozen": "2026-11-25"}]}
)~") ==
        told(R"~(
day.jsonl:2:179: "dip", lot A26329DIP01W, is a lot of this run, and its freezing and thawing stand in its own record
  …": "4 tub 500 g", "inputs": [{"item": "cod", "use_by": "2026-11-26"}, {"item": "dip", "lot": "A26329DIP01W", "frozen": "2026-11-25"}]}
                                                                                  ^^^^^
  write them as events of that record
)~"));
}

TEST_CASE("refused: a package past its date", "[batch][refused_records]") {
  CHECK(first(R"~({"ingredient": "cream", "what": "opened", "number": 1, "made_at": "2026-11-25 08:10", "use_by": "2026-11-24"}
)~") ==
        told(R"~(
day.jsonl:1:16: "cream" is past its date, Tue 24 Nov 2026
  {"ingredient": "cream", "what": "opened", "number": 1, "made_at": "2026-11-25 08:10", "use_by": "2026-11-24"}
                 ^^^^^^^
  discard it, or correct the date if it was written wrongly
)~"));
}

TEST_CASE("refused: a TCS package without a date", "[batch][refused_records]") {
  CHECK(first(R"~({"ingredient": "cream", "what": "opened", "number": 1, "made_at": "2026-11-25 08:10"}
)~") ==
        told(R"~(
day.jsonl:1:16: "cream" needs time and temperature control, and the date on its package is not written
  {"ingredient": "cream", "what": "opened", "number": 1, "made_at": "2026-11-25 08:10"}
                 ^^^^^^^
  write use_by, as it stands on its package or label
)~"));
}

TEST_CASE("refused: a package without a lot code in the book", "[batch][refused_records]") {
  CHECK(first(R"~({"ingredient": "salt", "what": "opened", "number": 1, "made_at": "2026-11-25 08:10", "best_before": "2027-01-01"}
)~") ==
        told(R"~(
ingredients.toml:185:1: ingredient "salt" has no code for its lots
  [[ingredient]]
  ^^^^^^^^^^^^^^
  add code to the book
ingredients.toml:185:1: ingredient "salt" has no item_number, which the code of its label needs
  [[ingredient]]
  ^^^^^^^^^^^^^^
  add item_number to the book
)~"));
}

TEST_CASE("refused: a package that nothing dates", "[batch][refused_records]") {
  CHECK(first(R"~({"ingredient": "sesame", "what": "opened", "number": 1, "made_at": "2026-11-25 08:10"}
)~") ==
        told(R"~(
day.jsonl:1:16: no shelf life and no input gives "sesame" a date
  {"ingredient": "sesame", "what": "opened", "number": 1, "made_at": "2026-11-25 08:10"}
                 ^^^^^^^^
  state its shelf life in the kitchen book
)~"));
}

TEST_CASE("refused: frozen with no day left", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "events": [{"what": "frozen", "at": "2026-12-02 08:00"}]}
)~") ==
        told(R"~(
day.jsonl:1:193: frozen at Wed 2 Dec 2026 08:00 with no day left: chilled, 7 days, day 1 is Wed 25 Nov 2026
  …inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "events": [{"what": "frozen", "at": "2026-12-02 08:00"}]}
                                                                                  ^^^^^^^^
  use it before its use-by or discard it; the day of freezing counts in this kitchen
)~"));
}

TEST_CASE("refused: time control from a lukewarm dip", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "events": [{"what": "time-control", "at": "2026-11-25 12:00", "temperature": "60 °F"}]}
)~") ==
        told(R"~(
day.jsonl:1:193: time control started from 60 °F
  …inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "events": [{"what": "time-control", "at": "2026-11-25 12:00", "temperature": "60 °F"}]}
                                                                                  ^^^^^^^^^^^^^^
  it starts only from food at 41 °F (5 °C) or below, or at 135 °F (57 °C) or above; discard this food
)~"));
}

TEST_CASE("refused: opened before it was made", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "events": [{"what": "opened", "at": "2026-11-25 07:00"}]}
)~") ==
        told(R"~(
day.jsonl:1:193: opened at Wed 25 Nov 2026 07:00, before it was made at Wed 25 Nov 2026 08:10
  …inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "events": [{"what": "opened", "at": "2026-11-25 07:00"}]}
                                                                                  ^^^^^^^^
  correct the time of one of the two
)~"));
}

TEST_CASE("refused: too much of a restricted ingredient", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "three-day-dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}, {"item": "curing-salt", "quantity": "50 g"}]}
)~") ==
        told(R"~(
day.jsonl:1:191: more of the restricted "curing-salt" is in "three-day-dip" than its maximum (9 CFR 424.21)
  …ub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}, {"item": "curing-salt", "quantity": "50 g"}]}
                                                                                  ^^^^^^^^^^^^^
  discard the batch, or correct the weight if it was written wrongly
)~"));
}

TEST_CASE("refused: hot held without a rule for it", "[batch][refused_records]") {
  CHECK(first(R"~({"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "2026-12-20"}], "events": [{"what": "hot-held", "at": "2026-11-25 12:00"}]}
)~") ==
        told(R"~(
day.jsonl:1:13: food that needs time and temperature control has no limit for its state: hot held
  {"product": "dip", "number": 1, "made_at": "2026-11-25 08:10", "quantity": "2 kg", "containers": "4 tub 500 g", "inputs": [{"item": "mayonnaise", "use_by": "20…
              ^^^^^
  state its shelf life for "hot held" in the kitchen book
)~"));
}
