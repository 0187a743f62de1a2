// The JSON parser's faults in our words, with a remedy.
#pragma once

#include <QString>

namespace lardiner::reader {

struct JsonWords {
  QString what;
  QString hint;
};

/// What is wrong and what to do, for a fault number of RapidJSON (ParseErrorCode).
JsonWords json_words(int parse_error);
/// Whether the fault is one of a value that is not text, to be told by `no_value_words`.
bool is_about_value(int parse_error);

JsonWords no_value_words(const QString& word);
JsonWords control_character_words();
JsonWords line_end_words();

}  // namespace lardiner::reader
