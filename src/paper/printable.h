// The scripts that no face alone can print right.
#pragma once

#include <QChar>
#include <array>

namespace lardiner::paper {

struct NamedScript {
  QChar::Script script;
  const char* name;
};

/// Scripts whose letters join, reorder, stack or run from right to left: there is no shaping here.
inline constexpr std::array kNeedShaping = {NamedScript{QChar::Script_Arabic, "Arabic"},
                                            NamedScript{QChar::Script_Hebrew, "Hebrew"},
                                            NamedScript{QChar::Script_Syriac, "Syriac"},
                                            NamedScript{QChar::Script_Thaana, "Thaana"},
                                            NamedScript{QChar::Script_Nko, "N'Ko"},
                                            NamedScript{QChar::Script_Devanagari, "Devanagari"},
                                            NamedScript{QChar::Script_Bengali, "Bengali"},
                                            NamedScript{QChar::Script_Gurmukhi, "Gurmukhi"},
                                            NamedScript{QChar::Script_Gujarati, "Gujarati"},
                                            NamedScript{QChar::Script_Oriya, "Odia"},
                                            NamedScript{QChar::Script_Tamil, "Tamil"},
                                            NamedScript{QChar::Script_Telugu, "Telugu"},
                                            NamedScript{QChar::Script_Kannada, "Kannada"},
                                            NamedScript{QChar::Script_Malayalam, "Malayalam"},
                                            NamedScript{QChar::Script_Sinhala, "Sinhala"},
                                            NamedScript{QChar::Script_Thai, "Thai"},
                                            NamedScript{QChar::Script_Lao, "Lao"},
                                            NamedScript{QChar::Script_Tibetan, "Tibetan"},
                                            NamedScript{QChar::Script_Myanmar, "Myanmar"},
                                            NamedScript{QChar::Script_Khmer, "Khmer"},
                                            NamedScript{QChar::Script_Mongolian, "Mongolian"},
                                            NamedScript{QChar::Script_Javanese, "Javanese"},
                                            NamedScript{QChar::Script_Balinese, "Balinese"},
                                            NamedScript{QChar::Script_Ethiopic, "Ethiopic"}};

}  // namespace lardiner::paper
