// Text in columns of fixed-width letters, where an ideograph is as wide as two.
#pragma once

#include <QString>
#include <QStringList>

namespace lardiner::command {

/// Columns of a terminal that the text takes: two of a wide letter (Unicode East Asian Width W and F, by blocks), none
/// of a mark or joiner.
int columns_of(const QString& text);

/// `text` filled up with blanks to `width`, on its right or its left.
QString padded(const QString& text, int width, bool to_the_right = false);

/// Lines of at most `width` columns, broken at blanks, and within a word where it alone is wider. Never empty.
QStringList broken(const QString& text, int width);

}  // namespace lardiner::command
