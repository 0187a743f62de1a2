// Lets Catch2 show Qt's strings and dates in a failed check.
#pragma once

#include <QDate>
#include <QDateTime>
#include <QString>
#include <catch2/catch.hpp>
#include <ostream>

namespace Catch {

template <>
struct StringMaker<QString> {
  static std::string convert(const QString& text) { return '"' + text.toStdString() + '"'; }
};

template <>
struct StringMaker<QDate> {
  static std::string convert(const QDate& date) { return date.toString(Qt::ISODate).toStdString(); }
};

template <>
struct StringMaker<QDateTime> {
  static std::string convert(const QDateTime& instant) { return instant.toString(Qt::ISODate).toStdString(); }
};

}  // namespace Catch
