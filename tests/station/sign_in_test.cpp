// Sessions: who gets one, when it ends, and how many guesses anybody has.
#include "station/sign_in.h"

#include <QSet>
#include <algorithm>
#include <atomic>
#include <random>
#include <thread>

#include "pins_file.h"

using namespace lardiner;
using namespace lardiner::station;
using Why = Refusal::Why;

namespace {

const QString kMK = QStringLiteral("MK");
const QString kAB = QStringLiteral("AB");
const QString kNobody = QStringLiteral("ZZ");
const QString kPin = QStringLiteral("4071");
const QString kPinOfAB = QStringLiteral("59024");
const QString kWrong = QStringLiteral("4072");
const QString kWord = QStringLiteral("lid marrow ferry");
const QDateTime kMorning(QDate(2026, 11, 25), QTime(7, 0), Qt::UTC);

constexpr qint64 kMinute = 60;
constexpr qint64 kHour = 3600;

QDateTime after(qint64 seconds) { return kMorning.addSecs(seconds); }

struct Station {
  PinsFile file;
  SignInLimits limits;
  SignIn sign_in;

  explicit Station(const SignInLimits& with = {}, Random random = random_of_system)
      : limits(with), sign_in(*file.pins, std::move(random), with) {
    REQUIRE(file.pins->set(kMK, kPin));
    REQUIRE(file.pins->set(kAB, kPinOfAB));
    REQUIRE(file.pins->set_strong(kMK, kWord));
  }

  QByteArray token(const QString& initials, const QString& pin, const QDateTime& now = kMorning) {
    const auto begun = sign_in.begin(initials, pin, now);
    REQUIRE(begun);
    return begun->token;
  }
  Refusal refusal(const QString& initials, const QString& pin, const QDateTime& now) {
    const auto begun = sign_in.begin(initials, pin, now);
    REQUIRE_FALSE(begun);
    return begun.error();
  }
  bool is_in(const QByteArray& token, const QDateTime& now) { return sign_in.find(token, now).has_value(); }
  void guess(const QString& initials, int times, const QDateTime& now = kMorning) {
    for (int time = 0; time < times; ++time) REQUIRE(refusal(initials, kWrong, now).why == Why::Wrong);
  }
};

}  // namespace

TEST_CASE("a name and its PIN begin a session, which is found by its token alone", "[station][sign_in]") {
  Station station;
  const auto begun = station.sign_in.begin(kMK, kPin, kMorning);
  REQUIRE(begun);
  CHECK(begun->who.initials == kMK);
  CHECK_FALSE(begun->who.strong);
  CHECK(begun->who.until == after(15 * kMinute));

  const auto who = station.sign_in.find(begun->token, after(kMinute));
  REQUIRE(who);
  CHECK(who->initials == kMK);
  CHECK(who->csrf == begun->who.csrf);
  CHECK(who->until == after(16 * kMinute));

  QByteArray other = begun->token;
  other[0] = other[0] == 'A' ? 'B' : 'A';
  CHECK_FALSE(station.is_in(other, after(kMinute)));
  CHECK_FALSE(station.is_in(begun->token.left(42), after(kMinute)));
  CHECK_FALSE(station.is_in(begun->token + ' ', after(kMinute)));
  CHECK_FALSE(station.is_in(QByteArray(), after(kMinute)));
  CHECK_FALSE(station.is_in(begun->who.csrf, after(kMinute)));
}

TEST_CASE("a wrong name and a wrong PIN are answered alike, also when too many of them were given",
          "[station][sign_in]") {
  Station station;
  for (int time = 1; time <= 6; ++time) {
    const Refusal name = station.refusal(kNobody, kPin, kMorning);
    const Refusal pin = station.refusal(kMK, kWrong, kMorning);
    CHECK(name.why == (time <= 5 ? Why::Wrong : Why::Locked));
    CHECK(name.why == pin.why);
    CHECK(name.locked_until == pin.locked_until);
    CHECK(name.locked_until.isValid() == (time >= 5));
    CHECK_FALSE(name.error);
    CHECK_FALSE(pin.error);
  }
}

TEST_CASE("tokens are 256 bits each and never the same", "[station][sign_in]") {
  Station station;
  QSet<QByteArray> all;
  for (int time = 0; time < 500; ++time) {
    const auto begun = station.sign_in.begin(kMK, kPin, kMorning);
    REQUIRE(begun);
    CHECK(QByteArray::fromBase64(begun->token, QByteArray::Base64UrlEncoding).size() == 32);
    CHECK(QByteArray::fromBase64(begun->who.csrf, QByteArray::Base64UrlEncoding).size() == 32);
    all << begun->token << begun->who.csrf;
  }
  CHECK(all.size() == 1000);
}

