// The entry of every test program, compiled once; it runs in the locale of the environment, as the program does.
#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>
#include <clocale>
#include <cstdlib>
#include <cstring>
#include <iostream>

// LARDINER_TEST_LOCALE names the locale that a run is meant for: where it did not take, the tests would prove nothing.
int main(int count, char* arguments[]) {
  const char* taken = std::setlocale(LC_ALL, "");
  const char* meant = std::getenv("LARDINER_TEST_LOCALE");
  if (meant != nullptr && (taken == nullptr || std::strcmp(taken, meant) != 0)) {
    std::cerr << "the locale " << meant << " did not take; localedef has to make it and LOCPATH to name its folder\n";
    return 1;
  }
  return Catch::Session().run(count, arguments);
}
