// The shipped language packs, for the tests of this layer.
#pragma once

#include <QDir>
#include <QFile>

#include "show.h"
#include "words/pack.h"

namespace lardiner::words {

/// The languages of templates/words: el, en, es…
inline QStringList shipped_languages() {
  const QDir folder(QStringLiteral(LARDINER_SOURCE_DIR "/templates/words"));
  QStringList codes = folder.entryList({QStringLiteral("*.toml")}, QDir::Files, QDir::Name);
  for (QString& code : codes) code.chop(5);
  if (codes.size() < 8) throw std::runtime_error("language packs are missing");
  return codes;
}

inline QByteArray pack_bytes(const QString& code) {
  QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/templates/words/") + code + QStringLiteral(".toml"));
  if (!file.open(QIODevice::ReadOnly)) throw std::runtime_error("no language pack");
  return file.readAll();
}

/// The shipped pack; what is wrong with it fails the test.
inline Language shipped(const QString& code) {
  const auto read = read_language(pack_bytes(code), code + QStringLiteral(".toml"), code);
  if (!read) throw std::runtime_error(problem::text(read.error()).toStdString());
  return *read;
}

/// A date as it is read: word joiners show nothing, and a space that does not break is a space.
inline QString shown(QString date) { return date.remove(QChar(0x2060)).replace(QChar(0x00A0), u' '); }

/// A language that has no pack here, with English words.
inline Language unshipped(const QString& code) {
  QHash<QString, QString> words;
  for (const QString& key : keys(QStringLiteral("en"))) words.insert(key, shipped(QStringLiteral("en")).word(key));
  return Language(code, words, {});
}

}  // namespace lardiner::words