TEST_CASE("the token is what the random source gives, and without one no session begins", "[station][sign_in]") {
  qsizetype asked = 0;
  Station whole({}, [&asked](qsizetype bytes) {
    asked = bytes;
    return QByteArray(32, 'a') + QByteArray(32, 'b');
  });
  const auto begun = whole.sign_in.begin(kMK, kPin, kMorning);
  REQUIRE(begun);
  CHECK(asked == 64);
  CHECK(QByteArray::fromBase64(begun->token, QByteArray::Base64UrlEncoding) == QByteArray(32, 'a'));

  Station broken({}, [](qsizetype bytes) { return QByteArray(bytes - 1, 'a'); });
  const Refusal refusal = broken.refusal(kMK, kPin, kMorning);
  CHECK(refusal.why == Why::Failed);
  REQUIRE(refusal.error);
  CHECK(problem::text(*refusal.error) ==
        QStringLiteral(
            "there are no random numbers to begin a session with\n  see that the system gives random numbers"));
}

TEST_CASE("a form of one session is refused in another, of the same person too", "[station][sign_in]") {
  Station station;
  const QByteArray mine = station.token(kMK, kPin);
  const QByteArray again = station.token(kMK, kPin);
  const QByteArray others = station.token(kAB, kPinOfAB);
  const auto who = station.sign_in.find(mine, kMorning);
  REQUIRE(who);
  CHECK(SignIn::csrf_matches(*who, who->csrf));
  CHECK_FALSE(SignIn::csrf_matches(*who, station.sign_in.find(again, kMorning)->csrf));
  CHECK_FALSE(SignIn::csrf_matches(*who, station.sign_in.find(others, kMorning)->csrf));
  CHECK_FALSE(SignIn::csrf_matches(*who, QByteArray()));
  CHECK_FALSE(SignIn::csrf_matches(*who, who->csrf.left(42)));
  CHECK_FALSE(SignIn::csrf_matches(*who, who->csrf + 'A'));
  CHECK_FALSE(SignIn::csrf_matches(*who, mine));
  CHECK_FALSE(SignIn::csrf_matches(Who{}, QByteArray()));
}

TEST_CASE("each token is its own person's", "[station][sign_in]") {
  Station station;
  const QByteArray mine = station.token(kMK, kPin);
  const QByteArray others = station.token(kAB, kPinOfAB);
  CHECK(station.sign_in.find(mine, kMorning)->initials == kMK);
  CHECK(station.sign_in.find(others, kMorning)->initials == kAB);
}

TEST_CASE("a session ends when 15 minutes have passed unused", "[station][sign_in]") {
  Station station;
  const QByteArray used = station.token(kMK, kPin);
  CHECK(station.is_in(used, after(15 * kMinute - 1)));
  CHECK(station.is_in(used, after(15 * kMinute)));  // the use before counts
  CHECK(station.is_in(used, after(30 * kMinute - 1)));

  const QByteArray unused = station.token(kMK, kPin);
  CHECK_FALSE(station.is_in(unused, after(15 * kMinute)));
  CHECK_FALSE(station.is_in(unused, after(15 * kMinute - 1)));  // ended is ended
}

TEST_CASE("a session ends after 12 hours however it is used", "[station][sign_in]") {
  Station station;
  const QByteArray token = station.token(kMK, kPin);
  for (qint64 minutes = 10; minutes < 12 * 60; minutes += 10) REQUIRE(station.is_in(token, after(minutes * kMinute)));
  const auto last = station.sign_in.find(token, after(12 * kHour - 1));
  REQUIRE(last);
  CHECK(last->until == after(12 * kHour));
  CHECK_FALSE(station.is_in(token, after(12 * kHour)));
}

TEST_CASE("a session does not outlive a clock set back before it began", "[station][sign_in]") {
  Station station;
  const QByteArray token = station.token(kMK, kPin);
  CHECK(station.is_in(token, kMorning));
  CHECK_FALSE(station.is_in(token, after(-1)));
}

TEST_CASE("signing in on the same tablet ends the session before; a wrong PIN does not", "[station][sign_in]") {
  Station station;
  const QByteArray mine = station.token(kMK, kPin);
  REQUIRE_FALSE(station.sign_in.begin(kAB, kWrong, kMorning, mine));
  CHECK(station.is_in(mine, kMorning));
  const auto others = station.sign_in.begin(kAB, kPinOfAB, kMorning, mine);
  REQUIRE(others);
  CHECK_FALSE(station.is_in(mine, kMorning));
  CHECK(station.is_in(others->token, kMorning));
}

