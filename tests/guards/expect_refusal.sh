#!/bin/sh
# A guard must refuse a bad tree line by line: sh expect_refusal.sh EXPECTED COMMAND…; exit 1 from the command and just that output.
set -u
expected=$1
shift
actual=$(mktemp)
trap 'rm -f "$actual"' EXIT
"$@" >"$actual" 2>&1
status=$?
diff -u "$expected" "$actual" || { echo "The guard did not say what $expected holds."; exit 1; }
[ "$status" -eq 1 ] || { echo "The guard ended with $status instead of 1."; exit 1; }
