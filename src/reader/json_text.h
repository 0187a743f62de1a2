// JSON written piece by piece, in the order in which it is told.
#pragma once

#include <QByteArray>
#include <QString>
#include <memory>

namespace lardiner::reader {

/// UTF-8 without spaces. REQUIRES: calls that make one JSON text; keys and `word` in ASCII.
class JsonText {
 public:
  JsonText();
  ~JsonText();
  JsonText(const JsonText&) = delete;
  JsonText& operator=(const JsonText&) = delete;

  void begin_object();
  void key(QLatin1String name);
  void end_object();
  void begin_list();
  void end_list();
  /// What is no Unicode (half of a pair) becomes U+FFFD or a question mark, as QString::toUtf8 writes it.
  void text(const QString& value);
  void word(QLatin1String value);
  void number(qint64 value);
  void truth(bool value);

  QByteArray bytes() const;

 private:
  struct Pen;
  std::unique_ptr<Pen> pen_;
};

}  // namespace lardiner::reader
