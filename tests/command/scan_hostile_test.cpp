// A file that would take a library for ever, or all memory, ends in a message, and the others are answered.
#include <signal.h>
#include <sys/resource.h>

#include <QDir>
#include <QElapsedTimer>
#include <QProcess>
#include <QThread>

#include "hostile_files.h"
#include "recorded_day.h"

using namespace lardiner;
using namespace lardiner::command;

namespace {

const QString kAsPicture = "  take a picture of what it shows, or save it again as a plain PNG";

// A kitchen with an empty ledger.
struct Kitchen {
  Folder folder;

  Kitchen() {
    folder.copy_book(kDemoKitchen, "kitchen");
    REQUIRE(lardiner({"record", kDemoKitchen + "/events/morning.csv"}).status == 0);
    folder.write("menu.png", scan::png(scan::drawn("https://example.org/menu", 4)));
  }

  QStringList all(const QStringList& rest) const {
    return QStringList{"--kitchen", "kitchen", "--at", "2026-11-25T21:45"} + rest;
  }
  Ran lardiner(const QStringList& rest) const { return folder.lardiner(all(rest)); }

  // The answer to a picture that is in order, and how the hostile file's error begins.
  void check_refused_beside_others(const QString& file, const QString& error, const QStringList& options = {}) const {
    const Ran ran = lardiner(QStringList{"scan", "menu.png", file, "MB-5521"} + options);
    CHECK(ran.status == 1);
    CHECK(ran.err == error);
    CHECK(
        ran.out.startsWith("menu.png: an address that is no label of this kitchen: https://example.org/menu\n"
                           "lot MB-5521\n"));
  }
};

// The most memory that a process took which was waited for, in bytes.
qint64 most_memory() {
  rusage usage{};
  REQUIRE(getrusage(RUSAGE_CHILDREN, &usage) == 0);
  return qint64{usage.ru_maxrss} * 1024;
}

QByteArray file_of_process(qint64 id, const char* name) {
  QFile file(QStringLiteral("/proc/%1/%2").arg(id).arg(QLatin1String(name)));
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

bool runs(qint64 id) {
  const QByteArray stat = file_of_process(id, "stat");  // "12 (name) S …"
  return !stat.isEmpty() && stat.mid(stat.lastIndexOf(')') + 2, 1) != "Z";
}

qint64 child_of(qint64 id) {
  for (const QString& entry : QDir(QStringLiteral("/proc")).entryList(QDir::Dirs)) {
    const QByteArray stat = file_of_process(entry.toLongLong(), "stat");
    if (entry.toLongLong() > 0 && stat.mid(stat.lastIndexOf(')') + 4).split(' ').first().toLongLong() == id)
      return entry.toLongLong();
  }
  return 0;
}

}  // namespace

TEST_CASE("a page that is drawn without end is given up, and the others are answered",
          "[command][scan][hostile][src:practice/scan]") {
  const Kitchen kitchen;
  kitchen.folder.write("endless.pdf", scan::endless_pdf());
  QElapsedTimer timer;
  timer.start();
  kitchen.check_refused_beside_others("endless.pdf",
                                      "endless.pdf: the file could not be read within 1 seconds\n" + kAsPicture +
                                          "; or allow it more time with --seconds\n",
                                      {"--seconds", "1"});
  CHECK(timer.elapsed() < 60'000);
}

TEST_CASE("a page that asks for all memory is given up, and the others are answered",
          "[command][scan][hostile][src:practice/scan]") {
  const Kitchen kitchen;
  kitchen.folder.write("greedy.pdf", scan::greedy_pdf());
  kitchen.check_refused_beside_others("greedy.pdf",
                                      "greedy.pdf: the file could not be read in 1 GB of memory\n" + kAsPicture + "\n");
  CHECK(most_memory() < qint64{3} << 29);
}

TEST_CASE("a picture that swells is refused before it is decoded", "[command][scan][hostile][src:practice/scan]") {
  const Kitchen kitchen;
  kitchen.folder.write("bomb.png", scan::png_of_size(60'000, 60'000));
  kitchen.check_refused_beside_others("bomb.png",
                                      "bomb.png: the picture has 60000 x 60000 pixels, more than 100 million in all\n"
                                      "  take the picture again, or make it smaller\n");
  kitchen.folder.write("deep.png", scan::png_of_size(9'000, 9'000, QByteArray("\x10\x06", 2)));
  kitchen.check_refused_beside_others("deep.png",
                                      "deep.png: the picture takes 648 million bytes in memory, more than 537 million\n"
                                      "  save it with 8 bits a colour, or make it smaller\n");
}

TEST_CASE("what a library has to say of a damaged file stays with it", "[command][scan][hostile][src:practice/scan]") {
  const Kitchen kitchen;
  const QString damaged =
      "%1: the file is damaged and cannot be read\n  copy or send it again, or take the picture again\n";
  kitchen.folder.write("short.png", scan::png_of_size(400, 300));
  kitchen.check_refused_beside_others("short.png", damaged.arg("short.png"));
  kitchen.folder.write("short.jpg", "\xff\xd8\xff\xda" + QByteArray("\0\x02", 2) + "abc\xff\xd9");
  kitchen.check_refused_beside_others("short.jpg", damaged.arg("short.jpg"));
  kitchen.folder.write("empty.pdf", "%PDF-1.4\nnothing\n%%EOF\n");
  kitchen.check_refused_beside_others("empty.pdf", damaged.arg("empty.pdf"));
}

TEST_CASE("the reading of a file ends with the program that asked for it", "[command][scan][hostile]") {
  const Kitchen kitchen;
  kitchen.folder.write("endless.pdf", scan::endless_pdf());
  QProcess program;
  program.setWorkingDirectory(kitchen.folder.path("."));
  program.start(QStringLiteral(LARDINER_PROGRAM), kitchen.all({"scan", "endless.pdf"}));
  REQUIRE(program.waitForStarted());
  qint64 child = 0;
  QElapsedTimer timer;
  timer.start();
  for (; child == 0 && timer.elapsed() < 60'000; QThread::msleep(20)) child = child_of(program.processId());
  REQUIRE(child > 0);
  while (!file_of_process(child, "cmdline").contains("read-codes") && timer.elapsed() < 60'000) QThread::msleep(20);
  QThread::msleep(500);  // it has limited itself
  REQUIRE(runs(child));
  program.kill();
  REQUIRE(program.waitForFinished());
  timer.restart();
  while (runs(child) && timer.elapsed() < 10'000) QThread::msleep(20);
  CHECK_FALSE(runs(child));
}