TEST_CASE("end ends one session; a PIN set anew, or taken out, all of that person's", "[station][sign_in]") {
  Station station;
  const QByteArray first = station.token(kMK, kPin);
  const QByteArray second = station.token(kMK, kPin);
  const QByteArray third = station.token(kMK, kPin);
  const QByteArray others = station.token(kAB, kPinOfAB);
  station.sign_in.end(first);
  station.sign_in.end("none");
  CHECK_FALSE(station.is_in(first, kMorning));
  CHECK(station.is_in(second, kMorning));
  REQUIRE(station.file.pins->set(kMK, QStringLiteral("5082")));
  CHECK_FALSE(station.is_in(second, kMorning));
  CHECK_FALSE(station.is_in(third, kMorning));
  CHECK(station.is_in(others, kMorning));
  const QByteArray fourth = station.token(kMK, QStringLiteral("5082"));
  REQUIRE(station.file.pins->forget(kMK));
  CHECK_FALSE(station.is_in(fourth, kMorning));
  CHECK(station.is_in(others, kMorning));
}

TEST_CASE("the strong word holds for 10 minutes and for its session alone", "[station][sign_in]") {
  Station station;
  const QByteArray token = station.token(kMK, kPin);
  const QByteArray again = station.token(kMK, kPin);
  const auto strong = station.sign_in.strengthen(token, kWord, after(kMinute));
  REQUIRE(strong);
  CHECK(strong->strong);
  CHECK(strong->strong_until == after(11 * kMinute));
  CHECK(station.sign_in.find(token, after(11 * kMinute - 1))->strong);
  CHECK_FALSE(station.sign_in.find(again, after(2 * kMinute))->strong);
  const auto weak = station.sign_in.find(token, after(11 * kMinute));
  REQUIRE(weak);
  CHECK_FALSE(weak->strong);
  CHECK_FALSE(weak->strong_until.isValid());
}

TEST_CASE("a wrong strong word, a PIN, another's word or an ended session make nobody strong", "[station][sign_in]") {
  Station station;
  const QByteArray token = station.token(kMK, kPin);
  const QByteArray others = station.token(kAB, kPinOfAB);
  CHECK(station.sign_in.strengthen(token, kPin, kMorning).error().why == Why::Wrong);
  CHECK(station.sign_in.strengthen(token, QString(), kMorning).error().why == Why::Wrong);
  CHECK(station.sign_in.strengthen(others, kWord, kMorning).error().why == Why::Wrong);
  CHECK(station.sign_in.strengthen("none", kWord, kMorning).error().why == Why::NoSession);
  CHECK_FALSE(station.sign_in.find(token, kMorning)->strong);
  CHECK(station.sign_in.strengthen(token, kWord, after(15 * kMinute)).error().why == Why::NoSession);
}

TEST_CASE("five wrong strong words lock the word out, not the PIN", "[station][sign_in]") {
  Station station;
  const QByteArray token = station.token(kMK, kPin);
  for (int time = 0; time < 5; ++time)
    CHECK(station.sign_in.strengthen(token, kWrong, kMorning).error().why == Why::Wrong);
  const auto locked = station.sign_in.strengthen(token, kWord, after(kMinute - 1));
  REQUIRE_FALSE(locked);
  CHECK(locked.error().why == Why::Locked);
  CHECK(locked.error().locked_until == after(kMinute));
  CHECK(station.sign_in.begin(kMK, kPin, kMorning));
  CHECK(station.sign_in.strengthen(token, kWord, after(kMinute)));
}

TEST_CASE("the fifth wrong PIN locks the person out for a minute, the right PIN too", "[station][sign_in]") {
  Station station;
  station.guess(kMK, 4);
  CHECK_FALSE(station.refusal(kMK, kPinOfAB, kMorning).locked_until == QDateTime());
  for (const QString& pin : {kPin, kWrong}) {
    const Refusal locked = station.refusal(kMK, pin, after(kMinute - 1));
    CHECK(locked.why == Why::Locked);
    CHECK(locked.locked_until == after(kMinute));
  }
  CHECK(station.sign_in.begin(kMK, kPin, after(kMinute)));
}

TEST_CASE("four wrong PINs lock nobody out", "[station][sign_in]") {
  Station station;
  station.guess(kMK, 4);
  CHECK(station.sign_in.begin(kMK, kPin, kMorning));
}

