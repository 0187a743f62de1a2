// Instants and days in the ledger's text.
#pragma once

#include <QDateTime>
#include <QString>
#include <optional>

namespace lardiner::batch {

/// "2026-11-25T12:40:00Z": whole seconds of UTC.
QString instant_json(const QDateTime& instant);

// Nothing for any text that the program would not write.
std::optional<QDateTime> instant_from(const QString& text);
/// "2026-11-25"
std::optional<QDate> day_from(const QString& text);

}  // namespace lardiner::batch
