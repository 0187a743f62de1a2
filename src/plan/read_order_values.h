// What the readers of orders and of lots on hand have in common: items of the book, amounts that it can convert, times.
#pragma once

#include <optional>

#include "batch/read_records_values.h"
#include "plan/read_orders.h"

namespace lardiner::plan {

/// What the readers know besides the row.
struct Reading {
  const book::Book& book;
  const ReadSettings& settings;
  batch::RecordSettings record_settings;

  Reading(const book::Book& of, const ReadSettings& with)
      : book(of), settings(with), record_settings{with.now, with.decimal_comma} {}
  batch::Reading of_records() const { return {book, record_settings}; }
  const QTimeZone& zone() const { return book.kitchen.zone; }
};

// Every function returns nothing (or an empty text) when the key is absent, and when it is there but refused.

/// A text that is only repeated on the sheets: at most 60 characters, none of which commands a terminal or turns the
/// direction of writing, and at most 30 between spaces and hyphens, so that the columns of a sheet hold it.
QString read_text(reader::Fields& fields, QStringView key);

/// The id of a product of the book.
QString read_product_id(reader::Fields& fields, QStringView key, const Reading& reading);

/// `quantity`, required: above nothing, and in a dimension that the book converts to that of the item. Whole pieces
/// are not asked for.
std::optional<measure::Quantity> read_quantity_of(reader::Fields& fields, const QString& item, const Reading& reading);

}  // namespace lardiner::plan
