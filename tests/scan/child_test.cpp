// However a child process ends, what it told counts, and why it ended is said.
#include "scan/child.h"

#include <QElapsedTimer>
#include <QFile>
#include <QTemporaryDir>

#include "scan/limits.h"
#include "scan/report.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::scan;

namespace {

// A shell that tells these bytes, then does as the script says, in the place of the program.
class Shell {
 public:
  Shell(const QByteArray& told, const QString& script) {
    QFile file(folder_.filePath(QStringLiteral("told")));
    REQUIRE(file.open(QIODevice::WriteOnly));
    REQUIRE(file.write(told) == told.size());
    child_ = {QStringLiteral("/bin/sh"),
              {QStringLiteral("-c"), QStringLiteral("cat '%1'; %2").arg(file.fileName(), script)}};
  }

  problem::Expected<Codes> read(const QByteArray& bytes = "picture") const {
    return read_codes_in_child(child_, bytes, QStringLiteral("tub.pdf"), Bounds{.seconds = 0});
  }
  QString refusal() const {
    const auto found = read();
    return found ? QStringLiteral("read") : problem::text(found.error());
  }

 private:
  QTemporaryDir folder_;
  Child child_;
};

QByteArray found(int page, int y) {
  Code code{QStringLiteral("code at %1").arg(y), QStringLiteral("QRCode"), page, {}, {}};
  for (QPoint& corner : code.corners) corner = QPoint(0, y);
  return found_message(code);
}

const QByteArray kEnd = end_message(Codes{});
const QString kBroken = QStringLiteral(
    "tub.pdf: the file could not be read: it is damaged, or takes more than 1 GB of memory\n"
    "  take a picture of what it shows, or save it again as a plain PNG");

}  // namespace

TEST_CASE("what a child tells is given in order of pages and rows", "[scan][child][src:practice/scan]") {
  const auto read = Shell(begun_message(1, 2) + found(2, 5) + found(1, 90) + found(1, 10) + kEnd, "exit 0").read();
  REQUIRE(read);
  REQUIRE(read->codes.size() == 3);
  CHECK(read->codes[0].text == "code at 10");
  CHECK(read->codes[1].text == "code at 90");
  CHECK(read->codes[2].text == "code at 5");
  CHECK(read->pages == 2);
  CHECK(read->stopped.isEmpty());
}

TEST_CASE("a report that ended counts, whatever the child does afterwards", "[scan][child][src:practice/scan]") {
  CHECK(Shell(found(1, 10) + kEnd, "kill -SEGV $$").read()->stopped.isEmpty());
}

TEST_CASE("a child that breaks down is told", "[scan][child][src:practice/scan]") {
  CHECK(Shell({}, "kill -SEGV $$").refusal() == kBroken);
  CHECK(Shell({}, "kill -ABRT $$").refusal() == kBroken);
  CHECK(Shell({}, "exit 1").refusal() == kBroken);
  CHECK(Shell({}, "exit 0").refusal() == kBroken);
}

TEST_CASE("a child without memory is told", "[scan][child][src:practice/scan]") {
  CHECK(Shell({}, QStringLiteral("exit %1").arg(kOutOfMemory)).refusal() ==
        "tub.pdf: the file could not be read in 1 GB of memory\n"
        "  take a picture of what it shows, or save it again as a plain PNG");
}

TEST_CASE("a child that has had its processor time is told as one that takes too long, whichever clock is first",
          "[scan][child][src:practice/scan]") {
  CHECK(Shell({}, QStringLiteral("exit %1").arg(kOutOfTime)).refusal() ==
        "tub.pdf: the file could not be read within 0 seconds\n"
        "  take a picture of what it shows, or save it again as a plain PNG; or allow it more time with --seconds");
}

TEST_CASE("a child that goes on without end is ended, and what it found is kept", "[scan][child][src:practice/scan]") {
  QElapsedTimer timer;
  timer.start();
  CHECK(Shell({}, "exec sleep 1000").refusal() ==
        "tub.pdf: the file could not be read within 0 seconds\n"
        "  take a picture of what it shows, or save it again as a plain PNG; or allow it more time with --seconds");
  CHECK(timer.elapsed() >= 1000 * kGrace);
  const auto part = Shell(begun_message(1, 7) + found(1, 10) + begun_message(2, 7), "exec sleep 1000").read();
  REQUIRE(part);
  CHECK(part->codes.size() == 1);
  CHECK(part->pages == 7);
  CHECK(part->stopped == "the file could not be read within 0 seconds, at page 2");
  CHECK(timer.elapsed() < 1000 * (2 * kGrace + 60));
}

TEST_CASE("a child that breaks down beyond the first page has read the others", "[scan][child][src:practice/scan]") {
  const auto part = Shell(begun_message(1, 3) + begun_message(2, 3), "kill -SEGV $$").read();
  REQUIRE(part);
  CHECK(part->codes.empty());
  CHECK(part->stopped == "the file could not be read: it is damaged, or takes more than 1 GB of memory, at page 2");
}

TEST_CASE("a large file and a long report pass through, whoever is first", "[scan][child][src:practice/scan]") {
  QByteArray told;
  for (int code = 0; code < 20'000; ++code) told += found(1, code);
  const QByteArray large(20'000'000, 'x');
  CHECK(Shell(told + kEnd, "cat >/dev/null").read(large)->codes.size() == 20'000);  // it writes before it reads
  CHECK(Shell(told + kEnd, "exit 0").read(large)->codes.size() == 20'000);          // it never reads
}

TEST_CASE("a program that is not there is a fault of the machine", "[scan][child][src:practice/scan]") {
  const auto found =
      read_codes_in_child({QStringLiteral("/no/such/program"), {}}, "x", QStringLiteral("tub.png"), Bounds{});
  REQUIRE_FALSE(found);
  CHECK(found.error().code == problem::Code::Machine);
  CHECK(problem::text(found.error()) ==
        "tub.png: no process could be started to read the file\n"
        "  see that the machine has memory and processes left, and that lardiner is in its place");
}
