// Exports of the demo kitchen's day, read back by programs that are not ours.
#include <QFile>

#include "program.h"

using namespace lardiner::command;

namespace {

struct Exported {
  Folder folder;
  Exported() {
    folder.copy_book(kDemoKitchen, "kitchen");
    REQUIRE(run("2026-11-25T06:30", {"record", kDemoKitchen + "/events/morning.csv"}).status == 0);
    REQUIRE(run("2026-11-25T20:00", {"record", kDemoDay}).status == 0);
    REQUIRE(run("2026-11-25T21:45", {"record", kDemoKitchen + "/events/evening.csv"}).status == 0);
  }
  Ran run(const QString& at, const QStringList& rest) const {
    return folder.lardiner(QStringList{"--kitchen", "kitchen", "--at", at} + rest);
  }
  Ran day(const QString& form, const QString& out) const {
    return run("2026-11-25T21:50", {"export", form, "--from", "2026-11-25", "--to", "2026-11-25", "--out", out});
  }
};

const char* const kValidate =
    "import json,sys,jsonschema\n"
    "s=json.load(open(sys.argv[1])); d=json.load(open(sys.argv[2]))\n"
    "if len(sys.argv)>3: d['epcisBody']['eventList'][0]['eventTimeZoneOffset']='5 hours'\n"
    "e=list(jsonschema.Draft7Validator(s).iter_errors(d)); print(len(e), len(d['epcisBody']['eventList']))\n";

const char* const kCompare =
    "import csv,sys,zipfile,xml.etree.ElementTree as E,datetime as D\n"
    "n='{http://schemas.openxmlformats.org/spreadsheetml/2006/main}'\n"
    "z=zipfile.ZipFile(sys.argv[2]); r=E.fromstring(z.read('xl/worksheets/sheet1.xml'))\n"
    "assert r.find('.//'+n+'pane').get('state')=='frozen' and r.find(n+'autoFilter') is not None and not "
    "list(r.iter(n+'f'))\n"
    "c=list(csv.reader(open(sys.argv[1],newline='',encoding='utf-8'))); k=0\n"
    "rows=list(r.iter(n+'row')); assert len(rows)==len(c)\n"
    "for i,(x,y) in enumerate(zip(rows,c)):\n"
    " got={}\n"
    " for q in x: got[ord(q.get('r')[0])-65]=''.join(q.itertext())\n"
    " for j,t in enumerate(y):\n"
    "  g=got.get(j,''); k+=1\n"
    "  if i and j==1: g=(D.date(1899,12,30)+D.timedelta(int(float(g)))).isoformat()\n"
    "  if i and j==2: g=str(D.timedelta(seconds=round(float(g)*86400))).rjust(8,'0')\n"
    "  if i and j in (7,12) and t: g,t=float(g),float(t)\n"
    "  assert g==t,(i,j,g,t)\n"
    "print(k)\n";

}  // namespace

TEST_CASE("the spreadsheet of a day is the same as CSV and as XLSX, and its bytes do not depend on the run",
          "[command][export][src:rfc-4180/2]") {
  const Exported day;
  CHECK(day.day("spreadsheet", "a.csv").out == "a.csv: 132 rows\n");
  CHECK(day.day("spreadsheet", "a.xlsx").status == 0);
  CHECK(day.day("spreadsheet", "b.xlsx").status == 0);
  CHECK(day.folder.read("a.xlsx") == day.folder.read("b.xlsx"));
  const Ran compared = day.folder.run("python3", {"-c", kCompare, "a.csv", "a.xlsx"});
  CHECK(compared.err == "");
  CHECK(compared.out == "3192\n");
  CHECK(day.folder.read("a.csv").contains("receiving,2026-11-25,05:20:00,UTC-05:00,BP-77120,chicken-thigh,"));
}

TEST_CASE("an EPCIS document is as its schema says, and a broken one is refused", "[command][export][src:epcis-2.0]") {
  const QString schema = QStringLiteral(LARDINER_OPEN_DATA "/gs1/EPCIS-JSON-Schema.json");
  if (!QFile::exists(schema)) {
    WARN("skipped: no open data");
    return;
  }
  const Exported day;
  REQUIRE(day.day("epcis", "a.jsonld").out == "a.jsonld: 38 events\n");
  CHECK(day.folder.run("python3", {"-c", kValidate, schema, "a.jsonld"}).out == "0 38\n");
  CHECK_FALSE(day.folder.run("python3", {"-c", kValidate, schema, "a.jsonld", "broken"}).out.startsWith("0 "));
}

