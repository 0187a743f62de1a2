// One list of fields for each kind of thing, by which it is both written to JSON and read back; for fixed_json.cpp.
#pragma once

#include <QJsonArray>
#include <QJsonObject>
#include <QStringList>
#include <QTimeZone>
#include <optional>
#include <span>
#include <vector>

#include "batch/json_words.h"
#include "measure/quantity.h"
#include "measure/temperature.h"
#include "problem/error.h"
#include "reader/json_text.h"

namespace lardiner::batch {

/// Writes the fields that it is told of. A thing's fields are told by an overload of `fields(archive, thing)`.
class Writing {
 public:
  template <class T>
  using Of = const T;
  static constexpr bool kReads = false;

  explicit Writing(reader::JsonText& text) : text_(text) {}

  template <class T>
  void must(const char* key, const T& value) {
    text_.key(QLatin1String(key));
    put(value);
  }
  template <class T>
  void usual(const char* key, const T& value, const T& most_often) {
    if (!(value == most_often)) must(key, value);
  }
  template <class T>
  void maybe(const char* key, const std::optional<T>& value) {
    if (value) must(key, *value);
  }
  template <class T>
  void list(const char* key, const std::vector<T>& values) {
    if (!values.empty()) must(key, values);
  }
  void text(const char* key, const QString& value) { usual(key, value, QString()); }
  void texts(const char* key, const QStringList& values) { usual(key, values, QStringList()); }

  void put(const QString& value) { text_.text(value); }
  void put(const QStringList& values);
  void put(bool value) { text_.truth(value); }
  void put(int value) { text_.number(value); }
  void put(const QDateTime& value);
  void put(const QDate& value);
  void put(const measure::Temperature& value);
  void put(const measure::TemperatureLimit& value);
  void put(const measure::Quantity& value);
  void put(const measure::Ratio& value);
  template <class T>
  void put(const std::vector<T>& values) {
    text_.begin_list();
    for (const T& value : values) put(value);
    text_.end_list();
  }
  template <class T>
  void put(const T& value) {
    if constexpr (std::is_enum_v<T>) {
      text_.word(QLatin1String(words_of(value)[static_cast<size_t>(value)]));
    } else {
      text_.begin_object();
      fields(*this, value);
      text_.end_object();
    }
  }

 private:
  reader::JsonText& text_;
};

/// What a whole reading has in common. Only the first fault is kept.
struct ReadingOf {
  QTimeZone zone;  ///< of the instants
  std::optional<problem::Error> error;

  void refuse(problem::Code code, const QString& what, const QString& hint = {});
};

/// Where a value stands, for a fault: written out only then, since every value that is read has one.
struct Path {
  const Path* outer = nullptr;  ///< outlives this
  const char* key = nullptr;    ///< null: the element `index`
  qsizetype index = 0;

  QString text() const;  ///< "facts.questions[0].candidates"
};

/// Reads the same fields. Every fault goes to `common`; after the first nothing that was read counts. A key that was
/// not told of is a fault.
class Reading {
 public:
  template <class T>
  using Of = T;
  static constexpr bool kReads = true;

  Reading(const QJsonObject& object, const Path& path, ReadingOf& common)
      : object_(object), path_(path), common_(common) {}

  ReadingOf& common() { return common_; }
  QString path_of(const char* key) const { return Path{&path_, key}.text(); }

  template <class T>
  void must(const char* key, T& value) {
    if (!read(key, value)) common_.refuse(problem::Code::Missing, path_of(key) + QStringLiteral(" is missing"));
  }
  template <class T>
  void usual(const char* key, T& value, const T& most_often) {
    if (!read(key, value)) value = most_often;
  }
  template <class T>
  void maybe(const char* key, std::optional<T>& value) {
    T there{};
    if (read(key, there)) value = std::move(there);
  }
  template <class T>
  void list(const char* key, std::vector<T>& values) {
    read(key, values);
  }
  void text(const char* key, QString& value) { read(key, value); }
  void texts(const char* key, QStringList& values) { read(key, values); }

  /// A value that is judged elsewhere.
  QJsonValue raw(const char* key);

  /// Refuses the keys that nobody asked for.
  void end();

 private:
  template <class T>
  bool read(const char* key, T& value) {
    const QJsonValue there = raw(key);
    if (there.isUndefined()) return false;
    take(there, Path{&path_, key}, value);
    return true;
  }

  void take(const QJsonValue& json, const Path& path, QString& value);
  void take(const QJsonValue& json, const Path& path, QStringList& values);
  void take(const QJsonValue& json, const Path& path, bool& value);
  void take(const QJsonValue& json, const Path& path, int& value);
  void take(const QJsonValue& json, const Path& path, QDateTime& value);
  void take(const QJsonValue& json, const Path& path, QDate& value);
  void take(const QJsonValue& json, const Path& path, measure::Temperature& value);
  void take(const QJsonValue& json, const Path& path, measure::TemperatureLimit& value);
  void take(const QJsonValue& json, const Path& path, measure::Quantity& value);
  void take(const QJsonValue& json, const Path& path, measure::Ratio& value);
  template <class T>
  void take(const QJsonValue& json, const Path& path, std::vector<T>& values) {
    if (!json.isArray()) return wrong(path, QStringLiteral("a list"));
    const QJsonArray array = json.toArray();
    for (qsizetype i = 0; i < array.size(); ++i) take(array[i], Path{&path, nullptr, i}, values.emplace_back());
  }
  template <class T>
  void take(const QJsonValue& json, const Path& path, T& value) {
    if constexpr (std::is_enum_v<T>) {
      take_word(json, path, words_of(value), [&](size_t at) { value = static_cast<T>(at); });
    } else {
      if (!json.isObject()) return wrong(path, QStringLiteral("an object"));
      Reading inner(json.toObject(), path, common_);
      fields(inner, value);
      inner.end();
    }
  }
  template <class Take>
  void take_word(const QJsonValue& json, const Path& path, std::span<const char* const> words, Take take_at) {
    const QString said = json.toString();
    for (size_t i = 0; i < words.size(); ++i)
      if (json.isString() && said == QLatin1String(words[i])) return take_at(i);
    wrong(path, one_of(words));
  }

  static QString one_of(std::span<const char* const> words);
  void wrong(const Path& path, const QString& kind);

  QJsonObject object_;
  const Path& path_;
  ReadingOf& common_;
  std::vector<QLatin1String> asked_;  // and there
};

/// A thing as one of the two has it: const when it is written.
template <class Archive, class T>
using Of = typename Archive::template Of<T>;

}  // namespace lardiner::batch
