// The runs in other locales are what they claim: C, German and Turkish habits are really in force.
#include <QLocale>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <cwctype>
#include <string>

#include "show.h"

namespace {

std::string one_and_a_half() {
  std::array<char, 8> text{};
  std::snprintf(text.data(), text.size(), "%.1f", 1.5);
  return text.data();
}

}  // namespace

TEST_CASE("a run meant for a locale has its decimal sign and its capital of i", "[guards][locale]") {
  const char* meant = std::getenv("LARDINER_TEST_LOCALE");
  const std::string locale = meant == nullptr ? "C" : meant;
  if (meant != nullptr && locale != "C") CHECK(QLocale().name().toStdString() + ".UTF-8" == locale);

  if (locale == "de_DE.UTF-8" || locale == "tr_TR.UTF-8") {
    CHECK(one_and_a_half() == "1,5");
  } else {
    CHECK(one_and_a_half() == "1.5");
  }
  CHECK(std::towupper(L'i') == (locale == "tr_TR.UTF-8" ? L'\u0130' : L'I'));
}
