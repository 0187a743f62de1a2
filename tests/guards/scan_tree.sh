#!/bin/sh
# Names what must not stand in the project: unfinished work, empty checks, paths of one machine, files without a first line
# that says what they are for, entries at the top that were not agreed. sh scan_tree.sh ROOT. Exit status 1 when there is any.
# A file of over 400 lines is named too, as a warning.
set -eu
cd "$1"
found=$(mktemp)
trap 'rm -f "$found"' EXIT

# The letters in brackets keep this file from naming itself.
unfinished='TO[D]O|FIX[M]E|\bXX[X]\b|not implemente[d]'
empty_check='(CHECK|REQUIRE)\((tru[e]|1)\)'
one_machine='/hom[e]/|/roo[t]/|/User[s]/|[A-Z]:\\\\User[s]|file:///[a-z]|/tm[p]/[a-z]'

# Text files of ours: not the faces, not what a build, npm or a version control leaves.
text_files() {
  find CMakeLists.txt README.md DEVELOPERS.md LICENSE src templates tests samples -type f ! -path 'tests/fuzz/corpus/*' \
    ! -path 'tests/browser/node_modules/*' 2>/dev/null | LC_ALL=C sort
}

sources() {
  find src tests -type f \( -name '*.h' -o -name '*.hpp' -o -name '*.cpp' -o -name '*.cc' \) ! -path 'tests/guards/fixture/*' \
    ! -path 'tests/browser/node_modules/*' \
    2>/dev/null | LC_ALL=C sort
}

# name PATTERN WHAT: each line of a text file that matches.
name() {
  text_files | xargs grep -nIE "$1" /dev/null | sed -E "s/^([^:]*:[0-9]+):.*/\1: $2/" >>"$found" || :
}

name "$unfinished" 'unfinished work'
name "$empty_check" 'a check that cannot fail'
name "$one_machine" 'a path of one machine'
sources | xargs awk 'FNR == 1 && !/^\/\/ ./ { print FILENAME ":1: the first line says the one job of the file: // …" }' /dev/null >>"$found"
for entry in *; do
  case $entry in
    CMakeLists.txt | README.md | DEVELOPERS.md | LICENSE | src | templates | fonts | tests | samples | build*) ;;
    *) echo "$entry: not among the agreed entries at the top" >>"$found" ;;
  esac
done

sources | xargs awk '
  FNR == 1 { report(); file = FILENAME }
  { lines = FNR }
  function report() { if (lines > 400) print "warning: " file " has " lines " lines; split it at 400" }
  END { report() }' /dev/null
cat "$found"
[ ! -s "$found" ]
