// The machine's language, number format and time zone decide nothing on a label.
#include "demo_day.h"

using namespace lardiner::command;

TEST_CASE("labels and reports are the same bytes whatever the machine's locale and zone",
          "[command][locale][src:practice]") {
  const DemoDay& day = demo_day();
  const std::vector<std::vector<QPair<QString, QString>>> settings = {
      {{"LC_ALL", "de_DE.UTF-8"}, {"LANGUAGE", "de"}, {"LC_NUMERIC", "de_DE.UTF-8"}, {"TZ", "Europe/Berlin"}},
      {{"LC_ALL", "tr_TR.UTF-8"}, {"LANGUAGE", "tr"}, {"LANG", "tr_TR.UTF-8"}, {"TZ", "Pacific/Auckland"}},
      {{"LC_ALL", ""}, {"LANG", "es_ES.UTF-8"}, {"LC_NUMERIC", "de_DE.UTF-8"}, {"LC_TIME", "de_DE.UTF-8"}},
      {{"LC_ALL", "C"}, {"LANGUAGE", ""}, {"TZ", "UTC"}}};
  for (const auto& setting : settings) {
    const Folder folder;
    INFO(setting.front().second.toStdString());
    const Ran labels = folder.lardiner({"--kitchen", kDemoKitchen, "labels", kDemoDay, "--out", "labels"}, {}, setting);
    CHECK(labels.status == 0);
    CHECK(labels.err == "");
    CHECK(labels.out == day.ran.out);
    REQUIRE(folder.entries("labels") == day.files);
    for (const QString& file : day.files) CHECK((folder.read("labels/" + file) == day.folder.read("labels/" + file)));
  }
}

TEST_CASE("a report of dates is the same text whatever the machine's locale and zone",
          "[command][locale][src:practice]") {
  const Folder folder;
  const QStringList dates = {"--kitchen", kDemoKitchen, "dates", kDemoDay};
  const Ran plain = folder.lardiner(dates, {}, {{"LC_ALL", "C.UTF-8"}, {"TZ", "UTC"}});
  const Ran german = folder.lardiner(
      dates, {}, {{"LC_ALL", "de_DE.UTF-8"}, {"LANGUAGE", "de"}, {"LC_NUMERIC", "de_DE.UTF-8"}, {"TZ", "Asia/Tokyo"}});
  CHECK(plain.status == 0);
  CHECK(plain.out == german.out);
}
