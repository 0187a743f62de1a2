// The names of facts in templates and in errors.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>

#include "facts/label_facts.h"

namespace lardiner::facts {

/// "keep-at" for FactId::KeepAt.
QString name(FactId id);
std::optional<FactId> fact_named(const QString& name);
QStringList fact_names();

}  // namespace lardiner::facts
