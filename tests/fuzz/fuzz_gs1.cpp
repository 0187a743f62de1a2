// Any bytes as what a scanner sends: a Digital Link, an element text in brackets or with FNC1. What is read can be
// written, and what is written is read back as the same.
#include <QByteArray>
#include <cstdlib>

#include "gs1/digital_link.h"
#include "gs1/element.h"

using namespace lardiner;

namespace {

void must(bool holds) {
  if (!holds) std::abort();
}

void check(const problem::Error& error) { must(!error.what.isEmpty()); }

void link_round_trip(const QString& text) {
  const auto read = gs1::parse_digital_link(text);
  if (!read) return check(read.error());
  must(read->gtin.size() == 14);
  const auto written = gs1::digital_link(*read);
  if (!written) return check(written.error());
  const auto again = gs1::parse_digital_link(*written);
  must(again.has_value());
  must(again->gtin == read->gtin && again->lot == read->lot && again->serial == read->serial);
  must(again->attributes.size() == read->attributes.size());
}

void elements_round_trip(const QString& text) {
  const auto read = gs1::read_bracketed(text);
  if (!read) return check(read.error());
  must(gs1::read_bracketed(gs1::bracketed(*read)) == read);
  for (const problem::Error& fault : gs1::together_faults(*read)) check(fault);
}

void fnc1_round_trip(const QString& text) {
  const auto read = gs1::read_fnc1_string(text);
  if (!read) return check(read.error());
  const auto written = gs1::fnc1_string(*read);
  must(written.has_value() && gs1::read_fnc1_string(*written) == read);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const QString text = QString::fromUtf8(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
  link_round_trip(text);
  elements_round_trip(text);
  fnc1_round_trip(text);
  return 0;
}
