// What the shipped faces can print: composes a text and refuses what would come out as a box, or unshaped.
#include "paper/printable.h"

#include <algorithm>

#include "paper/face.h"

namespace lardiner::paper {

namespace {

const char* shaped_script(char32_t c) {
  const auto* found = std::find_if(kNeedShaping.begin(), kNeedShaping.end(),
                                   [script = QChar::script(c)](const NamedScript& s) { return s.script == script; });
  return found == kNeedShaping.end() ? nullptr : found->name;
}

bool is_mark(char32_t c) {
  const QChar::Category category = QChar::category(c);
  return category == QChar::Mark_NonSpacing || category == QChar::Mark_SpacingCombining ||
         category == QChar::Mark_Enclosing;
}

// Controls, formatting codes, surrogates, private use: nothing that a reader could see or that means the same
// elsewhere.
bool is_no_letter(char32_t c) {
  const QChar::Category category = QChar::category(c);
  return category == QChar::Other_Control || category == QChar::Other_Format || category == QChar::Other_Surrogate ||
         category == QChar::Other_PrivateUse || category == QChar::Other_NotAssigned;
}

bool is_never_printed(char32_t c) { return is_mark(c) || is_no_letter(c) || shaped_script(c) != nullptr; }

QString shown(char32_t c) {
  const QString number = QStringLiteral("U+%1").arg(static_cast<uint>(c), 4, 16, QLatin1Char('0')).toUpper();
  if (is_mark(c) || is_no_letter(c) || QChar::isSpace(c)) return number;
  return QString::fromUcs4(&c, 1) + QStringLiteral(" (") + number + QStringLiteral(")");
}

// What prints nothing would break the error's line or turn it round.
QString shown(const QString& text) {
  QString out;
  for (const char32_t c : text.toUcs4()) out += QString::fromUcs4(is_no_letter(c) ? U"\uFFFD" : &c, 1);
  return out;
}

problem::Error refusal(const QString& text, qsizetype place, char32_t c) {
  QString why = QStringLiteral("which the label faces do not have");
  QString hint = QStringLiteral("write it in Latin, Greek, Cyrillic or Chinese characters, digits and common signs");
  if (const char* script = shaped_script(c)) {
    why = QStringLiteral("and %1 script cannot be set on labels").arg(QLatin1String(script));
  } else if (QChar::script(c) == QChar::Script_Han) {
    hint = QStringLiteral("write it otherwise, or add it to the Chinese faces with fonts/make-subsets");
  } else if (is_mark(c)) {
    why = QStringLiteral("a combining mark that makes no single letter with the one before it");
    hint = QStringLiteral("use a letter that has its accent in it, or leave the mark out");
  } else if (is_no_letter(c)) {
    why = QStringLiteral("which is a control code and prints nothing");
    hint = QStringLiteral("delete it");
  }
  return {problem::Code::NoGlyph,
          QStringLiteral("\"%1\" has %2 as character %3, %4").arg(shown(text), shown(c)).arg(place).arg(why),
          {},
          hint};
}

}  // namespace

bool Faces::prints(char32_t c) const {
  if (c <= 0xFFFF && is_invisible(static_cast<char16_t>(c))) return true;
  if (is_never_printed(c)) return false;
  return std::any_of(kFamilies.begin(), kFamilies.end(), [&](Family family) { return has(family, c); });
}

problem::Expected<QString> Faces::printable(const QString& text) const {
  const QString composed = text.normalized(QString::NormalizationForm_C);
  qsizetype place = 0;
  for (char32_t c : composed.toUcs4()) {
    ++place;
    if (prints(c)) continue;
    if (is_never_printed(c)) return tl::unexpected(refusal(composed, place, c));
    for (Family family : kFamilies)  // a face that cannot be read may have it
      if (const auto& unread = fault(family)) return tl::unexpected(*unread);
    return tl::unexpected(refusal(composed, place, c));
  }
  return composed;
}

}  // namespace lardiner::paper
