// The texts of what is refused.
#pragma once

#include <QSize>

#include "problem/error.h"

namespace lardiner::scan {

using Refusal = tl::unexpected<problem::Error>;

Refusal refused_as_empty(const QString& name);
Refusal refused_as_unknown(const QString& name);
Refusal refused_as_cut_short(const QString& name);
Refusal refused_as_damaged(const QString& name);
Refusal refused_as_locked(const QString& name);
Refusal refused_as_long(const QString& name, qsizetype bytes, qsizetype most);
Refusal refused_as_large(const QString& name, QSize pixels, qint64 most);
Refusal refused_as_slow(const QString& name, int scans);
Refusal refused_as_large_page(const QString& name, int page, qint64 most);
Refusal refused_as_many_pages(const QString& name, int pages, int most);
Refusal refused_as_deep(const QString& name, qint64 bytes, qint64 most);

// Of a child process that was to read it.
Refusal refused_as_endless(const QString& name, int seconds);
Refusal refused_as_greedy(const QString& name, qint64 most);
Refusal refused_as_breaking(const QString& name, qint64 most);
Refusal refused_as_not_started(const QString& name);

}  // namespace lardiner::scan
