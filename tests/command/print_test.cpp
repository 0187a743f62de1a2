// Printing as a kitchen does: labels of the demo day on a real IPP printer, and what a cook is told when it stops.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "program.h"
#include "real_printer.h"

using namespace lardiner;
using namespace lardiner::command;

namespace {

// A script for the printer that waits until it is told to go on.
const QByteArray kOutOfLabels =
    "echo 'ATTR: job-impressions-completed=12' >&2\necho 'STATE: +media-empty-error' >&2\n"
    "wait_for refilled\n"
    "echo 'STATE: -media-empty-error' >&2\necho 'ATTR: job-impressions-completed=46' >&2\nsleep 2\n";

// The labels of the demo day, and the program that prints them.
class Kitchen {
 public:
  Kitchen() {
    const Ran made = folder_.lardiner({QStringLiteral("--kitchen"), kDemoKitchen, QStringLiteral("labels"), kDemoDay,
                                       QStringLiteral("--out"), QStringLiteral("day")});
    INFO(made.err.toStdString());
    REQUIRE(made.status == 0);
  }

  Ran print(const QString& file, const QString& printer, const char* further = "") const {
    return folder_.lardiner(QStringList{QStringLiteral("--kitchen"), kDemoKitchen, QStringLiteral("print"), file,
                                        QStringLiteral("--printer"), printer} +
                            words(further));
  }
  Ran run(const QStringList& arguments) const { return folder_.lardiner(arguments); }
  const Folder& folder() const { return folder_; }

 private:
  Folder folder_;
};

const QString kSides = QStringLiteral("day/side.pdf");

QJsonObject object(const QString& text) { return QJsonDocument::fromJson(text.toUtf8()).object(); }

}  // namespace

TEST_CASE("the labels of a day are printed, and the PDF arrives as it was made",
          "[command][print][src:practice/print]") {
  const Kitchen kitchen;
  const RealPrinter printer("echo 'ATTR: job-impressions-completed=46' >&2");
  const Ran ran = kitchen.print(kSides, printer.address(), "--medium side --copies 1");
  CHECK(ran.err == "");
  CHECK(ran.status == 0);
  CHECK(ran.out.endsWith(QStringLiteral("job 1: completed\nprinted: the printer counted 46 of 46 pages\n")));
  REQUIRE(printer.documents().size() == 1);
  CHECK((printer.document(printer.documents().front()) == kitchen.folder().read(kSides)));
  const QByteArray terms = printer.terms();
  CHECK(terms.contains("IPP_JOB_NAME=side.pdf\n"));
  CHECK(terms.contains("IPP_MEDIA_COL={media-size={x-dimension=10000 y-dimension=5000}}\n"));
  CHECK(terms.contains("IPP_PRINTER_RESOLUTION=203dpi\n"));
  CHECK_FALSE(terms.contains("IPP_PAGE_RANGES="));
}

TEST_CASE("without a medium the page says how large the label is", "[command][print][src:practice/print]") {
  const Kitchen kitchen;
  const RealPrinter printer;
  const Ran ran =
      kitchen.print(QStringLiteral("day/lid.pdf"), printer.address(), "--copies 2 --pages 70- --job-name lids");
  CHECK(ran.status == 0);
  CHECK(ran.out.endsWith(QStringLiteral("printed; the printer does not say how many pages\n")));
  const QByteArray terms = printer.terms();
  CHECK(terms.contains("IPP_MEDIA_COL={media-size={x-dimension=5000 y-dimension=5000}}\n"));
  CHECK(terms.contains("IPP_COPIES=2\n"));
  CHECK(terms.contains("IPP_PAGE_RANGES=70-75\n"));
  CHECK(terms.contains("IPP_JOB_NAME=lids\n"));
  CHECK_FALSE(terms.contains("IPP_PRINTER_RESOLUTION="));
}

