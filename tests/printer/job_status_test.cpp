// Where a job stands is said in words, and where a cook goes on after it.
#include "printer/job_status.h"

#include "show.h"

using namespace lardiner::printer;

namespace {

JobStatus printing(std::optional<int> done) {
  JobStatus out;
  out.state = JobState::Printing;
  out.impressions_completed = done;
  return out;
}

}  // namespace

TEST_CASE("a job that prints says at which page it is", "[printer][job][src:rfc-8011/5.3.7]") {
  CHECK(text(printing(2), 46) == "printing, page 3 of 46");
  CHECK(text(printing(46), 46) == "printing, page 46 of 46");
  CHECK(text(printing(2), 0) == "printing, page 3");
  CHECK(text(printing(std::nullopt), 46) == "printing");
  JobStatus sheets = printing(std::nullopt);
  sheets.sheets_completed = 4;
  CHECK(text(sheets, 46) == "printing, page 5 of 46");
}

TEST_CASE("a job that stopped says why", "[printer][job][src:rfc-8011/5.3.7]") {
  JobStatus status = printing(2);
  status.printer_reasons = {QStringLiteral("out of labels")};
  CHECK(text(status, 46) == "printing, page 3 of 46: out of labels");
  CHECK_FALSE(status.stopped());
  status.printer_state = State::Stopped;
  CHECK(text(status, 46) == "stopped: out of labels");
  CHECK(status.stopped());
  status.state = JobState::Aborted;
  CHECK(text(status, 46) == "aborted");
  CHECK_FALSE(status.stopped());
  status.reasons = {QStringLiteral("the printer gave it up")};
  CHECK(text(status, 46) == "aborted: the printer gave it up");
}

TEST_CASE("completed, canceled and aborted are ends, nothing else is", "[printer][job][src:rfc-8011/5.3.7]") {
  JobStatus status;
  for (const JobState state : {JobState::Completed, JobState::Canceled, JobState::Aborted}) {
    status.state = state;
    CHECK(status.ended());
  }
  for (const JobState state :
       {JobState::Unknown, JobState::Pending, JobState::Held, JobState::Printing, JobState::Stopped}) {
    status.state = state;
    CHECK_FALSE(status.ended());
  }
}

TEST_CASE("a cook goes on with the page after those that were printed", "[printer][job][src:practice/print]") {
  CHECK(page_to_go_on_with(1, 46, 0) == 1);
  CHECK(page_to_go_on_with(1, 46, 12) == 13);
  CHECK(page_to_go_on_with(10, 20, 3) == 13);
  CHECK(page_to_go_on_with(1, 46, 46) == std::nullopt);
  CHECK(page_to_go_on_with(10, 20, 11) == std::nullopt);
}
