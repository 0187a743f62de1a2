// The TOML parser's faults in our words, with a remedy.
#include "reader/toml_fault.h"

#include <algorithm>

#include "reader/quote.h"

namespace lardiner::reader {

namespace {

using problem::Code;
using problem::Error;

struct Span {
  qsizetype begin = 0;
  qsizetype end = 0;
};

struct Fault {
  Source& source;
  const TomlScan& scan;
  const QString& description;
  qsizetype at;

  bool says(QLatin1StringView words) const { return description.contains(words); }
  bool at_line_end() const { return at >= source.line_end(at); }
  QString letters(Span span) const {
    return QString::fromUtf8(source.bytes().sliced(span.begin, span.end - span.begin));
  }
  Error error(Code code, const QString& what, Span span, const QString& hint) const {
    return Error{code, what, source.place(span.begin, span.end), hint};
  }
};

bool ends_word(char c) { return QByteArrayView(" \t\r\n,[]{}#=").contains(c); }

// The word around the fault; the parser often stops in the middle of it, or just after.
Span word_at(const Fault& fault) {
  const Source& source = fault.source;
  Span span{std::min(fault.at, source.size()), std::min(fault.at, source.size())};
  while (span.begin > source.begin() && !ends_word(source.at(span.begin - 1))) --span.begin;
  while (span.end < source.size() && !ends_word(source.at(span.end))) ++span.end;
  return span;
}

// The key or table header that ends at or before the fault, or begins there.
Span key_before(const Fault& fault) {
  const Source& source = fault.source;
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '='; };
  if (fault.at < source.size() && source.at(fault.at) == '[') return Span{fault.at, source.line_end(fault.at)};
  Span span{fault.at, fault.at};
  while (span.end > source.begin() && blank(source.at(span.end - 1))) --span.end;
  if (source.at(span.end - 1) == '.')
    while (span.end < source.line_end(fault.at) && !blank(source.at(span.end))) ++span.end;
  span.begin = span.end;
  while (span.begin > source.begin() && !QByteArrayView("\n,{=").contains(source.at(span.begin - 1))) --span.begin;
  while (span.begin < span.end && blank(source.at(span.begin))) ++span.begin;
  return span;
}

Error unclosed(const Fault& fault) {
  const qsizetype open = fault.scan.unclosed.value_or(fault.at);
  const QByteArrayView rest = fault.source.bytes().sliced(open);
  const bool lines = rest.startsWith("\"\"\"") || rest.startsWith("'''");
  const QString mark = QString::fromUtf8(rest.first(lines ? 3 : 1));
  return fault.error(
      Code::Syntax, QStringLiteral("this text is never closed"), Span{open, fault.source.line_end(open)},
      lines
          ? QStringLiteral("end it with %1").arg(mark)
          : QStringLiteral("end it with %1 on the same line, or write %1%1%1 around text of several lines").arg(mark));
}

Error bad_text(const Fault& fault) {
  const bool open_before = fault.scan.unclosed && *fault.scan.unclosed <= fault.at;
  if (open_before && (fault.at_line_end() || fault.says(QLatin1StringView("end-of-file")))) return unclosed(fault);
  const Span span{fault.at, fault.at + 1};
  if (fault.says(QLatin1StringView("control character")))
    return fault.error(Code::Syntax, QStringLiteral("a control character stands in this text"), span,
                       QStringLiteral("remove it"));
  if (fault.says(QLatin1StringView("surrogate")))
    return fault.error(Code::Syntax, QStringLiteral("half a surrogate pair is no character"), span,
                       QStringLiteral("write the character itself, or its code as \\UXXXXXXXX"));
  return fault.error(Code::Syntax, QStringLiteral("this is not an escape that TOML knows"), span,
                     QStringLiteral("write \\\\ for a backslash, or put the text in single quotes"));
}

Error said_twice(const Fault& fault) {
  const Span span = key_before(fault);
  return fault.error(Code::Duplicate, fault.letters(span).trimmed() + QStringLiteral(" is already stated"), span,
                     QStringLiteral("keep one of the two"));
}

Error no_equals(const Fault& fault) {
  return fault.error(Code::Syntax, QStringLiteral("an = is missing here"), Span{fault.at, fault.at + 1},
                     QStringLiteral("write a line as: key = value"));
}

Error no_key(const Fault& fault) {
  const Span word = word_at(fault);
  return fault.error(
      Code::Syntax, QStringLiteral("a key or a [table] is expected here"),
      word.end > word.begin ? word : Span{fault.at, fault.at + 1},
      QStringLiteral("write a line as: key = value; put a key that has other than a-z, 0-9, - and _ in quotes"));
}

Error no_value(const Fault& fault) {
  const Span word = word_at(fault);
  const QString letters = fault.letters(word);
  if (letters.isEmpty())
    return fault.error(Code::Syntax, QStringLiteral("a value is missing here"), word,
                       QStringLiteral("write one after the =, or remove the line"));
  if (QStringLiteral("“”„‘’").contains(letters.front()))
    return fault.error(Code::Syntax, QStringLiteral("a typographic quote cannot begin a text"), word,
                       QStringLiteral("use the plain quote \""));
  const QString lower = letters.toLower();
  if (lower == QLatin1StringView("true") || lower == QLatin1StringView("false"))
    return fault.error(Code::Syntax, quoted(letters) + QStringLiteral(" is not a value"), word,
                       QStringLiteral("write %1 in small letters").arg(lower));
  return fault.error(Code::Syntax, quoted(letters) + QStringLiteral(" is not a value"), word,
                     QStringLiteral("put text in quotes; a number is written as 12 or 0.5, a date as 2026-02-28"));
}

Error no_number(const Fault& fault) {
  const Span word = word_at(fault);
  if (fault.says(QLatin1StringView("not representable")) || fault.says(QLatin1StringView("could not be interpreted")))
    return fault.error(Code::Range, quoted(fault.letters(word)) + QStringLiteral(" is too large a number"), word,
                       QStringLiteral("write a plain decimal number such as 1000 or 0.5"));
  return fault.error(Code::Malformed, quoted(fault.letters(word)) + QStringLiteral(" is not a number"), word,
                     QStringLiteral("write a plain decimal number such as 12 or 0.5, or put the text in quotes"));
}

Error no_date(const Fault& fault) {
  const Span word = word_at(fault);
  return fault.error(Code::Malformed, quoted(fault.letters(word)) + QStringLiteral(" is not a date or time"), word,
                     QStringLiteral("write it as 2026-02-28 or 2026-02-28 14:30:00, or put the text in quotes"));
}

Error more_after(const Fault& fault) {
  Span span{fault.at, fault.source.line_end(fault.at)};
  const qsizetype comment = fault.source.bytes().sliced(span.begin, span.end - span.begin).indexOf('#');
  if (comment > 0) span.end = span.begin + comment;
  return fault.error(
      Code::Syntax, quoted(fault.letters(span).trimmed()) + QStringLiteral(" stands after the end of the value"),
      Span{span.begin, span.begin + fault.letters(span).trimmed().toUtf8().size()},
      QStringLiteral("write one key a line, decimals with a point, and a number with its unit in quotes"));
}

Error not_closed(const Fault& fault) {
  if (fault.says(QLatin1StringView("dangling comma")))
    return fault.error(Code::Syntax, QStringLiteral("no comma may stand before this }"), Span{fault.at, fault.at + 1},
                       QStringLiteral("remove the comma"));
  const bool list = fault.says(QLatin1StringView("parsing array"));
  const QChar mark = list ? u']' : u'}';
  return fault.error(Code::Syntax, QStringLiteral("a comma or %1 is missing here").arg(mark),
                     Span{fault.at, fault.at + 1},
                     list ? QStringLiteral("put a comma between the items of the list and ] after the last")
                          : QStringLiteral("write the whole { } on one line, commas between, none after the last"));
}

Error header_not_closed(const Fault& fault) {
  return fault.error(Code::Syntax, QStringLiteral("a ] is missing here"), Span{fault.at, fault.at + 1},
                     QStringLiteral("write a table as [name], one of several as [[name]]"));
}

Error adds_to_whole(const Fault& fault) {
  const Span span = key_before(fault);
  return fault.error(Code::Conflict,
                     fault.letters(span).trimmed() + QStringLiteral(" adds to what is already stated whole"), span,
                     QStringLiteral("write all of it in one place"));
}

Error too_deep(const Fault& fault) {
  return fault.error(Code::Range, QStringLiteral("lists and tables are nested too deep here"),
                     Span{fault.at, fault.at + 1}, QStringLiteral("write it flatter"));
}

Error in_library_words(const Fault& fault) {
  if (fault.says(QLatin1StringView("after '\\r'")))
    return fault.error(Code::Syntax, QStringLiteral("a carriage return ends this line without a line feed"),
                       Span{fault.at, fault.at + 1}, QStringLiteral("save the file with line ends LF or CRLF"));
  QString words = fault.description;
  words.remove(QStringLiteral("Error while parsing "));
  words.replace(QStringLiteral("encountered end-of-file"), QStringLiteral("the file ends too early"));
  return fault.error(Code::Syntax, QStringLiteral("this is not TOML: ") + printable(words.left(200)),
                     Span{fault.at, fault.at + 1},
                     QStringLiteral("write it as TOML 1.0 has it: https://toml.io/en/v1.0.0"));
}

}  // namespace

Error toml_fault(Source& source, const TomlScan& scan, const QString& description, qsizetype at) {
  const Fault fault{source, scan, description, at};
  const auto says = [&](const char* words) { return fault.says(QLatin1StringView(words)); };
  if (says("TOML_MAX_NESTED_VALUES")) return too_deep(fault);
  if (says("cannot insert") || says("as dotted")) return adds_to_whole(fault);
  if (says("cannot redefine")) return said_twice(fault);
  if (says("string:") || says("unicode scalar sequence:")) return bad_text(fault);
  if (says("key-value pair: expected '='")) return no_equals(fault);
  if (says("expected keys, tables")) return no_key(fault);
  if (says("expected a comment or whitespace")) return more_after(fault);
  if (says("integer:") || says("floating-point:")) return no_number(fault);
  if (says("parsing date") || says("parsing time")) return no_date(fault);
  if (says("parsing value:") || says("parsing boolean:") || says("key-value pair: encountered end-of-file") ||
      says("pair: expected value"))
    return no_value(fault);
  if (says("table header: encountered end") || says("table header: expected ']'")) return header_not_closed(fault);
  if (says("parsing array") || says("parsing inline table")) return not_closed(fault);
  return in_library_words(fault);
}

}  // namespace lardiner::reader
