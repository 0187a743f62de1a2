// The file of the PINs: what is taken, what is refused, and that a file that is not whole is never an empty one.
#include "station/pins.h"

#include <QFileInfo>
#include <thread>

#include "pins_file.h"

using namespace lardiner;
using namespace lardiner::station;

namespace {

const QString kMK = QStringLiteral("MK");
const QString kAB = QStringLiteral("AB");
const QString kPin = QStringLiteral("4071");
const QString kWord = QStringLiteral("lid marrow ferry");

const auto kOwnersAlone = QFile::ReadOwner | QFile::WriteOwner;

QFile::Permissions mode(const QString& path) {
  return QFileInfo(path).permissions() & ~(QFile::ReadUser | QFile::WriteUser | QFile::ExeUser);
}

QString damaged(const QString& path) {
  return path + QStringLiteral(
                    ": the file of the PINs is damaged; nothing of it was used\n"
                    "  bring it back from a copy, or move it away and set every PIN anew");
}

}  // namespace

TEST_CASE("a PIN that was set is the person's, and no other is", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  REQUIRE(file.pins->set(kAB, QStringLiteral("59024")));

  CHECK(file.pins->verify(kMK, kPin).value());
  CHECK_FALSE(file.pins->verify(kMK, QStringLiteral("4072")).value());
  CHECK_FALSE(file.pins->verify(kMK, QStringLiteral("40711")).value());
  CHECK_FALSE(file.pins->verify(kMK, QString()).value());
  CHECK_FALSE(file.pins->verify(kMK, QStringLiteral("59024")).value());
  CHECK_FALSE(file.pins->verify(kAB, kPin).value());
  CHECK_FALSE(file.pins->verify(QStringLiteral("mk"), kPin).value());
  CHECK_FALSE(file.pins->verify(QStringLiteral("ZZ"), kPin).value());
  CHECK(file.pins->has(kMK).value());
  CHECK_FALSE(file.pins->has(QStringLiteral("ZZ")).value());
}

TEST_CASE("a PIN set anew takes the place of the one before", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  REQUIRE(file.pins->set(kMK, QStringLiteral("8305")));
  CHECK(file.pins->verify(kMK, QStringLiteral("8305")).value());
  CHECK_FALSE(file.pins->verify(kMK, kPin).value());
}

TEST_CASE("what one program sets another knows at once", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  problem::Expected<Pins> other = Pins::at(file.path, kCheap);
  REQUIRE(other);
  CHECK(other->verify(kMK, kPin).value());
  REQUIRE(other->set(kAB, QStringLiteral("59024")));
  CHECK(file.pins->verify(kAB, QStringLiteral("59024")).value());
}

TEST_CASE("PINs set at the same time are all kept", "[station][pins]") {
  PinsFile file;
  std::vector<std::thread> hands;
  for (int hand = 0; hand < 4; ++hand)
    hands.emplace_back([&file, hand] {
      problem::Expected<Pins> pins = Pins::at(file.path, kCheap);
      for (int one = 0; one < 5; ++one) (void)pins->set(QStringLiteral("P%1%2").arg(hand).arg(one), kPin);
    });
  for (std::thread& hand : hands) hand.join();
  for (int hand = 0; hand < 4; ++hand)
    for (int one = 0; one < 5; ++one) CHECK(file.pins->has(QStringLiteral("P%1%2").arg(hand).arg(one)).value());
}

TEST_CASE("the strong word and the PIN stand for each other nowhere", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  CHECK_FALSE(file.pins->verify_strong(kMK, kWord).value());
  REQUIRE(file.pins->set_strong(kMK, kWord));
  CHECK(file.pins->verify_strong(kMK, kWord).value());
  CHECK(file.pins->verify(kMK, kPin).value());
  CHECK_FALSE(file.pins->verify_strong(kMK, kPin).value());
  CHECK_FALSE(file.pins->verify(kMK, kWord).value());
  CHECK_FALSE(file.pins->verify_strong(kMK, QStringLiteral("lid marrow ferrz")).value());
  CHECK_FALSE(file.pins->verify_strong(kAB, kWord).value());
}

