// Reading a string in a test as if it were a file, and the whole text of what is wrong with it.
#pragma once

#include <QByteArray>
#include <catch2/catch.hpp>

#include "reader/read.h"

inline lardiner::reader::Value toml(const QByteArray& bytes) {
  const auto read = lardiner::reader::read_toml(bytes, QStringLiteral("book.toml"));
  if (!read) FAIL(lardiner::problem::text(read.error()).toStdString());
  return *read;
}

inline QString toml_error(const QByteArray& bytes) {
  const auto read = lardiner::reader::read_toml(bytes, QStringLiteral("book.toml"));
  return read ? QStringLiteral("accepted") : lardiner::problem::text(read.error());
}

inline lardiner::reader::CsvRows csv(const QByteArray& bytes) {
  const auto read = lardiner::reader::read_csv(bytes, QStringLiteral("batches.csv"));
  if (!read) FAIL(lardiner::problem::text(read.error()).toStdString());
  return *read;
}

inline QString csv_error(const QByteArray& bytes) {
  const auto read = lardiner::reader::read_csv(bytes, QStringLiteral("batches.csv"));
  return read ? QStringLiteral("accepted") : lardiner::problem::text(read.error());
}

inline std::vector<lardiner::reader::Value> json(const QByteArray& bytes) {
  const auto read = lardiner::reader::read_json_lines(bytes, QStringLiteral("day.jsonl"));
  if (!read) FAIL(lardiner::problem::text(read.error()).toStdString());
  return *read;
}

inline QString json_error(const QByteArray& bytes) {
  const auto read = lardiner::reader::read_json_lines(bytes, QStringLiteral("day.jsonl"));
  return read ? QStringLiteral("accepted") : lardiner::problem::text(read.error());
}