TEST_CASE("a file that was made for another medium is refused, and so is a medium that the book does not have",
          "[command][print][src:practice/print]") {
  const Kitchen kitchen;
  const RealPrinter printer;
  const Ran other = kitchen.print(QStringLiteral("day/lid.pdf"), printer.address(), "--medium side");
  CHECK(other.status == 1);
  CHECK(other.err ==
        "day/lid.pdf: its pages are 49.92 × 49.92 mm, and the medium \"side\" is 100 × 50 mm\n"
        "  print the file that was made for this medium, or name the medium of this file\n");
  CHECK(kitchen.print(kSides, printer.address(), "--medium nothing").status == 1);
  CHECK(printer.documents().isEmpty());
}

TEST_CASE("a label that the printer has no medium for is not sent", "[command][print][src:practice/print]") {
  const Kitchen kitchen;
  kitchen.folder().write(QStringLiteral("wide.pdf"), "%PDF-1.4\n/MediaBox [0 0 600 600] /Count 1\n%%EOF\n");
  const RealPrinter printer;
  const Ran ran = kitchen.print(QStringLiteral("wide.pdf"), printer.address());
  CHECK(ran.status == 4);
  CHECK(ran.err ==
        "the printer \"labels\" has no medium of 211.67 × 211.67 mm; it has oe_4x6-label_4x6in (101.6 × 152.4 mm, "
        "loaded); oe_2x1-label_2x1in (50.8 × 25.4 mm); any from 10 × 10 mm to 101.6 × 304.8 mm\n"
        "  set the medium at the printer, or make the labels for one that it has\n");
  CHECK(printer.documents().isEmpty());
}

TEST_CASE("what is no PDF is refused", "[command][print][src:practice/print]") {
  const Kitchen kitchen;
  const RealPrinter printer;
  kitchen.folder().write(QStringLiteral("notes.pdf"), "notes");
  const Ran ran = kitchen.print(QStringLiteral("notes.pdf"), printer.address());
  CHECK(ran.status == 1);
  CHECK(ran.err == "notes.pdf: this is no PDF\n  print a .pdf that lardiner wrote\n");
  CHECK(kitchen.print(QStringLiteral("none.pdf"), printer.address()).status == 1);
}

TEST_CASE("when the labels run out the cook is told where to go on", "[command][print][src:practice/print]") {
  const Kitchen kitchen;
  const RealPrinter printer(kOutOfLabels);
  const Ran stands = kitchen.print(kSides, printer.address(), "--job-name sides --wait 3");
  CHECK(stands.status == 4);
  CHECK(stands.out.endsWith(QStringLiteral("job 1: printing, page 13 of 46: out of labels\n")));
  CHECK(stands.err ==
        "job 1 still stands at the printer \"labels\", after 12 of 46 pages; printing, page 13 of 46: out of labels\n"
        "  it goes on when the printer does; to begin anew, cancel it at the printer first, then look at the last good "
        "label; go on with --pages 13-\n");
  const Ran again = kitchen.print(kSides, printer.address(), "--job-name sides --wait 3");
  CHECK(again.status == 4);
  CHECK(again.err ==
        "the printer \"labels\" already has the job \"sides\", number 1: printing, page 13: out of labels\n"
        "  let it be printed, or cancel it at the printer; another --job-name is another job\n");
  CHECK(printer.documents().size() == 1);
  printer.tell("refilled");
}