TEST_CASE("a strong word is the same however a keyboard composes its accents", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set_strong(kMK, QStringLiteral("pur\u00e9e de lotte")));
  CHECK(file.pins->verify_strong(kMK, QStringLiteral("pure\u0301e de lotte")).value());
  CHECK_FALSE(file.pins->verify_strong(kMK, QStringLiteral("puree de lotte")).value());
}

TEST_CASE("who has left has no PIN", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  REQUIRE(file.pins->set_strong(kMK, kWord));
  REQUIRE(file.pins->set(kAB, kPin));
  CHECK(file.pins->forget(kMK).value());
  CHECK_FALSE(file.pins->verify(kMK, kPin).value());
  CHECK_FALSE(file.pins->verify_strong(kMK, kWord).value());
  CHECK(file.pins->verify(kAB, kPin).value());
  CHECK_FALSE(file.pins->forget(kMK).value());
}

TEST_CASE("a person's mark is another once the PIN or the strong word is, and no one else's", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  REQUIRE(file.pins->set(kAB, kPin));
  const QByteArray of_ab = file.pins->mark(kAB).value();
  QByteArray before = file.pins->mark(kMK).value();
  CHECK(before != of_ab);
  CHECK(file.pins->mark(kMK).value() == before);
  const auto is_another = [&] {
    const QByteArray now = file.pins->mark(kMK).value();
    const bool another = now != before;
    before = now;
    return another;
  };
  REQUIRE(file.pins->set(kMK, kPin));  // the same figures: who set them meant to end what was open
  CHECK(is_another());
  REQUIRE(file.pins->set_strong(kMK, kWord));
  CHECK(is_another());
  REQUIRE(file.pins->forget(kMK));
  CHECK(is_another());
  CHECK(file.pins->mark(kAB).value() == of_ab);
}

TEST_CASE("a PIN is 4 to 12 figures", "[station][pins]") {
  for (const char* good : {"4071", "590243", "407159836204"}) CHECK_FALSE(refused_pin(QString::fromLatin1(good)));
  for (const QString& bad :
       {QString(), QStringLiteral("407"), QStringLiteral("4071598362047"), QStringLiteral("40 71"),
        QStringLiteral("407a"), QStringLiteral("-4071"), QStringLiteral("\u0664\u0660\u0667\u0661")}) {
    INFO(bad.toStdString());
    REQUIRE(refused_pin(bad));
    CHECK(problem::text(*refused_pin(bad)) ==
          QStringLiteral("a PIN is 4 to 12 figures\n  choose 4 to 12 figures, without spaces or letters"));
  }
}

TEST_CASE("a PIN that anybody would try first is refused, its neighbour is not", "[station][pins]") {
  const std::vector<std::pair<const char*, const char*>> pairs = {{"0000", "0001"},
                                                                  {"1111", "1112"},
                                                                  {"1234", "1235"},
                                                                  {"4321", "4320"},
                                                                  {"7890", "7891"},
                                                                  {"2468", "2469"},
                                                                  {"1212", "1213"},
                                                                  {"2026", "2126"},
                                                                  {"1987", "1887"},
                                                                  {"123456", "123457"},
                                                                  {"9876543210", "9876543219"},
                                                                  {"123123", "123124"},
                                                                  {"40714071", "40714072"},
                                                                  {"070707", "070708"}};
  for (const auto& [bad, good] : pairs) {
    INFO(bad);
    CHECK_FALSE(refused_pin(QString::fromLatin1(good)));
    REQUIRE(refused_pin(QString::fromLatin1(bad)));
    CHECK(problem::text(*refused_pin(QString::fromLatin1(bad))) ==
          QStringLiteral("this PIN is among the first that anybody would try\n"
                         "  choose figures that are no year, no row such as 1234 or 2468, and nothing repeated such as "
                         "0000 or 1212"));
  }
}

