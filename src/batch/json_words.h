// The words by which the ledger's text names what is one of several, in the order of their enumerators.
#pragma once

#include <span>

#include "batch/batch.h"

namespace lardiner::batch {

using Words = std::span<const char* const>;

inline Words words_of(Deed) {
  static constexpr const char* words[] = {"made", "opened", "thawed", "cut", "decanted"};
  return words;
}

inline Words words_of(Happening) {
  static constexpr const char* words[] = {"frozen",   "thawed", "opened",   "hot-held", "time-control",
                                          "finished", "packed", "reheated", "discarded"};
  return words;
}

inline Words words_of(book::State) {
  static constexpr const char* words[] = {"chilled", "frozen",   "thawed",       "ambient",
                                          "opened",  "hot-held", "time-control", "finished"};
  return words;
}

inline Words words_of(book::EndKind) {
  static constexpr const char* words[] = {"use by", "best before"};
  return words;
}

inline Words words_of(book::Length::Unit) {
  static constexpr const char* words[] = {"days", "seconds", "months"};
  return words;
}

inline Words words_of(book::FreezingDay) {
  static constexpr const char* words[] = {"counts", "free"};
  return words;
}

inline Words words_of(book::Readiness) {
  static constexpr const char* words[] = {"unknown", "must be cooked", "not fully cooked", "cooked, ready to eat",
                                          "ready to eat uncooked"};
  return words;
}

inline Words words_of(UseBy::Form) {
  static constexpr const char* words[] = {"date", "instant", "frozen", "none"};
  return words;
}

inline Words words_of(Cooling::State) {
  static constexpr const char* words[] = {"not needed", "pending", "passed", "missed"};
  return words;
}

inline Words words_of(problem::Code) {
  static constexpr const char* words[] = {"syntax",   "unknown", "missing", "duplicate", "malformed", "range",
                                          "conflict", "unsafe",  "no room", "no glyph",  "machine"};
  return words;
}

}  // namespace lardiner::batch
