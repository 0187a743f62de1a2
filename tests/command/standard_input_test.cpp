// Standard input is read to its end, however slowly it comes.
#include "program.h"

using namespace lardiner::command;

TEST_CASE("records through a pipe that pauses are read whole", "[command][files]") {
  const Folder folder;
  const QString dates =
      QStringLiteral("'%1' --kitchen '%2' --at 2026-11-25T18:00 dates ").arg(LARDINER_PROGRAM, kDemoKitchen);
  const QString pausing =
      QStringLiteral("{ head -c 3000 '%1'; sleep 1; tail -c +3001 '%1'; sleep 1; } | ").arg(kDemoDay);
  const Ran slow = folder.run("sh", {"-c", pausing + dates + "-"});
  CHECK(slow.err == "");
  CHECK(slow.status == 0);
  CHECK(slow.out == folder.run("sh", {"-c", dates + '\'' + kDemoDay + '\''}).out);
}

TEST_CASE("a picture larger than a pipe holds comes over whole", "[command][files][scan]") {
  const Folder folder;
  folder.copy_book(kDemoKitchen, "kitchen");
  REQUIRE(folder.lardiner({"--kitchen", "kitchen", "record", kDemoKitchen + "/events/morning.csv"}).status == 0);
  folder.write("long.pdf", "%PDF-1.4\n" + QByteArray(9'000'000, 'x') + "\n%%EOF\n");
  const QString damaged =
      "the file is damaged and cannot be read\n  copy or send it again, or take the picture again\n";
  CHECK(folder.lardiner({"--kitchen", "kitchen", "scan", "long.pdf"}).err == "long.pdf: " + damaged);
  const Ran piped =
      folder.run("sh", {"-c", QStringLiteral("'%1' --kitchen kitchen scan - <long.pdf").arg(LARDINER_PROGRAM)});
  CHECK(piped.err == "-: " + damaged);
}