TEST_CASE("a person's own right PINs neither forgive wrong ones nor keep them from being forgotten",
          "[station][sign_in]") {
  Station station;
  station.guess(kMK, 5);
  for (qint64 minutes = 1; minutes < 31; ++minutes) REQUIRE(station.sign_in.begin(kMK, kPin, after(minutes * kMinute)));
  CHECK(station.refusal(kMK, kWrong, after(31 * kMinute - 1)).locked_until == after(33 * kMinute - 1));

  Station later;
  later.guess(kMK, 5);
  for (qint64 minutes = 1; minutes < 151; ++minutes) REQUIRE(later.sign_in.begin(kMK, kPin, after(minutes * kMinute)));
  later.guess(kMK, 4, after(151 * kMinute));  // all five forgotten
  CHECK(later.sign_in.begin(kMK, kPin, after(151 * kMinute)));
}

TEST_CASE("who is locked out keeps the session that is open, and nobody else waits", "[station][sign_in]") {
  Station station;
  const QByteArray token = station.token(kMK, kPin);
  station.guess(kMK, 5);
  REQUIRE(station.refusal(kMK, kPin, kMorning).why == Why::Locked);
  CHECK(station.is_in(token, kMorning));
  CHECK(station.sign_in.begin(kAB, kPinOfAB, kMorning));
}

TEST_CASE("each further wrong PIN doubles the wait, up to 30 minutes", "[station][sign_in]") {
  Station station;
  station.guess(kMK, 4);
  qint64 now = 0;
  for (const qint64 minutes : {1, 2, 4, 8, 16, 30, 30, 30}) {
    const Refusal wrong = station.refusal(kMK, kWrong, after(now));
    CHECK(wrong.why == Why::Wrong);
    CHECK(wrong.locked_until == after(now + minutes * kMinute));
    now += minutes * kMinute;
    CHECK(station.refusal(kMK, kPin, after(now - 1)).why == Why::Locked);
  }
  CHECK(station.sign_in.begin(kMK, kPin, after(now)));
}

TEST_CASE("one wrong PIN is forgotten every half hour, and none for a right one", "[station][sign_in]") {
  Station remembered;
  remembered.guess(kMK, 4);
  REQUIRE(remembered.sign_in.begin(kMK, kPin, after(30 * kMinute - 1)));
  CHECK(remembered.refusal(kMK, kWrong, after(30 * kMinute - 1)).locked_until.isValid());

  Station forgotten;
  forgotten.guess(kMK, 4);
  CHECK_FALSE(forgotten.refusal(kMK, kWrong, after(30 * kMinute)).locked_until.isValid());
  CHECK(forgotten.refusal(kMK, kWrong, after(30 * kMinute)).locked_until.isValid());

  Station locked;  // until the first minute: only from then on
  locked.guess(kMK, 5);
  CHECK(locked.refusal(kMK, kWrong, after(31 * kMinute - 1)).locked_until == after(33 * kMinute - 1));
  Station freed;
  freed.guess(kMK, 5);
  CHECK(freed.refusal(kMK, kWrong, after(31 * kMinute)).locked_until == after(32 * kMinute));

  Station all;
  all.guess(kMK, 4);
  all.guess(kMK, 4, after(2 * kHour));
  CHECK(all.sign_in.begin(kMK, kPin, after(2 * kHour)));
}

// Guesses that were looked at, in every span of `window` that ends with one of them, are at most `most`.
static bool at_most(const std::vector<qint64>& guesses, qint64 window, size_t most) {
  size_t first = 0;
  for (size_t last = 0; last < guesses.size(); ++last) {
    while (guesses[last] - guesses[first] >= window) ++first;
    if (last - first + 1 > most) return false;
  }
  return true;
}

TEST_CASE("no order of wrong and right PINs gives more than 11 guesses and 2 an hour", "[station][sign_in]") {
  for (unsigned seed = 1; seed <= 6; ++seed) {
    Station station;
    std::mt19937 chance(seed);
    const unsigned rights = seed % 4;  // of ten tries so many are the person's own
    const unsigned longest_pause = seed % 3 == 0 ? 2000 : 90;
    std::vector<qint64> guesses;
    for (qint64 now = 0; now < 24 * kHour; now += 1 + static_cast<qint64>(chance() % longest_pause)) {
      const bool right = chance() % 10 < rights;
      const auto begun = station.sign_in.begin(kMK, right ? kPin : kWrong, after(now));
      CHECK((begun.has_value() && right) != (!begun && (!right || begun.error().why == Why::Locked)));
      if (!begun && begun.error().why == Why::Wrong) guesses.push_back(now);
    }
    INFO(seed << ": " << guesses.size());
    CHECK(guesses.size() > 30);  // the person is not shut out for good either
    for (const qint64 hours : {1, 2, 5, 12, 24})
      CHECK(at_most(guesses, hours * kHour, 11 + 2 * static_cast<size_t>(hours)));
  }
}

