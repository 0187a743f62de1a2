#!/bin/sh
# The count of a run neither loses a failure nor invents a pass: sh count_test.sh COUNT.AWK.
set -eu
counted=$(awk -f "$1" <<'END'
<testsuite name="(empty)"
	tests="7"
	>
	<testcase name="seven pass" time="0.01" status="run">
		<system-out>All tests passed (29 assertions in 7 test cases)
</system-out>
	</testcase>
	<testcase name="one of three fails" time="0.01" status="fail">
		<failure message="Failed"/>
		<system-out>test cases: 3 | 2 passed | 1 failed
assertions: 9 | 8 passed | 1 failed
</system-out>
	</testcase>
	<testcase name="both fail" time="0.01" status="fail">
		<failure message="Failed"/>
		<system-out>test cases: 2 | 2 failed
</system-out>
	</testcase>
	<testcase name="all pass, then the program crashes" time="0.01" status="fail">
		<failure message="Exception: SegFault"/>
		<system-out>All tests passed (1 assertion in 1 test case)
</system-out>
	</testcase>
	<testcase name="a script" time="0.01" status="run">
		<system-out></system-out>
	</testcase>
	<testcase name="not built" time="0" status="notrun">
		<skipped message="Unable to find executable: bin/test_batch"/>
	</testcase>
	<testcase name="skipped as it asked" time="0" status="notrun">
		<skipped message="SKIP_RETURN_CODE=77"/>
	</testcase>
</testsuite>
END
)
[ "$counted" = '11 5' ] || { echo "counted $counted, not 11 5"; exit 1; }
