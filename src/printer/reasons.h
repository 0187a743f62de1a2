// What keeps a printer or a job, in plain words.
#pragma once

#include <QString>
#include <QStringList>

namespace lardiner::printer {

/// The words for keywords of printer-state-reasons and job-state-reasons, in their order, each once:
/// "media-empty-error" is "out of labels". What says nothing to a cook ("none", "job-printing") is left out; a keyword
/// without words here stays as it is. Source: RFC 8011, 5.3.8 and 5.4.12; PWG 5100.7 and 5100.9 for the further ones.
QStringList in_words(const QStringList& reasons);

/// Whether nothing comes out while the printer has this reason: labels that are out or jammed, a cover that is open.
/// How bad a printer says that it is does not count: some call every one of them a warning.
bool stops_printing(const QString& reason);

}  // namespace lardiner::printer