TEST_CASE("a strong word is 8 to 128 characters and not figures alone", "[station][pins]") {
  for (const QString& good :
       {QStringLiteral("marrow-7"), QStringLiteral("4071598x"),
        QStringLiteral("\u9f99\u867e\u6c64\u9505\u76d6\u5b50\u4e8c\u53f7"), kWord + QString(112, u'x')})
    CHECK_FALSE(refused_strong_word(good));
  for (const QString& bad :
       {QString(), QStringLiteral("marrow7"), QStringLiteral("407159836204"), kWord + QString(113, u'x')}) {
    REQUIRE(refused_strong_word(bad));
    CHECK(problem::text(*refused_strong_word(bad)) ==
          QStringLiteral("a strong word is 8 to 128 characters, not figures alone\n"
                         "  choose three or four words that do not belong together"));
  }
  REQUIRE(refused_strong_word(QStringLiteral("abcabcabc")));
  CHECK(problem::text(*refused_strong_word(QStringLiteral("abcabcabc"))) ==
        QStringLiteral("this strong word is the same few characters over and over\n"
                       "  choose three or four words that do not belong together"));
}

TEST_CASE("what is refused changes nothing", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  const QByteArray before = file.bytes();
  CHECK(refused(file.pins->set(kMK, QStringLiteral("1234"))).startsWith(QStringLiteral("this PIN is among")));
  CHECK(refused(file.pins->set_strong(kMK, kPin)).startsWith(QStringLiteral("a strong word is")));
  for (const QString& nobody : {QString(), QStringLiteral("M K"), QStringLiteral("M\nK"), QString(17, u'M')})
    CHECK(refused(file.pins->set(nobody, kPin)) ==
          QStringLiteral("a PIN needs the initials of a person\n  name somebody of the book"));
  CHECK(file.bytes() == before);
}

TEST_CASE("the file is its owner's alone and says no PIN", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  CHECK(mode(file.path) == kOwnersAlone);
  REQUIRE(file.pins->set_strong(kMK, kWord));
  CHECK(mode(file.path) == kOwnersAlone);
  CHECK_FALSE(file.bytes().contains(kPin.toUtf8() + '"'));
  CHECK_FALSE(file.bytes().contains("marrow"));
  CHECK(
      file.bytes().startsWith("{\"version\":1,\"people\":[{\"initials\":\"MK\",\"pin\":\"$argon2id$v=19$m=8,t=1,p=1$"));
}

TEST_CASE("the same PIN of two people is not seen to be the same", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  const QByteArray one = file.bytes();
  REQUIRE(file.pins->set(kMK, kPin));
  CHECK(file.bytes() != one);
}

TEST_CASE("where nothing else is said a hash costs what the constants say", "[station][pins]") {
  PinsFile file;
  problem::Expected<Pins> pins = Pins::at(file.path);
  REQUIRE(pins);
  REQUIRE(pins->set(kMK, kPin));
  CHECK(file.bytes().contains("\"$argon2id$v=19$m=65536,t=2,p=1$"));
  CHECK(pins->verify(kMK, kPin).value());
  CHECK_FALSE(pins->verify(kMK, QStringLiteral("4072")).value());
}

TEST_CASE("a hash that the machine cannot make is refused", "[station][pins]") {
  PinsFile file;
  const problem::Expected<Pins> pins = Pins::at(file.path, {1, size_t{1} << 60});
  REQUIRE_FALSE(pins);
  CHECK(problem::text(pins.error()) ==
        QStringLiteral("there is no memory to hash a PIN\n  see that 1099511627776 MiB are free"));
}

TEST_CASE("a file that others may open is refused, whatever they may do with it", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  for (const QFile::Permission theirs : {QFile::ReadGroup, QFile::WriteGroup, QFile::ReadOther, QFile::WriteOther}) {
    REQUIRE(QFile::setPermissions(file.path, kOwnersAlone | theirs));
    const QString told = file.path +
                         QStringLiteral(": others than its owner may open the file of the PINs\n  chmod 600 ") +
                         file.path + QStringLiteral("; if others may have read it, set every PIN anew");
    CHECK(refused(file.pins->verify(kMK, kPin)) == told);
    CHECK(refused(file.pins->has(kMK)) == told);
    CHECK(refused(file.pins->set(kMK, kPin)) == told);
    CHECK(refused(file.pins->forget(kMK)) == told);
  }
  REQUIRE(QFile::setPermissions(file.path, kOwnersAlone));
  CHECK(file.pins->verify(kMK, kPin).value());
}

