// JSON written piece by piece, in the order in which it is told.
#include "reader/json_text.h"

#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

namespace lardiner::reader {

struct JsonText::Pen {
  rapidjson::StringBuffer buffer;
  rapidjson::Writer<rapidjson::StringBuffer> writer{buffer};
};

namespace {

rapidjson::SizeType size_of(qsizetype size) { return static_cast<rapidjson::SizeType>(size); }

}  // namespace

JsonText::JsonText() : pen_(std::make_unique<Pen>()) {}
JsonText::~JsonText() = default;

void JsonText::begin_object() { pen_->writer.StartObject(); }

void JsonText::key(QLatin1String name) { pen_->writer.Key(name.data(), size_of(name.size())); }

void JsonText::end_object() { pen_->writer.EndObject(); }

void JsonText::begin_list() { pen_->writer.StartArray(); }

void JsonText::end_list() { pen_->writer.EndArray(); }

void JsonText::text(const QString& value) {
  const QByteArray utf8 = value.toUtf8();
  pen_->writer.String(utf8.constData(), size_of(utf8.size()));
}

void JsonText::word(QLatin1String value) { pen_->writer.String(value.data(), size_of(value.size())); }

void JsonText::number(qint64 value) { pen_->writer.Int64(value); }

void JsonText::truth(bool value) { pen_->writer.Bool(value); }

QByteArray JsonText::bytes() const {
  return {pen_->buffer.GetString(), static_cast<qsizetype>(pen_->buffer.GetSize())};
}

}  // namespace lardiner::reader
