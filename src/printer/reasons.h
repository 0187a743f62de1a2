// What keeps a printer or a job, in plain words.
#pragma once

#include <QString>
#include <QStringList>

namespace lardiner::printer {

/// The words for keywords of printer-state-reasons and job-state-reasons, in their order, each once:
/// "media-empty-error" is "out of labels". What says nothing to a cook ("none", "job-printing") is left out; a keyword
/// without words here stays as it is. Source: RFC 8011, 5.3.8 and 5.4.12; PWG 5100.7 and 5100.9 for the further ones.
QStringList in_words(const QStringList& reasons);

}  // namespace lardiner::printer