TEST_CASE("a file that is not there is no file without PINs", "[station][pins]") {
  PinsFile file;
  const auto answer = file.pins->verify(kMK, kPin);
  CHECK(refused(answer) == file.path + QStringLiteral(": there is no file of PINs\n  set a PIN, which makes it"));
  CHECK(answer.error().code == problem::Code::Missing);
  CHECK(refused(file.pins->has(kMK)) == refused(answer));
  CHECK(refused(file.pins->forget(kMK)) == refused(answer));
}

TEST_CASE("a folder in the file's place, or no folder for it, is the machine's fault", "[station][pins]") {
  const QTemporaryDir folder;
  const problem::Expected<Pins> in_place = Pins::at(folder.path(), kCheap);
  REQUIRE(in_place);
  const auto read = in_place->verify(kMK, kPin);
  CHECK(refused(read).startsWith(folder.path() + QStringLiteral(": the file of the PINs cannot be opened (")));
  CHECK(read.error().code == problem::Code::Machine);

  problem::Expected<Pins> nowhere = Pins::at(folder.filePath(QStringLiteral("none/pins")), kCheap);
  REQUIRE(nowhere);
  const auto written = nowhere->set(kMK, kPin);
  CHECK(refused(written) ==
        folder.filePath(QStringLiteral("none/pins")) +
            QStringLiteral(
                ": the file of the PINs could not be written; it is as it was (its folder cannot be opened)\n"
                "  see that this account may read and write the file and its folder, and that the disk has room"));
  CHECK(written.error().code == problem::Code::Machine);
}

TEST_CASE("a file cut off anywhere is damaged, and nothing is written over it", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  REQUIRE(file.pins->set_strong(kMK, kWord));
  const QByteArray whole = file.bytes();
  for (qsizetype size = 0; size < whole.size() - 1; ++size) {  // the last byte ends the line, no more
    INFO(size);
    file.put(whole.left(size));
    const auto answer = file.pins->verify(kMK, kPin);
    CHECK(refused(answer) == damaged(file.path));
    CHECK(answer.error().code == problem::Code::Machine);
  }
  CHECK(refused(file.pins->set(kAB, kPin)) == damaged(file.path));
  CHECK(file.bytes() == whole.left(whole.size() - 2));
  file.put(whole);
  CHECK(file.pins->verify(kMK, kPin).value());
}

TEST_CASE("a file that says anything else than PINs is damaged", "[station][pins]") {
  PinsFile file;
  REQUIRE(file.pins->set(kMK, kPin));
  const QByteArray whole = file.bytes();
  const auto with = [&](const char* what, const QByteArray& other) {
    REQUIRE(whole.contains(what));
    file.put(QByteArray(whole).replace(what, other));
    return refused(file.pins->has(kMK));
  };
  CHECK(with("\"version\":1", "\"version\":2") == damaged(file.path));
  CHECK(with("\"version\":1,", "") == damaged(file.path));
  CHECK(with("\"people\"", "\"others\"") == damaged(file.path));
  CHECK(with("\"pin\"", "\"pim\"") == damaged(file.path));
  CHECK(with("\"initials\":\"MK\",", "") == damaged(file.path));
  CHECK(with("$argon2id$", "$argon2xx$") == damaged(file.path));
  CHECK(with("$m=8,", "$m=8;") == damaged(file.path));
  CHECK(with("}]", "},7]") == damaged(file.path));
  CHECK(with("\n", "\n{}\n") == damaged(file.path));
  const QByteArray person = whole.mid(whole.indexOf('[') + 1, whole.indexOf(']') - whole.indexOf('[') - 1);
  CHECK(with("}]", "}," + person + "]") == damaged(file.path));  // somebody twice
  CHECK(with("\n", QByteArray(1 << 20, ' ')) == damaged(file.path));
  file.put(whole);
  CHECK(file.pins->has(kMK).value());
}