TEST_CASE("an export says what it wrote, as text or as JSON", "[command][export]") {
  const Exported day;
  const QStringList days{"--from", "2026-11-25", "--to", "2026-11-25"};
  CHECK(day.run("2026-11-25T21:50", QStringList{"--json", "export", "spreadsheet", "--out", "a.csv"} + days).out ==
        "{\n    \"file\": \"a.csv\",\n    \"rows\": 132\n}\n");
  CHECK(day.run("2026-11-25T21:50", QStringList{"--json", "export", "epcis", "--out", "a.jsonld"} + days).out ==
        "{\n    \"events\": 38,\n    \"file\": \"a.jsonld\"\n}\n");
  const Ran refused =
      day.run("2026-11-25T21:50", QStringList{"--json", "export", "spreadsheet", "--out", "a.txt"} + days);
  CHECK(refused.status == 2);
  CHECK(refused.out.contains("\"what\": \"--out: \\\"a.txt\\\" is no .csv or .xlsx\""));
}

TEST_CASE("an export that cannot be written exits with 4, says why and leaves nothing",
          "[command][export][machine][src:practice]") {
  const Exported day;
  QByteArray many = "event,at,by,lot,item,quantity,kind,state,temperature,use_by,from\n";
  for (int lot = 1; lot <= 600; ++lot)
    many += "received,2026-11-25 21:00,RT,GC-" + QByteArray::number(lot) +
            ",green-cabbage,50 lb,case,chilled,40 °F,2026-12-04,Palemoor Produce\n";
  day.folder.write("many.csv", many);
  REQUIRE(day.run("2026-11-25T21:46", {"record", "many.csv"}).status == 0);
  const auto limited = [&](int kibibytes, const QString& form, const QString& out) {
    return day.folder.run("sh", {"-c", QStringLiteral("trap '' XFSZ; ulimit -f %1; exec '" LARDINER_PROGRAM
                                                      "' --kitchen kitchen --at 2026-11-25T21:50 export %2 --from "
                                                      "2026-11-25 --to 2026-11-25 --out %3")
                                           .arg(2 * kibibytes)  // blocks of 512 bytes
                                           .arg(form, out)});
  };
  const QStringList before = day.folder.entries();
  for (const auto& [form, out] : {std::pair("spreadsheet", "b.csv"), {"epcis", "b.jsonld"}}) {
    const Ran ran = limited(48, form, out);
    CHECK(ran.status == 4);
    CHECK(ran.out == "");
    CHECK(ran.err == out + QStringLiteral(": the file could not be written; nothing was (File too large)\n"
                                          "  see that the disk has room and that the folder may be written\n"));
  }
  // With 128 KiB the spreadsheet itself has room, and not the files by whose way it is made.
  for (const int kibibytes : {48, 128}) {
    const Ran ran = limited(kibibytes, "spreadsheet", "b.xlsx");
    CHECK(ran.status == 4);
    CHECK(ran.out == "");
    CHECK(ran.err.startsWith("b.xlsx: the spreadsheet could not be written: "));
    CHECK(ran.err.endsWith("\n  see that the disk has room and that the folder may be written\n"));
  }
  const Ran place = day.run("2026-11-25T21:50", {"export", "spreadsheet", "--from", "2026-11-25", "--to", "2026-11-25",
                                                 "--out", "/proc/b.xlsx"});
  CHECK(place.status == 4);
  CHECK(place.err ==
        "/proc/b.xlsx: no folder can be made beside it (No such file or directory)\n"
        "  see that the disk has room and that the folder may be written\n");
  CHECK(day.folder.entries() == before);
  CHECK(limited(4096, "spreadsheet", "b.xlsx").status == 0);
  CHECK(day.folder.read("b.xlsx").size() < 128 * 1024);
}

TEST_CASE("an export of one lot is of its lineage, and what is there is not written over", "[command][export]") {
  const Exported day;
  const QStringList lot{"export", "spreadsheet", "--lot", "BP-77120", "--out", "l.csv"};
  CHECK(day.run("2026-11-25T21:50", lot).out == "l.csv: 13 rows\n");
  CHECK(day.run("2026-11-25T21:50", lot).status == 1);
  CHECK(day.run("2026-11-25T21:50", lot + QStringList{"--replace"}).status == 0);
  const Ran neither = day.run("2026-11-25T21:50", {"export", "epcis", "--out", "n.jsonld"});
  CHECK(neither.status == 2);
  CHECK(neither.err == "neither days nor a lot, or both\n  say --from and --to, or --lot\n");
}
