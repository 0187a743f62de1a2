#!/bin/sh
# Each source that a test names is listed once in tests/SOURCES.md, and each listed is used: sh check_sources.sh TESTS.
set -eu
tests=$1
rules=$(dirname "$0")/check_sources.awk
found=$(mktemp)
trap 'rm -f "$found"' EXIT
status=0
find "$tests" -path "$tests/guards" -prune -o -type f \( -name '*.cpp' -o -name '*.h' -o -name SOURCES.md \) -print |
  LC_ALL=C sort | xargs awk -f "$rules" >"$found" || status=1
LC_ALL=C sort -t: -k1,1 -k2,2n "$found"
exit "$status"
