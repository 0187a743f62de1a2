// JSON Lines to positioned values, by RapidJSON's event reader.
#include <rapidjson/memorystream.h>
#include <rapidjson/reader.h>

#include <QSet>
#include <memory>

#include "reader/json_fault.h"
#include "reader/quote.h"
#include "reader/read.h"
#include "reader/source.h"

namespace lardiner::reader {

namespace {

using problem::Code;
using problem::Error;
using problem::Errors;
using problem::Place;

constexpr size_t kDeepest = 32;

// Receives the events of one line. The parser tells only where a token ends; it begins after the last one's end and the
// blanks and marks between.
class RecordHandler {
 public:
  RecordHandler(Source& source, const rapidjson::MemoryStream& stream, qsizetype line_start)
      : source_(source), stream_(stream), line_start_(line_start), last_end_(line_start) {}

  bool Null() {
    next_token();
    if (!inside()) return refuse_record();
    if (open_.back().value.kind == Value::Kind::List)
      return refuse(Code::Missing, QStringLiteral("null stands in a list"), QStringLiteral("leave it out"));
    return true;
  }
  bool Bool(bool yes) { return scalar(Value::Kind::Boolean, yes ? QStringLiteral("true") : QStringLiteral("false")); }
  bool RawNumber(const char* letters, rapidjson::SizeType size, bool) {
    return scalar(Value::Kind::Number, QString::fromLatin1(letters, static_cast<qsizetype>(size)));
  }
  bool String(const char* letters, rapidjson::SizeType size, bool) {
    if (!well_formed(letters, size)) return false;
    return scalar(Value::Kind::String, QString::fromUtf8(letters, static_cast<qsizetype>(size)));
  }
  bool Key(const char* letters, rapidjson::SizeType size, bool);
  bool StartObject() { return open(Value::Kind::Table); }
  bool EndObject(rapidjson::SizeType) { return close(); }
  bool StartArray() { return open(Value::Kind::List); }
  bool EndArray(rapidjson::SizeType) { return close(); }
  // Numbers arrive as their characters; the reader's interface asks for these all the same.
  bool Int(int) { return false; }
  bool Uint(unsigned) { return false; }
  bool Int64(int64_t) { return false; }
  bool Uint64(uint64_t) { return false; }
  bool Double(double) { return false; }

  qsizetype last_end() const { return last_end_; }
  Value& record() { return record_; }
  const std::optional<Error>& refused() const { return refused_; }

 private:
  struct Open {
    Value value;
    QString key;
    Place key_place;
    QSet<QString> keys;
  };

  bool inside() const { return !open_.empty(); }
  void next_token();
  void next_mark();
  bool scalar(Value::Kind kind, const QString& text);
  bool open(Value::Kind kind);
  bool close();
  void put(Value value);
  bool well_formed(const char* letters, rapidjson::SizeType size);
  bool refuse_record();
  bool refuse(Code code, const QString& what, const QString& hint);

