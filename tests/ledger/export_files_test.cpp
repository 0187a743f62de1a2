// The files of an export, read by programs that are not ours: formulas, both spreadsheets alike, the schema, a full
// disk.
#include <sys/resource.h>

#include <QFile>
#include <QProcess>
#include <csignal>

#include "exporting.h"
#include "ledger/export_xlsx.h"
#include "ledger/xlsx_whole.h"
#include "random_history.h"

using namespace lardiner;
using namespace lardiner::ledger;
using history::Event;
using history::Kind;

namespace {

QByteArray read(const QString& path) {
  QFile file(path);
  REQUIRE(file.open(QFile::ReadOnly));
  return file.readAll();
}

void write(const QString& path, const QByteArray& bytes) {
  QFile file(path);
  REQUIRE(file.open(QFile::WriteOnly));
  REQUIRE(file.write(bytes) == bytes.size());
}

QString python(const QStringList& arguments) {
  QProcess process;
  process.start("python3", arguments);
  REQUIRE(process.waitForFinished(60'000));
  INFO(process.readAllStandardError().toStdString());
  REQUIRE(process.exitCode() == 0);
  return QString::fromUtf8(process.readAllStandardOutput()).trimmed();
}

// Every cell of the XLSX against the CSV, whose texts may have an apostrophe before what a spreadsheet would compute;
// how many cells there are, and how many such. Dates, times and amounts are numbers, all else is text; no cell is a
// formula.
const char* const kCompare =
    "import csv,sys,zipfile,re,xml.etree.ElementTree as E,datetime as D\n"
    "n='{http://schemas.openxmlformats.org/spreadsheetml/2006/main}'\n"
    "r=E.fromstring(zipfile.ZipFile(sys.argv[2]).read('xl/worksheets/sheet1.xml'))\n"
    "assert not list(r.iter(n+'f'))\n"
    "c=list(csv.reader(open(sys.argv[1],newline='',encoding='utf-8'))); k=q=0\n"
    "rows=list(r.iter(n+'row')); assert len(rows)==len(c),(len(rows),len(c))\n"
    "for i,(x,y) in enumerate(zip(rows,c)):\n"
    " got={}\n"
    " for e in x:\n"
    "  j=ord(e.get('r')[0])-65; t=''.join(e.itertext())\n"
    "  got[j]=re.sub('_x([0-9A-F]{4})_',lambda m:chr(int(m[1],16)),t)\n"
    "  assert (e.get('t')=='inlineStr')==(i==0 or j not in (1,2,7,12)),(i,j)\n"
    " for j,t in enumerate(y):\n"
    "  g=got.get(j,''); k+=1\n"
    "  if i and j==1: g=(D.date(1899,12,30)+D.timedelta(int(float(g)))).isoformat()\n"
    "  if i and j==2: g=str(D.timedelta(seconds=round(float(g)*86400))).rjust(8,'0')\n"
    "  if i and j in (7,12) and t: g,t=float(g),float(t)\n"
    "  if str(g)[:1] in tuple('=+-@\\t\\r') and isinstance(g,str): g=\"'\"+g; q+=1\n"
    "  assert g==t,(i,j,g,t)\n"
    "print(k,q)\n";

const char* const kValidate =
    "import json,sys,jsonschema\n"
    "s=json.load(open(sys.argv[1])); d=json.load(open(sys.argv[2])); l=d['epcisBody']['eventList']\n"
    "if len(sys.argv)>3: exec(sys.argv[3])\n"
    "e=list(jsonschema.Draft7Validator(s).iter_errors(d)); print(len(e), len(l))\n";

// A history by chance, and texts that a spreadsheet would take for formulas.
struct Chance : Exporting {
  explicit Chance(unsigned seed, int events) {
    RandomHistory history(seed);
    for (int count = 0; count < events;)
      if (ledger->append({history.next()}, stamp(history.now()))) ++count;
    const QDateTime now = history.now();
    std::vector<Event> more;
    for (const char* text : {"=1+1", "+1", "-1", "@A1", "\tx", "\rx", "a, \"b\"\r\nc", " =1", "'=1"}) {
      const QString lot = QStringLiteral("F-%1").arg(more.size());
      more.push_back(received("tomatillo", lot, now, 1000));
      more.push_back(of_lot(Kind::Discarded, lot, now));
      more.back().reason = QString::fromUtf8(text);
    }
    record(std::move(more), now);
  }
  problem::Expected<qint64> xlsx(const QString& name) {
    return write_xlsx(*ledger, kAllDays, kTestKitchen, folder.filePath(name));
  }
};

// No file may grow past so many bytes.
class FileLimit {
 public:
  explicit FileLimit(rlim_t bytes) {
    getrlimit(RLIMIT_FSIZE, &before_);
    handler_ = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{bytes, before_.rlim_max};
    REQUIRE(setrlimit(RLIMIT_FSIZE, &limit) == 0);
  }
  ~FileLimit() {
    setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }
  FileLimit(const FileLimit&) = delete;
  FileLimit& operator=(const FileLimit&) = delete;

 private:
  rlimit before_{};
  void (*handler_)(int) = SIG_DFL;
};

}  // namespace

TEST_CASE("no text becomes a formula, and both spreadsheets agree cell by cell", "[ledger][export][src:rfc-4180/2]") {
  Chance chance(71, 150);
  QByteArray csv;
  const auto rows = write_csv(*chance.ledger, kAllDays, kTestKitchen, [&](const QByteArray& more) {
    csv += more;
    return true;
  });
  REQUIRE(rows);
  write(chance.folder.filePath("a.csv"), csv);
  REQUIRE(chance.xlsx("a.xlsx") == *rows);
  const QString said = python({"-c", kCompare, chance.folder.filePath("a.csv"), chance.folder.filePath("a.xlsx")});
  CHECK(said == QStringLiteral("%1 6").arg((*rows + 1) * export_columns().size()));
  for (const char* cell : {",'=1+1,", ",'+1,", ",'-1,", ",'@A1,", ",'\tx,", ",\"'\rx\",", ", =1,", ",'=1,"})
    CHECK(csv.contains(cell));
}

TEST_CASE("a document of a history by chance is as its schema says, and its broken twins are refused",
          "[ledger][export][src:epcis-2.0]") {
  const QString schema = QStringLiteral(LARDINER_OPEN_DATA "/gs1/EPCIS-JSON-Schema.json");
  if (!QFile::exists(schema)) {
    WARN("skipped: no open data");
    return;
  }
  Chance chance(72, 150);
  const QString path = chance.folder.filePath("a.jsonld");
  write(path, chance.epcis(kAllDays));
  const QString said = python({"-c", kValidate, schema, path});
  CHECK(said.startsWith("0 "));
  CHECK(said.section(' ', 1).toInt() > 80);
  for (const char* fault : {"l[0]['eventTimeZoneOffset']='5 hours'", "del l[1]['eventTime']", "l[2]['bizStep']=7",
                            "d['type']='Document'"}) {
    CAPTURE(fault);
    CHECK_FALSE(python({"-c", kValidate, schema, path, fault}).startsWith("0 "));
  }
}

TEST_CASE("a spreadsheet says how much it holds, and none that was cut off anywhere is whole",
          "[ledger][export][xlsx]") {
  Chance chance(73, 40);
  const auto rows = chance.xlsx("a.xlsx");
  REQUIRE(rows);
  const QString path = chance.folder.filePath("a.xlsx");
  const auto size = size_of_sheet(path);
  REQUIRE(size);
  CHECK(size->rows == *rows + 1);
  CHECK(size->cells > 10 * *rows);
  const QByteArray whole = read(path);
  const QString cut = chance.folder.filePath("cut.xlsx");
  for (qsizetype length = 0; length < whole.size(); length += 97) {
    write(cut, whole.left(length));
    CAPTURE(length);
    CHECK_FALSE(size_of_sheet(cut));
  }
  CHECK_FALSE(size_of_sheet(chance.folder.filePath("none.xlsx")));
}

TEST_CASE("a spreadsheet that finds no room is an error, also where only what it is made from did",
          "[ledger][export][xlsx]") {
  Chance chance(74, 150);
  REQUIRE(chance.xlsx("a.xlsx"));
  const QByteArray whole = read(chance.folder.filePath("a.xlsx"));
  bool told = false, room = false;
  for (rlim_t bytes = 2048; !room && bytes < (1 << 24); bytes *= 2) {
    problem::Expected<qint64> written = 0;
    {
      const FileLimit limit(bytes);
      written = chance.xlsx("b.xlsx");
    }
    CAPTURE(bytes);
    room = written.has_value();
    if (room) {
      CHECK(read(chance.folder.filePath("b.xlsx")) == whole);
      continue;
    }
    CHECK(written.error().code == problem::Code::Machine);
    CHECK(written.error().place.file == chance.folder.filePath("b.xlsx"));
    CHECK(written.error().what.startsWith("the spreadsheet could not be written: "));
    told = told || bytes > static_cast<rlim_t>(whole.size());
  }
  CHECK(room);
  CHECK(told);  // with room for the spreadsheet, and not for its sheet before it was packed
}
