// The JSON parser's faults in our words, with a remedy.
#include "reader/json_fault.h"

#include <rapidjson/error/error.h>

#include "reader/quote.h"

namespace lardiner::reader {

bool is_about_value(int parse_error) {
  return parse_error == rapidjson::kParseErrorValueInvalid || parse_error == rapidjson::kParseErrorNumberMissFraction ||
         parse_error == rapidjson::kParseErrorNumberMissExponent;
}

JsonWords no_value_words(const QString& word) {
  return {quoted(word) + QStringLiteral(" is not a JSON value"),
          QStringLiteral("put text in double quotes; a number is written as 12 or 0.5")};
}

JsonWords control_character_words() {
  return {QStringLiteral("a control character stands in this text"),
          QStringLiteral("remove it, or write a tab as \\t")};
}

JsonWords line_end_words() {
  return {QStringLiteral("the line ends within the record"), QStringLiteral("write each record whole on one line")};
}

JsonWords json_words(int parse_error) {
  switch (parse_error) {
    case rapidjson::kParseErrorStringMissQuotationMark:
      return {QStringLiteral("this text is never closed"), QStringLiteral("end it with \" on the same line")};
    case rapidjson::kParseErrorDocumentRootNotSingular:
      return {QStringLiteral("more text follows the record"), QStringLiteral("write one record a line")};
    case rapidjson::kParseErrorObjectMissName:
      return {QStringLiteral("a key in double quotes is expected here"),
              QStringLiteral("write \"key\": value, and no comma after the last")};
    case rapidjson::kParseErrorObjectMissColon:
      return {QStringLiteral("a : is missing here"), QStringLiteral("write \"key\": value")};
    case rapidjson::kParseErrorObjectMissCommaOrCurlyBracket:
      return {QStringLiteral("a comma or } is missing here"), QStringLiteral("put a comma between entries")};
    case rapidjson::kParseErrorArrayMissCommaOrSquareBracket:
      return {QStringLiteral("a comma or ] is missing here"),
              QStringLiteral("put a comma between the items of a list")};
    case rapidjson::kParseErrorStringUnicodeEscapeInvalidHex:
      return {QStringLiteral("\\u needs four hexadecimal digits"), QStringLiteral("write the character itself")};
    case rapidjson::kParseErrorStringUnicodeSurrogateInvalid:
      return {QStringLiteral("half a surrogate pair is no character"), QStringLiteral("write the character itself")};
    case rapidjson::kParseErrorStringEscapeInvalid:
      return {QStringLiteral("this is not an escape that JSON knows"), QStringLiteral("write \\\\ for a backslash")};
    default:
      return {QStringLiteral("a value is missing here"), QStringLiteral("write one, or leave the key out")};
  }
}

}  // namespace lardiner::reader