TEST_CASE("a job that the printer gives up is not printed, as text and as JSON",
          "[command][print][src:practice/print]") {
  const Kitchen kitchen;
  const RealPrinter printer("echo 'ATTR: job-impressions-completed=3' >&2\nsleep 1\nexit 1");
  const Ran ran = kitchen.print(kSides, printer.address(), "--pages 10-20");
  CHECK(ran.status == 4);
  CHECK(ran.err ==
        "job 1 at the printer \"labels\" was not printed to its end, after 3 of 11 pages; aborted: the printer gave it "
        "up\n  look at the last good label; go on with --pages 13-20\n");
  const Ran json = kitchen.print(kSides, printer.address(), "--pages 10-20 --json");
  CHECK(json.status == 4);
  const QJsonObject told = object(json.out);
  CHECK(told[QStringLiteral("state")].toString() == "aborted");
  CHECK(told[QStringLiteral("job")].toInt() == 2);
  CHECK(told[QStringLiteral("pages")].toInt() == 11);
  CHECK(told[QStringLiteral("pages_completed")].toInt() == 3);
  CHECK(told[QStringLiteral("go_on_with_page")].toInt() == 13);
}

TEST_CASE("pages that the file does not have are wrong usage", "[command][print][src:practice/print]") {
  const Kitchen kitchen;
  const QString nowhere = QStringLiteral("ipp://localhost:%1/ipp/print").arg(free_port());
  for (const char* pages : {"--pages 0-3", "--pages 9-3", "--pages 3-9-", "--pages all", "--pages -3"})
    CHECK(kitchen.print(kSides, nowhere, pages).status == 2);
  const Ran beyond = kitchen.print(kSides, nowhere, "--pages 40-47");
  CHECK(beyond.status == 2);
  CHECK(beyond.err == "--pages: \"40-47\" goes beyond the last page\n  the file has 46\n");
  CHECK(kitchen.print(kSides, nowhere, "--pages 40-46").status == 4);  // nobody is there
}

TEST_CASE("a printer that is not there is a fault of the machine, an address that is none of usage",
          "[command][print][src:practice/print]") {
  const Kitchen kitchen;
  const QString nowhere = QStringLiteral("ipp://localhost:%1/ipp/print").arg(free_port());
  const Ran silent = kitchen.print(kSides, nowhere);
  CHECK(silent.status == 4);
  CHECK(silent.err == QStringLiteral("the printer does not answer at %1\n  see that it is switched on and in the "
                                     "network; lardiner printers lists those that can be reached\n")
                          .arg(nowhere));
  CHECK(kitchen.print(kSides, QStringLiteral("no such printer")).status == 4);
  CHECK(kitchen.print(kSides, QStringLiteral("ftp://printer/x")).status == 2);
  CHECK(kitchen.run({QStringLiteral("printers"), QStringLiteral("--at-address"), nowhere}).status == 4);
  CHECK(kitchen.run({QStringLiteral("printers"), QStringLiteral("--at-address"), QStringLiteral("printer")}).status ==
        2);
}

TEST_CASE("a printer is listed with its state and what it has", "[command][print][src:practice/print]") {
  const Folder folder;
  const RealPrinter printer;
  const Ran ran = folder.lardiner({QStringLiteral("printers"), QStringLiteral("--at-address"), printer.address()});
  CHECK(ran.status == 0);
  CHECK(ran.out == QStringLiteral("labels: idle\n  %1\n  Label Printer 203 dpi, 203 dots per inch\n"
                                  "  media: oe_2x1-label_2x1in (50.8 × 25.4 mm); oe_4x6-label_4x6in (101.6 × 152.4 mm, "
                                  "loaded); any from 10 × 10 mm to 101.6 × 304.8 mm\n  documents: application/pdf\n")
                       .arg(printer.address()));
  const Ran json = folder.lardiner(
      {QStringLiteral("--json"), QStringLiteral("printers"), QStringLiteral("--at-address"), printer.address()});
  const QJsonObject told = object(json.out)[QStringLiteral("printers")].toArray().at(0).toObject();
  CHECK(told[QStringLiteral("state")].toString() == "idle");
  CHECK(told[QStringLiteral("media")].toArray().at(1)[QStringLiteral("loaded")].toBool());
  CHECK_FALSE(told[QStringLiteral("media")].toArray().at(0)[QStringLiteral("loaded")].toBool());
  CHECK(told[QStringLiteral("dots_per_inch")].toArray().at(0).toInt() == 203);
}
