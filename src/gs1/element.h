// GS1 elements (application identifier and value): written for people in brackets and for machines with FNC1.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "problem/error.h"

namespace lardiner::gs1 {

struct Element {
  QString ai;     ///< "01"
  QString value;  ///< "09520123456788"

  friend bool operator==(const Element&, const Element&) = default;
};

using Elements = std::vector<Element>;

/// What is wrong with the value (identifier, length, characters, check digit, dates), or nothing. Dates are checked
/// without a century: 29 February is accepted in years divisible by four.
std::optional<problem::Error> value_fault(const Element& element);

/// What is wrong with the elements together: one given twice with another value, one without the element that it
/// needs (10 and 21 need 01), two that exclude each other. An empty list when they stand together.
problem::Errors together_faults(const Elements& elements);

/// `(01)12345678901231(10)12345`; an opening bracket in a value is written `\(`.
QString bracketed(const Elements& elements);
/// Reads it back; every value is checked, the elements together are not.
problem::Expected<Elements> read_bracketed(const QString& text);

/// FNC1 in a text: a character that no value can hold.
inline constexpr QChar kFnc1 = u'^';

/// `^01123456789012311012345`: FNC1 first and behind every element of no predefined length but the last
/// (GS1 General Specifications 7.8). Every value is checked.
problem::Expected<QString> fnc1_string(const Elements& elements);
/// Reads it back. FNC1 may be `^` or the group separator U+001D that scanners send; the first may be absent.
problem::Expected<Elements> read_fnc1_string(const QString& text);

/// A measure as an element holds it: 3103 with 000189 is 189 with 3 decimal places.
struct Measure {
  qint64 number = 0;
  int places = 0;

  friend bool operator==(const Measure&, const Measure&) = default;
};

/// The number of a measure (AI 3100 to 3699); refused for any other element and for a wrong value.
problem::Expected<Measure> measure(const Element& element);

/// The net weight in kilograms: 3103 up to 999.999 kg, above with fewer decimals, cut off so that it never overstates.
/// Refused: less than a gram, more than 999,999 kg.
problem::Expected<Element> net_weight(qint64 grams);

}  // namespace lardiner::gs1
