// TOML to positioned values, by toml++.
#include <algorithm>

#include "reader/quote.h"
#include "reader/read.h"
#include "reader/source.h"
#include "reader/toml_fault.h"
#include "reader/toml_library.h"
#include "reader/toml_scan.h"

namespace lardiner::reader {

namespace {

using problem::Code;
using problem::Error;
using problem::Place;

constexpr qsizetype kMostWidth = 160;  // no longer caret line is drawn

bool stands_in_number_or_date(char c) {
  return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
         QByteArrayView("+-._:").contains(c);
}

bool before(const toml::source_position& a, const toml::source_position& b) { return a < b; }

// Turns toml++'s tree into values, each with the characters of the file.
class TomlValues {
 public:
  explicit TomlValues(Source& source) : source_(source) {}

  Value table(const toml::table& from, const Place& place) {
    struct Entry {
      const toml::key* key;
      const toml::node* node;
    };
    std::vector<Entry> entries;
    for (auto it = from.cbegin(); it != from.cend(); ++it) entries.push_back({&it->first, &it->second});
    std::stable_sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) {
      return before(a.key->source().begin, b.key->source().begin);
    });
    Value value;
    value.place = place;
    for (const Entry& entry : entries) {
      const Place key_place = place_of(entry.key->source());
      Value of_key = convert(*entry.node);
      of_key.key_place = key_place;
      value.entries.emplace_back(QString::fromStdString(std::string(entry.key->str())), std::move(of_key));
    }
    return value;
  }

  const std::optional<Error>& refused() const { return refused_; }

 private:
  Value convert(const toml::node& node) {
    if (const toml::table* from = node.as_table()) return table(*from, place_of(node.source()));
    if (const toml::array* from = node.as_array()) return list(*from);
    if (const auto* from = node.as_string())
      return plain(Value::Kind::String, QString::fromStdString(from->get()), node);
    if (const auto* from = node.as_boolean())
      return plain(Value::Kind::Boolean, from->get() ? QStringLiteral("true") : QStringLiteral("false"), node);
    if (node.is_number()) return number(node);
    return plain(Value::Kind::Date, characters(node), node);
  }

  Value list(const toml::array& from) {
    Value value;
    value.kind = Value::Kind::List;
    value.place = place_of(from.source());
    for (const toml::node& item : from) value.items.push_back(convert(item));
    return value;
  }

  Value plain(Value::Kind kind, const QString& text, const toml::node& node) {
    Value value;
    value.kind = kind;
    value.text = text;
    value.place = place_of(node.source());
    return value;
  }

  Value number(const toml::node& node) {
    const Value value = plain(Value::Kind::Number, characters(node), node);
    const auto plain_letter = [](QChar c) { return QStringView(u"0123456789+-.eE").contains(c); };
    if (!refused_ && !std::all_of(value.text.begin(), value.text.end(), plain_letter))
      refused_ = Error{Code::Malformed, quoted(value.text) + QStringLiteral(" is not a plain number"), value.place,
                       QStringLiteral("write a plain decimal number such as 1000 or 0.5")};
    return value;
  }

  // The number's or date's own characters; a date and its time may have a space between.
  QString characters(const toml::node& node) {
    const qsizetype begin = offset(node.source().begin);
    qsizetype end = begin;
    const auto digit = [&](qsizetype at) {
      return at < source_.size() && source_.at(at) >= '0' && source_.at(at) <= '9';
    };
    while (end < source_.size() &&
           (stands_in_number_or_date(source_.at(end)) ||
            (node.is_date_time() && end - begin == 10 && source_.at(end) == ' ' && digit(end + 1))))
      ++end;
    return QString::fromUtf8(source_.bytes().sliced(begin, end - begin));
  }

  qsizetype offset(const toml::source_position& position) {
    return source_.offset(static_cast<qsizetype>(position.line), static_cast<qsizetype>(position.column));
  }

  Place place_of(const toml::source_region& region) {
    const qsizetype begin = offset(region.begin);
    const bool one_line = region.end.line == region.begin.line;
    const auto width = static_cast<qsizetype>(region.end.column) - static_cast<qsizetype>(region.begin.column);
    return source_.place(begin, source_.after(begin, one_line ? std::min(width, kMostWidth) : 1));
  }

  Source& source_;
  std::optional<Error> refused_;
};

Error long_key(Source& source, qsizetype at) {
  return Error{Code::Range, QStringLiteral("a key has more than %1 parts").arg(kMostKeyParts), source.place(at, at + 1),
               QStringLiteral("remove dots, or put the text in quotes")};
}

}  // namespace

problem::Expected<Value> read_toml(const QByteArray& bytes, const QString& file) {
  Source source(bytes, file);
  if (std::optional<Error> fault = source.unreadable(kMostTomlBytes)) return tl::unexpected(*fault);
  const TomlScan scan = scan_toml(source);
  if (scan.long_key) return tl::unexpected(long_key(source, *scan.long_key));

  const toml::parse_result parsed = toml::parse(std::string_view(bytes.constData(), static_cast<size_t>(bytes.size())));
  if (!parsed) {
    const toml::source_position at = parsed.error().source().begin;
    const qsizetype offset = source.offset(static_cast<qsizetype>(at.line), static_cast<qsizetype>(at.column));
    return tl::unexpected(
        toml_fault(source, scan, QString::fromStdString(std::string(parsed.error().description())), offset));
  }
  TomlValues values(source);
  Value document = values.table(parsed.table(), source.file_place());
  if (values.refused()) return tl::unexpected(*values.refused());
  return document;
}

}  // namespace lardiner::reader
