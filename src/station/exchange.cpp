// One request of a browser and the answer to it, free of the library that carries them.
#include "station/exchange.h"

#include <algorithm>

namespace lardiner::station {

namespace {

// "two+words" or "two%20words"; bytes that are no UTF-8 become the replacement character.
QString decoded(QByteArray text) {
  text.replace('+', ' ');
  return QString::fromUtf8(QByteArray::fromPercentEncoding(text));
}

}  // namespace

Fields Fields::read(const QByteArray& encoded) {
  Fields fields;
  for (const QByteArray& part : encoded.split('&')) {
    if (part.isEmpty()) continue;
    const qsizetype at = part.indexOf('=');
    fields.add(decoded(at < 0 ? part : part.left(at)), at < 0 ? QString() : decoded(part.mid(at + 1)));
  }
  return fields;
}

bool Fields::has(const QString& name) const {
  return std::any_of(all_.begin(), all_.end(), [&](const auto& field) { return field.first == name; });
}

QString Fields::value(const QString& name) const {
  const auto found = std::find_if(all_.begin(), all_.end(), [&](const auto& field) { return field.first == name; });
  return found == all_.end() ? QString() : found->second;
}

QStringList Fields::values(const QString& name) const {
  QStringList values;
  for (const auto& [key, value] : all_)
    if (key == name) values << value;
  return values;
}

QString own_address(const QString& wanted) {
  const bool ours = wanted.startsWith(u'/') && !wanted.startsWith(QLatin1String("//")) && !wanted.contains(u'\\');
  return ours ? wanted : QStringLiteral("/");
}

Reply pdf_reply(const QByteArray& pdf, const QByteArray& file_name) {
  Reply reply;
  reply.type = "application/pdf";
  reply.body = pdf;
  reply.file_name = file_name;
  return reply;
}

Reply redirection(const QString& to) {
  Reply reply;
  reply.status = 303;
  reply.to = to;
  return reply;
}

}  // namespace lardiner::station
