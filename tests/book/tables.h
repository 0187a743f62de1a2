// Tables of ingredients and products for books that a test writes in place.
#pragma once

#include "kitchen.h"

namespace book_test {

/// A sound ingredient that may be eaten as it comes; `more` takes the place of `must_be_cooked = false`.
inline QByteArray ingredient(const QByteArray& id, const QByteArray& contains = "\"none\"",
                             const QByteArray& more = "must_be_cooked = false") {
  return "[[ingredient]]\nid = \"" + id + "\"\nname = \"" + id + "\"\ntcs = \"yes\"\ntcs_basis = \"fresh\"\n" + more +
         "\nsupplier_item = { id = \"" + id + "-s\", supplier = \"S\", contains = " + contains +
         ", checked = 2026-01-05, source = \"letter\" }\n";
}

/// A component of the lines written in `formula`; `number` gives it a code and an item number of its own.
inline QByteArray product(const QByteArray& id, int number, const QByteArray& formula, const QByteArray& more = "") {
  const char code[] = {'X', static_cast<char>('A' + number / 26), static_cast<char>('A' + number % 26), 0};
  return "[[product]]\nid = \"" + id + "\"\nname = \"" + id + "\"\nkind = \"component\"\ncode = \"" + code +
         "\"\nitem_number = \"9" + QByteArray::number(number).rightJustified(7, '0') +
         "\"\ntcs = \"yes\"\ntcs_basis = \"fresh\"\nformula = [" + formula + "]\n" + more + "\n";
}

/// The kitchen with these tables, which must be sound.
inline lardiner::book::Book book_with(const QByteArray& tables) {
  Reading reading = read_with(tables);
  CHECK(lardiner::problem::text(reading.findings.errors) == QString());
  return std::move(reading.book);
}

/// What a list of declarations says, as a book would write it.
inline QStringList written(const std::vector<lardiner::book::Declaration>& declarations) {
  QStringList all;
  for (const auto& one : declarations)
    all += one.species.isEmpty() ? one.substance : one.substance + u':' + one.species;
  return all;
}

}  // namespace book_test