TEST_CASE("whoever guesses as soon as they may, beside a person who signs in all the time, gets no further",
          "[station][sign_in]") {
  Station station;
  std::vector<qint64> guesses;
  for (qint64 now = 0; now < 24 * kHour; now += 90) {
    (void)station.sign_in.begin(kMK, kPin, after(now));
    for (int time = 0; time < 4; ++time) {
      const auto begun = station.sign_in.begin(kMK, kWrong, after(now));
      REQUIRE_FALSE(begun);
      if (begun.error().why == Why::Wrong) guesses.push_back(now);
    }
  }
  for (const qint64 hours : {1, 6, 24}) CHECK(at_most(guesses, hours * kHour, 11 + 2 * static_cast<size_t>(hours)));
}

TEST_CASE("guesses at the same time are no more guesses", "[station][sign_in]") {
  Station station;
  std::atomic<int> looked_at = 0;
  std::vector<std::thread> hands;
  for (int hand = 0; hand < 8; ++hand)
    hands.emplace_back([&] {
      for (int time = 0; time < 25; ++time) {
        const auto begun = station.sign_in.begin(kMK, kWrong, kMorning);
        if (!begun && begun.error().why == Why::Wrong) ++looked_at;
      }
    });
  for (std::thread& hand : hands) hand.join();
  CHECK(looked_at == 5);
}

TEST_CASE("many names that are nobody's take bounded room and free nobody", "[station][sign_in]") {
  SignInLimits few;
  few.unknown_names = 20;
  Station station(few);
  station.guess(kMK, 5);
  station.guess(kNobody, 5);
  for (int one = 0; one < 19; ++one) (void)station.sign_in.begin(QStringLiteral("N%1").arg(one), kWrong, after(1));
  CHECK(station.refusal(kNobody, kPin, after(2)).why == Why::Locked);
  (void)station.sign_in.begin(QStringLiteral("N19"), kWrong, after(2));
  CHECK(station.refusal(kNobody, kPin, after(3)).why == Why::Wrong);  // the longest untried went
  for (int one = 0; one < 500; ++one)
    (void)station.sign_in.begin(QString(1000, u'N').append(QString::number(one)), kWrong, after(4));
  CHECK(station.refusal(kMK, kPin, after(5)).why == Why::Locked);
}

TEST_CASE("beyond the most sessions the longest unused ends, and no other", "[station][sign_in]") {
  SignInLimits few;
  few.sessions = 3;
  Station station(few);
  const QByteArray first = station.token(kMK, kPin, after(0));
  const QByteArray second = station.token(kMK, kPin, after(1));
  const QByteArray third = station.token(kAB, kPinOfAB, after(2));
  REQUIRE(station.is_in(first, after(3)));
  const QByteArray fourth = station.token(kMK, kPin, after(4));
  CHECK(station.is_in(first, after(5)));
  CHECK_FALSE(station.is_in(second, after(5)));
  CHECK(station.is_in(third, after(5)));
  CHECK(station.is_in(fourth, after(5)));
}

TEST_CASE("a file that cannot be used lets nobody in and counts as no guess", "[station][sign_in]") {
  Station station;
  const QByteArray token = station.token(kMK, kPin);
  const QByteArray whole = station.file.bytes();
  station.file.put("{");
  for (int time = 0; time < 10; ++time) {
    const Refusal refusal = station.refusal(kMK, kPin, kMorning);
    CHECK(refusal.why == Why::Failed);
    REQUIRE(refusal.error);
    CHECK(refusal.error->code == problem::Code::Machine);
    CHECK(station.sign_in.strengthen(token, kWord, kMorning).error().why == Why::Failed);
  }
  station.file.put(whole);
  CHECK(station.sign_in.begin(kMK, kPin, kMorning));
  CHECK(station.sign_in.strengthen(token, kWord, kMorning));
}

TEST_CASE("the limits are those that the kitchen was told", "[station][sign_in]") {
  const SignInLimits limits;
  CHECK(limits.sessions == 10'000);
  CHECK(limits.unknown_names == 1'000);
}
