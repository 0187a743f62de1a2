// Forms and addresses as browsers send them.
#include "station/exchange.h"

#include "show.h"

using namespace lardiner::station;

TEST_CASE("a form is read as it was filled in", "[station][exchange]") {
  const Fields form = Fields::read("lot=A26329CLB01K&reason=two+words%21&containers=1&containers=4&empty=&bare");
  CHECK(form.value("lot") == "A26329CLB01K");
  CHECK(form.value("reason") == "two words!");
  CHECK(form.values("containers") == QStringList{"1", "4"});
  CHECK(form.has("empty"));
  CHECK(form.value("empty") == "");
  CHECK(form.has("bare"));
  CHECK_FALSE(form.has("other"));
  CHECK(form.value("other") == "");
}

TEST_CASE("where to go on is an address of the station's own", "[station][exchange][attack]") {
  CHECK(own_address("/lot/A?item=b") == "/lot/A?item=b");
  for (const char* elsewhere : {"", "lot", "//elsewhere.example", "/\\elsewhere.example", "https://elsewhere.example"})
    CHECK(own_address(QString::fromLatin1(elsewhere)) == "/");
}

TEST_CASE("what is encoded badly is no fault, and no other field", "[station][exchange]") {
  CHECK(Fields::read("a=%zz%").has("a"));
  CHECK(Fields::read("a=%C3%A9%26b%3D1").value("a") == QString::fromUtf8("é&b=1"));
  CHECK_FALSE(Fields::read("a=%26b%3D1").has("b"));
  CHECK(Fields::read("a=%FF").value("a") == QString(QChar(0xFFFD)));
  CHECK(Fields::read("&&=1&").values("") == QStringList{"1"});
}
