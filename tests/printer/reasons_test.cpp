// Keywords of a printer's and a job's state become plain words.
#include "printer/reasons.h"

#include "show.h"

using namespace lardiner::printer;

TEST_CASE("a keyword is said in words, however bad it is", "[printer][reasons][src:rfc-8011/5.4.12]") {
  CHECK(in_words({QStringLiteral("media-empty")}) == QStringList{QStringLiteral("out of labels")});
  CHECK(in_words({QStringLiteral("media-empty-error"), QStringLiteral("cover-open-warning"),
                  QStringLiteral("media-jam-report"), QStringLiteral("offline-report")}) ==
        QStringList{QStringLiteral("out of labels"), QStringLiteral("the cover is open"),
                    QStringLiteral("labels are jammed"), QStringLiteral("offline")});
}

TEST_CASE("a keyword without words stays as it is", "[printer][reasons][src:rfc-8011/5.4.12]") {
  CHECK(in_words({QStringLiteral("com.example-lamp-error"), QStringLiteral("fuser-over-temp")}) ==
        QStringList{QStringLiteral("com.example-lamp-error"), QStringLiteral("fuser-over-temp")});
}

TEST_CASE("what says nothing is left out, and nothing is said twice", "[printer][reasons][src:rfc-8011/5.3.8]") {
  CHECK(in_words({QStringLiteral("none")}).isEmpty());
  CHECK(in_words({QStringLiteral("job-printing"), QStringLiteral("job-completed-successfully")}).isEmpty());
  CHECK(in_words({QStringLiteral("cups-waiting-for-job-completed"), QStringLiteral("cups-remote-stopped")}) ==
        QStringList{QStringLiteral("the printer is stopped")});
  CHECK(in_words({}).isEmpty());
  CHECK(in_words({QStringLiteral("media-empty"), QStringLiteral("media-empty-error")}).size() == 1);
}

TEST_CASE("a keyword of a job that ends as a severity does is found whole", "[printer][reasons][src:rfc-8011/5.3.8]") {
  CHECK(in_words({QStringLiteral("document-format-error")}) ==
        QStringList{QStringLiteral("the printer cannot read the PDF")});
}

TEST_CASE("a printer that is out of labels prints nothing; one that has few left does", "[printer][reasons]") {
  for (const char* reason :
       {"media-empty", "media-empty-error", "media-empty-warning", "media-jam", "cover-open-error", "paused"})
    CHECK(stops_printing(QString::fromLatin1(reason)));
  for (const char* reason : {"media-low", "media-low-warning", "none", "other"})
    CHECK_FALSE(stops_printing(QString::fromLatin1(reason)));
}