  Source& source_;
  const rapidjson::MemoryStream& stream_;
  qsizetype line_start_;
  qsizetype last_end_;
  qsizetype token_ = 0;  // of the token told of last
  std::vector<Open> open_;
  Value record_;
  std::optional<Error> refused_;
};

void RecordHandler::next_token() {
  token_ = last_end_;
  while (QByteArrayView(" \t\r,:").contains(source_.at(token_))) ++token_;
  last_end_ = line_start_ + static_cast<qsizetype>(stream_.Tell());
}

// A bracket or brace: one character, which the parser may or may not have passed when it tells of it.
void RecordHandler::next_mark() {
  next_token();
  last_end_ = token_ + 1;
}

bool RecordHandler::refuse(Code code, const QString& what, const QString& hint) {
  refused_ = Error{code, what, source_.place(token_, last_end_), hint};
  return false;
}

bool RecordHandler::refuse_record() {
  return refuse(Code::Syntax, QStringLiteral("a record is an object in braces"),
                QStringLiteral("write each line as {\"key\": value}"));
}

// RapidJSON lets the second half of a pair through when it is written as an escape alone.
bool RecordHandler::well_formed(const char* letters, rapidjson::SizeType size) {
  if (first_malformed(QByteArrayView(letters, static_cast<qsizetype>(size))) < 0) return true;
  next_token();
  const JsonWords words = json_words(rapidjson::kParseErrorStringUnicodeSurrogateInvalid);
  return refuse(Code::Syntax, words.what, words.hint);
}

bool RecordHandler::scalar(Value::Kind kind, const QString& text) {
  next_token();
  if (!inside()) return refuse_record();
  Value value;
  value.kind = kind;
  value.text = text;
  value.place = source_.place(token_, last_end_);
  put(std::move(value));
  return true;
}

bool RecordHandler::Key(const char* letters, rapidjson::SizeType size, bool) {
  if (!well_formed(letters, size)) return false;
  next_token();
  const QString key = QString::fromUtf8(letters, static_cast<qsizetype>(size));
  if (open_.back().keys.contains(key))
    return refuse(Code::Duplicate, quoted(key) + QStringLiteral(" is already stated in this record"),
                  QStringLiteral("keep one of the two"));
  open_.back().keys.insert(key);
  open_.back().key = key;
  open_.back().key_place = source_.place(token_, last_end_);
  return true;
}

bool RecordHandler::open(Value::Kind kind) {
  next_mark();
  if (!inside() && kind != Value::Kind::Table) return refuse_record();
  if (open_.size() >= kDeepest)
    return refuse(Code::Range, QStringLiteral("the record is nested deeper than %1").arg(kDeepest),
                  QStringLiteral("write it flatter"));
  Open level;
  level.value.kind = kind;
  level.value.place = inside() ? source_.place(token_, last_end_) : source_.line_place(token_);
  open_.push_back(std::move(level));
  return true;
}

bool RecordHandler::close() {
  next_mark();
  Value done = std::move(open_.back().value);
  open_.pop_back();
  if (inside()) {
    put(std::move(done));
  } else {
    record_ = std::move(done);
  }
  return true;
}

void RecordHandler::put(Value value) {
  Open& level = open_.back();
  if (level.value.kind == Value::Kind::List) {
    level.value.items.push_back(std::move(value));
    return;
  }
  value.key_place = level.key_place;
  level.value.entries.emplace_back(level.key, std::move(value));
}

bool ends_word(char c) { return QByteArrayView(" \t\r\n,:[]{}\"").contains(c); }

// The parser's fault at `at`, shown at the whole word there; a text that is not closed, where it opened: after
// `last_end`.
Error syntax_fault(Source& source, rapidjson::ParseErrorCode code, qsizetype at, qsizetype last_end) {
  const qsizetype end = source.line_end(at);
  qsizetype word = at;
  qsizetype word_end = at;
  while (word > last_end && !ends_word(source.at(word - 1))) --word;
  while (word_end < end && !ends_word(source.at(word_end))) ++word_end;
  JsonWords words = json_words(code);
  if (code == rapidjson::kParseErrorStringMissQuotationMark) {
    at = source.bytes().indexOf('"', last_end);
    return Error{Code::Syntax, words.what, source.place(at, end), words.hint};
  }
  if (code == rapidjson::kParseErrorStringEscapeInvalid && static_cast<unsigned char>(source.at(at)) < 0x20)
    words = control_character_words();
  if (is_about_value(code) && word_end > word) {
    words = no_value_words(QString::fromUtf8(source.bytes().sliced(word, word_end - word)));
    return Error{Code::Syntax, words.what, source.place(word, word_end), words.hint};
  }
  if (at >= end) words = line_end_words();
  return Error{Code::Syntax, words.what, source.place(at, at + 1), words.hint};
}

// One line as a record, or what is wrong with it.
problem::Expected<Value> read_record(Source& source, qsizetype begin, qsizetype end) {
  constexpr unsigned kFlags =
      rapidjson::kParseIterativeFlag | rapidjson::kParseNumbersAsStringsFlag | rapidjson::kParseValidateEncodingFlag;
  rapidjson::MemoryStream stream(source.bytes().data() + begin, static_cast<size_t>(end - begin));
  RecordHandler handler(source, stream, begin);
  rapidjson::Reader reader;
  const rapidjson::ParseResult result = reader.Parse<kFlags>(stream, handler);
  if (handler.refused()) return tl::unexpected(*handler.refused());
  if (!result.IsError()) return std::move(handler.record());

  const qsizetype at = std::min(begin + static_cast<qsizetype>(result.Offset()), end);
  return tl::unexpected(syntax_fault(source, result.Code(), at, handler.last_end()));
}

// The lines that are records: what is needed to read one of them again.
struct JsonFile {
  JsonFile(const QByteArray& all, const QString& name) : bytes(all), source(bytes, name) {}
  JsonFile(const JsonFile&) = delete;
  JsonFile& operator=(const JsonFile&) = delete;

  QByteArray bytes;
  Source source;
  std::vector<quint32> starts;
};

Errors find_records(JsonFile& file) {
  Source& source = file.source;
  Errors errors;
  for (qsizetype begin = source.begin(); begin < source.size() && errors.size() < kMostFaults;) {
    const qsizetype end = source.line_end(begin);
    if (!source.bytes().sliced(begin, end - begin).trimmed().isEmpty()) {
      const problem::Expected<Value> record = read_record(source, begin, end);
      if (record)
        file.starts.push_back(static_cast<quint32>(begin));
      else
        errors.push_back(record.error());
    }
    const qsizetype newline = source.bytes().indexOf('\n', begin);
    begin = newline < 0 ? source.size() : newline + 1;
  }
  return errors;
}

}  // namespace

problem::ExpectedAll<Rows> json_rows(const QByteArray& bytes, const QString& name) {
  const auto file = std::make_shared<JsonFile>(bytes, name);
  if (std::optional<Error> fault = file->source.unreadable(kMostBytes)) return tl::unexpected(Errors{*fault});
  Errors errors = find_records(*file);
  if (!errors.empty()) return tl::unexpected(std::move(errors));
  const auto row = [file](size_t at) {
    const auto begin = static_cast<qsizetype>(file->starts[at]);
    return std::move(*read_record(file->source, begin, file->source.line_end(begin)));
  };
  return Rows{file->starts.size(), row, false};
}

problem::ExpectedAll<std::vector<Value>> read_json_lines(const QByteArray& bytes, const QString& file) {
  const problem::ExpectedAll<Rows> rows = json_rows(bytes, file);
  if (!rows) return tl::unexpected(rows.error());
  std::vector<Value> all;
  all.reserve(rows->count);
  for (size_t at = 0; at < rows->count; ++at) all.push_back(rows->row(at));
  return all;
}

}  // namespace lardiner::reader
