// The shipped rules as the tests of the book read them.
#pragma once

#include <QFile>
#include <QString>

#include "book/allergen.h"
#include "book/rule_set.h"
#include "show.h"

namespace rules_test {

inline QByteArray shipped(const char* name) {
  QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/templates/rules/") + QLatin1String(name));
  REQUIRE(file.open(QIODevice::ReadOnly));
  return file.readAll();
}

inline lardiner::book::RuleSet rule_set(const char* name) {
  auto read = lardiner::book::read_rule_set(shipped(name), QLatin1String(name));
  if (!read) FAIL(lardiner::problem::text(read.error()).toStdString());
  return *read;
}

inline lardiner::book::RuleSet food_code() { return rule_set("us-fda-food-code-2022.toml"); }
inline lardiner::book::RuleSet invented_county() { return rule_set("invented-county.toml"); }

inline lardiner::book::AllergenLaw allergen_law() {
  auto read = lardiner::book::read_allergen_law(shipped("allergens.toml"), QStringLiteral("allergens.toml"));
  if (!read) FAIL(lardiner::problem::text(read.error()).toStdString());
  return *read;
}

}  // namespace rules_test
