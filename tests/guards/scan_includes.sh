#!/bin/sh
# Names, as file:line, what the table of layers does not allow: sh scan_includes.sh TABLE SRC. Exit status 1 when there is any.
set -eu
table=$1
root=$2
rules=$(dirname "$0")/scan_includes.awk
found=$(mktemp)
trap 'rm -f "$found"' EXIT
status=0
find "$root" -type f \( -name '*.h' -o -name '*.hpp' -o -name '*.cpp' -o -name '*.cc' -o -name '*.c' -o -name '*.inc' \
  -o -name CMakeLists.txt \) -exec awk -v root="$root" -f "$rules" "$table" {} + >"$found" || status=1
LC_ALL=C sort -t: -k1,1 -k2,2n "$found"
exit "$status"
