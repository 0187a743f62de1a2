// A body without the fixed facts of its batch, so that lists need not read them.
#pragma once

#include <QByteArray>
#include <optional>

namespace lardiner::history {

/// The same JSON object without its key "facts"; nothing where it has none, or its value is no object. What lies inside
/// the facts is passed over and not checked. REQUIRES: compact JSON with "facts" neither first nor last, as `body`
/// writes it ("at" stands before it, "zone" behind).
std::optional<QByteArray> without_facts(const QByteArray& body);

}  // namespace lardiner::history
