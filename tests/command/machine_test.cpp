// When the machine fails, the exit status is 4 and nothing is left: no room, no folder, no data of the program.
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "small_kitchen.h"

using namespace lardiner::command;

namespace {

// What the shell sets before it becomes the program.
Ran under(const SmallKitchen& kitchen, const QString& setting, const QString& rest) {
  return kitchen.folder.run(
      "sh", {"-c", setting + "; exec '" LARDINER_PROGRAM "' --kitchen kitchen --at 2026-11-25T18:00 " + rest});
}

// The program, with such of its data beside it as are named.
QString installed(const Folder& folder, const QStringList& data) {
  REQUIRE(QDir().mkpath(folder.path("installed/bin")));
  REQUIRE(QFile::copy(LARDINER_PROGRAM, folder.path("installed/bin/lardiner")));
  for (const QString& name : data) {
    const QString place = folder.path("installed/share/lardiner/" + name);
    REQUIRE(QDir().mkpath(QFileInfo(place).path()));
    REQUIRE(QFile::link(QStringLiteral(LARDINER_SOURCE_DIR "/") + name, place));
  }
  return folder.path("installed/bin/lardiner");
}

}  // namespace

TEST_CASE("a place that cannot be written exits with 4 and says which", "[command][machine][src:practice]") {
  const SmallKitchen kitchen;
  const Ran file = kitchen.labels({"records.csv", "--out", "records.csv/labels"});
  CHECK(file.status == 4);
  CHECK(file.out == "");
  CHECK(file.err ==
        "records.csv/labels: the folder above it cannot be made (a file stands in its place)\n"
        "  see that the disk has room and that the folder may be written\n");
  const Ran kernel = kitchen.labels({"records.csv", "--out", "/proc/labels"});
  CHECK(kernel.status == 4);
  CHECK(kernel.out == "");
  CHECK(kernel.err ==
        "/proc/labels: no folder can be made beside it (No such file or directory)\n"
        "  see that the disk has room and that the folder may be written\n");
  CHECK(kitchen.as_it_was());
}

TEST_CASE("a disk that fills up exits with 4, and neither labels nor a draft are left",
          "[command][machine][src:practice]") {
  const SmallKitchen kitchen;
  const Ran ran = under(kitchen, "trap '' XFSZ; ulimit -f 8", "labels records.csv --out labels");
  CHECK(ran.status == 4);
  CHECK(ran.out == "");
  CHECK(
      ran.err.contains(": the file could not be written; nothing was (File too large)\n"
                       "  see that the disk has room and that the folder may be written\n"));
  CHECK(kitchen.as_it_was());
}

TEST_CASE("a full disk keeps the labels that were there, even where they shall be replaced",
          "[command][machine][src:practice]") {
  const SmallKitchen kitchen;
  REQUIRE(kitchen.labels({"records.csv", "--out", "labels"}).status == 0);
  const QByteArray lid = kitchen.folder.read("labels/lid.pdf");
  CHECK(under(kitchen, "trap '' XFSZ; ulimit -f 8", "labels records.csv --out labels --replace").status == 4);
  CHECK((kitchen.folder.read("labels/lid.pdf") == lid));
  CHECK(kitchen.folder.entries() == QStringList{"kitchen", "labels", "records.csv"});
}

TEST_CASE("a report that cannot be written exits with 4", "[command][machine][src:practice]") {
  const SmallKitchen kitchen;
  CHECK(under(kitchen, ":", "dates records.csv >/dev/full").status == 4);
  CHECK(under(kitchen, ":", "--json dates records.csv >/dev/full").status == 4);
  CHECK(under(kitchen, ":", "check >/dev/full").status == 4);
}

TEST_CASE("the program without its templates or faces exits with 4 and says to install it again",
          "[command][machine][src:practice]") {
  const std::vector<std::pair<QStringList, QString>> cases = {
      {{}, "installed/bin/../share/lardiner"},
      {{"templates/words", "templates/labels", "fonts"}, "installed/bin/../share/lardiner"},
      {{"templates/rules", "templates/labels", "fonts"}, "installed/bin/../share/lardiner"}};
  for (const auto& [data, shown] : cases) {
    const SmallKitchen kitchen;
    const QString program = installed(kitchen.folder, data);
    const Ran ran = kitchen.folder.run(
        program, {"--kitchen", "kitchen", "--at", "2026-11-25T18:00", "labels", "records.csv", "--out", "labels"});
    INFO(data.join(u' ').toStdString());
    CHECK(ran.status == 4);
    CHECK(ran.err == kitchen.folder.path(shown) +
                         ": the program's own data is not there\n"
                         "  install it again: share/lardiner must lie beside the program's folder\n");
    CHECK(kitchen.folder.entries() == QStringList{"installed", "kitchen", "records.csv"});
  }
}

TEST_CASE("a template of labels, or a face, that is not there is the machine's fault as well",
          "[command][machine][src:practice]") {
  const std::vector<QStringList> cases = {{"templates/rules", "templates/words", "fonts"},
                                          {"templates/rules", "templates/words", "templates/labels"}};
  for (const QStringList& data : cases) {
    const SmallKitchen kitchen;
    const Ran ran = kitchen.folder.run(
        installed(kitchen.folder, data),
        {"--kitchen", "kitchen", "--at", "2026-11-25T18:00", "labels", "records.csv", "--out", "labels"});
    INFO(data.join(u' ').toStdString() << ": " << ran.err.toStdString());
    CHECK(ran.status == 4);
    CHECK(kitchen.folder.entries() == QStringList{"installed", "kitchen", "records.csv"});
  }
}
