// GNU units, an independent program, as a reference for conversions.
#pragma once

#include <QProcess>
#include <QProcessEnvironment>

#include "show.h"

namespace lardiner::test_support {

/// What GNU units answers for `have` in `want`; fails the test when the program is not there.
inline double gnu_units(const QStringList& have_want) {
  QProcess units;
  QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
  environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("C"));
  environment.insert(QStringLiteral("UNITS_ENGLISH"), QStringLiteral("US"));
  units.setProcessEnvironment(environment);
  units.start(QStringLiteral("units"),
              QStringList{QStringLiteral("-t"), QStringLiteral("-o"), QStringLiteral("%.16g")} + have_want);
  if (!units.waitForStarted()) FAIL("the program \"units\" is missing: install Debian's package units");
  REQUIRE(units.waitForFinished());
  bool read = false;
  const double answer = QString::fromLatin1(units.readAllStandardOutput()).trimmed().toDouble(&read);
  REQUIRE(read);
  return answer;
}

}  // namespace lardiner::test_support
