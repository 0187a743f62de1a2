# Counts the checks of a ctest run from its JUnit file, as "PASSED FAILED": a Catch2 program counts as its test cases, any other
# test as one; a test that failed without saying how many of its cases did counts as one failure.

/^[ \t]*<testcase / { name_status($0); passed_cases = failed_cases = 0; next }
/All tests passed \([0-9]+ assertions? in [0-9]+ test cases?\)/ { passed_cases = number_before("test case", $0) }
/test cases: +[0-9]+ \|/ {
  passed_cases = number_before("passed", $0)
  failed_cases = number_before("failed", $0)
}
/<skipped message="SKIP_/ { status = "skipped" }
/^[ \t]*<\/testcase>/ { add() }
END { print passed + 0, failed + 0 }

function name_status(line) {
  sub(/.* status="/, "", line)
  sub(/".*/, "", line)
  status = line
}

# The number before the last " <word>" of the line; 0 when there is none.
function number_before(word, line) {
  if (!match(line, "[0-9]+ " word)) return 0
  return substr(line, RSTART, RLENGTH) + 0
}

function add() {
  if (status == "run") passed += passed_cases > 0 ? passed_cases : 1
  else if (status == "disabled" || status == "skipped") return
  else {
    passed += passed_cases
    failed += failed_cases > 0 ? failed_cases : 1
  }
}
