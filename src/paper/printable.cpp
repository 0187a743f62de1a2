// What the shipped faces can print: composes a text and refuses what would come out as a box, or unshaped.
#include <algorithm>

#include "paper/face.h"

namespace lardiner::paper {

namespace {

struct ScriptName {
  QChar::Script script;
  const char* name;
};

// Scripts whose letters join, reorder or run from right to left: no face alone can print them right.
constexpr std::array kNeedShaping = {ScriptName{QChar::Script_Arabic, "Arabic"},
                                     ScriptName{QChar::Script_Hebrew, "Hebrew"},
                                     ScriptName{QChar::Script_Syriac, "Syriac"},
                                     ScriptName{QChar::Script_Thaana, "Thaana"},
                                     ScriptName{QChar::Script_Nko, "N'Ko"},
                                     ScriptName{QChar::Script_Devanagari, "Devanagari"},
                                     ScriptName{QChar::Script_Bengali, "Bengali"},
                                     ScriptName{QChar::Script_Gurmukhi, "Gurmukhi"},
                                     ScriptName{QChar::Script_Gujarati, "Gujarati"},
                                     ScriptName{QChar::Script_Oriya, "Odia"},
                                     ScriptName{QChar::Script_Tamil, "Tamil"},
                                     ScriptName{QChar::Script_Telugu, "Telugu"},
                                     ScriptName{QChar::Script_Kannada, "Kannada"},
                                     ScriptName{QChar::Script_Malayalam, "Malayalam"},
                                     ScriptName{QChar::Script_Sinhala, "Sinhala"},
                                     ScriptName{QChar::Script_Thai, "Thai"},
                                     ScriptName{QChar::Script_Lao, "Lao"},
                                     ScriptName{QChar::Script_Tibetan, "Tibetan"},
                                     ScriptName{QChar::Script_Myanmar, "Myanmar"},
                                     ScriptName{QChar::Script_Khmer, "Khmer"},
                                     ScriptName{QChar::Script_Mongolian, "Mongolian"},
                                     ScriptName{QChar::Script_Javanese, "Javanese"},
                                     ScriptName{QChar::Script_Balinese, "Balinese"},
                                     ScriptName{QChar::Script_Ethiopic, "Ethiopic"}};

const char* shaped_script(char32_t c) {
  const auto* found = std::find_if(kNeedShaping.begin(), kNeedShaping.end(),
                                   [script = QChar::script(c)](const ScriptName& s) { return s.script == script; });
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

QString shown(char32_t c) {
  const QString number = QStringLiteral("U+%1").arg(static_cast<uint>(c), 4, 16, QLatin1Char('0')).toUpper();
  if (is_mark(c) || is_no_letter(c) || QChar::isSpace(c)) return number;
  return QString::fromUcs4(&c, 1) + QStringLiteral(" (") + number + QStringLiteral(")");
}

problem::Error refusal(const QString& text, qsizetype place, char32_t c) {
  QString why = QStringLiteral("which the label faces do not have");
  QString hint = QStringLiteral("write it in Latin letters, digits and common signs");
  if (const char* script = shaped_script(c)) {
    why = QStringLiteral("and %1 script cannot be set on labels").arg(QLatin1String(script));
  } else if (is_mark(c)) {
    why = QStringLiteral("a combining mark that makes no single letter with the one before it");
    hint = QStringLiteral("use a letter that has its accent in it, or leave the mark out");
  } else if (is_no_letter(c)) {
    why = QStringLiteral("which is a control code and prints nothing");
    hint = QStringLiteral("delete it");
  }
  return {problem::Code::NoGlyph,
          QStringLiteral("\"%1\" has %2 as character %3, %4").arg(text, shown(c)).arg(place).arg(why),
          {},
          hint};
}

}  // namespace

bool Faces::prints(char32_t c) const {
  if (c <= 0xFFFF && is_invisible(static_cast<char16_t>(c))) return true;
  if (is_mark(c) || is_no_letter(c) || shaped_script(c)) return false;
  return std::all_of(faces_.begin(), faces_.end(), [c](const Face& face) { return face.glyph(c) != nullptr; });
}

problem::Expected<QString> Faces::printable(const QString& text) const {
  const QString composed = text.normalized(QString::NormalizationForm_C);
  qsizetype place = 0;
  for (char32_t c : composed.toUcs4()) {
    ++place;
    if (!prints(c)) return tl::unexpected(refusal(composed, place, c));
  }
  return composed;
}

}  // namespace lardiner::paper
