// TOML: what is read, with its place, and what is refused.
#include "show.h"
#include "texts.h"

using namespace lardiner::reader;

TEST_CASE("a TOML file's values keep their own characters", "[reader][toml][src:toml-1.0/values]") {
  const Value file =
      toml("name = \"salsa\"\nyield = 0.610\nfinished = true\nmade = 1979-05-27 07:32:00\nparts = [3, +1]\n");
  CHECK(file.find(u"name")->text == QStringLiteral("salsa"));
  CHECK(file.find(u"name")->kind == Value::Kind::String);
  CHECK(file.find(u"yield")->text == QStringLiteral("0.610"));
  CHECK(file.find(u"yield")->kind == Value::Kind::Number);
  CHECK(file.find(u"finished")->is_true());
  CHECK(file.find(u"made")->text == QStringLiteral("1979-05-27 07:32:00"));
  CHECK(file.find(u"made")->kind == Value::Kind::Date);
  REQUIRE(file.find(u"parts")->items.size() == 2);
  CHECK(file.find(u"parts")->items[1].text == QStringLiteral("+1"));
  CHECK(file.find(u"absent") == nullptr);
}
