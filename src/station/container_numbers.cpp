// The numbers of containers as a form has them.
#include "station/container_numbers.h"

#include <QRegularExpression>

namespace lardiner::station {

namespace {

constexpr size_t kMost = 10'000;

}  // namespace

problem::Expected<std::vector<int>> container_numbers(const QStringList& texts) {
  static const QRegularExpression form(QStringLiteral("^([0-9]{1,5})(?:-([0-9]{1,5}))?$"));
  std::vector<int> all;
  for (const QString& text : texts) {
    if (text.trimmed().isEmpty()) continue;
    for (const QString& part : text.split(u',')) {
      const QString one = part.simplified().remove(u' ');
      const auto read = form.match(one);
      const int from = read.captured(1).toInt();
      const int to = read.captured(2).isEmpty() ? from : read.captured(2).toInt();
      if (!read.hasMatch() || from < 1 || to < from || all.size() + size_t(to - from) >= kMost)
        return tl::unexpected(problem::Error{problem::Code::Malformed,
                                             QStringLiteral("\"%1\" are no numbers of containers").arg(text.trimmed()),
                                             {},
                                             QStringLiteral("write them as 1-4, 9; leave them out for all")});
      for (int number = from; number <= to; ++number) all.push_back(number);
    }
  }
  return all;
}

}  // namespace lardiner::station
