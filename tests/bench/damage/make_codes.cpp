// Codes as modules: each line of the input is a level and a content, each of the output the modules a side and 0s and
// 1s.
#include <iostream>
#include <string>

#include "symbol/qr.h"

using namespace lardiner;

namespace {

std::string modules_of(const symbol::Matrix& code) {
  std::string all;
  for (int y = 0; y < code.size; ++y)
    for (int x = 0; x < code.size; ++x) all += code.dark(x, y) ? '1' : '0';
  return all;
}

}  // namespace

int main() {
  const std::string levels = "LMQH";
  for (std::string line; std::getline(std::cin, line);) {
    const size_t level = line.empty() ? std::string::npos : levels.find(line[0]);
    if (level == std::string::npos || line.size() < 3) return 2;
    const auto code = symbol::encode_qr(QByteArray::fromStdString(line.substr(2)), symbol::ErrorCorrection(level));
    if (!code) return 1;
    std::cout << code->size << ' ' << modules_of(*code) << std::endl;
  }
}
