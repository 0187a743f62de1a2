// The kinds of value that a row of an event writes, besides those of batch records; each taken from its key.
#pragma once

#include "batch/read_records_values.h"
#include "history/event.h"

namespace lardiner::history {

// Every function returns nothing (or an empty text) when the key is absent, and when it is there but refused.

/// A text that is only repeated: no control codes, at most 60 characters for a name and 200 for a sentence.
QString read_name(reader::Fields& fields, QStringView key);
QString read_sentence(reader::Fields& fields, QStringView key);

/// A lot as written on its label. One that is built as ours are is refused unless its check character holds.
/// `item` (may be empty) is what the row says it is of.
QString read_lot(reader::Fields& fields, const QString& item, const book::Book& book);

/// The product or ingredient whose code such a lot of ours has; empty where that is not plain.
QString item_of_lot(const QString& lot, const book::Book& book);

/// The id of an ingredient or product of the book; with `bought`, of an ingredient.
QString read_item(reader::Fields& fields, bool bought, const book::Book& book);

/// The id of a supplier item of `item`; of any ingredient where `item` is empty.
QString read_supplier_item(reader::Fields& fields, const QString& item, const book::Book& book);

/// A place of the book, when the book has places; else any name.
QString read_place(reader::Fields& fields, const book::Book& book);

QString read_site(reader::Fields& fields, const book::Book& book);

/// full, half, quarter, none, or 75 %.
std::optional<int> read_left(reader::Fields& fields);

///
EntryId read_entry(reader::Fields& fields);

/// A day up to today.
std::optional<QDate> read_day(reader::Fields& fields, const batch::Reading& reading);

/// Allergens as a book declares them; in a cell several stand with commas between.
QStringList read_adds(reader::Fields& fields, const book::Book& book);

}  // namespace lardiner::history
