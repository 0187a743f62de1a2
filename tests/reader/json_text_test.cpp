// Tests of reader/json_text: what is written, as Qt's own JSON reads it.
#include "reader/json_text.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <limits>
#include <random>

#include "show.h"

using namespace lardiner::reader;

namespace {

// Letters that JSON writes otherwise among some that it does not.
QString random_text(std::mt19937& random) {
  static const QString kLetters =
      QStringLiteral("aé\"\\/\b\n\t\x01\x1f\x7f u20ac €ß中{}[],:") + QChar(0) + QChar(0x2028);
  QString text;
  for (auto left = random() % 12; left > 0; --left) text += kLetters[static_cast<int>(random() % kLetters.size())];
  if (random() % 3 == 0) text += QString::fromUcs4(U"\x1F36B", 1);
  return text;
}

}  // namespace

TEST_CASE("texts, numbers, lists and objects are what Qt reads of them", "[reader][json_text][property]") {
  std::mt19937 random(1);
  for (int round = 0; round < 500; ++round) {
    const QString first = random_text(random), second = random_text(random);
    const qint64 number = static_cast<qint64>(random()) * static_cast<qint64>(random() % 1'000'000);
    JsonText text;
    text.begin_object();
    text.key(QLatin1String("first"));
    text.text(first);
    text.key(QLatin1String("list"));
    text.begin_list();
    text.number(number);
    text.truth(round % 2 == 0);
    text.word(QLatin1String("use-by"));
    text.begin_object();
    text.end_object();
    text.text(second);
    text.end_list();
    text.end_object();
    QJsonParseError fault;
    const QJsonObject read = QJsonDocument::fromJson(text.bytes(), &fault).object();
    REQUIRE(fault.error == QJsonParseError::NoError);
    CHECK(read == QJsonObject{{QStringLiteral("first"), first},
                              {QStringLiteral("list"),
                               QJsonArray{number, round % 2 == 0, QStringLiteral("use-by"), QJsonObject(), second}}});
  }
}

TEST_CASE("whole numbers keep their last figure", "[reader][json_text]") {
  JsonText text;
  text.begin_list();
  text.number(std::numeric_limits<qint64>::min());
  text.number(std::numeric_limits<qint64>::max());
  text.end_list();
  CHECK(text.bytes() == "[-9223372036854775808,9223372036854775807]");
}

TEST_CASE("half of a surrogate pair is no reason to lose the rest", "[reader][json_text]") {
  JsonText text;
  text.begin_list();
  text.text(QStringLiteral("tub ") + QChar(0xD83C) + QStringLiteral(" three"));
  text.end_list();
  const QString read = QJsonDocument::fromJson(text.bytes()).array().first().toString();
  CHECK(read.startsWith(QStringLiteral("tub ")));
  CHECK(read.endsWith(QStringLiteral(" three")));
  CHECK_FALSE(read.contains(QChar(0xD83C)));
}
