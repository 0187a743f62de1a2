#!/bin/sh
# The scan of the tree refuses a bad tree line by line and passes a good one: sh scan_tree_test.sh.
# The bad words are put together here, so that this file holds none.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
tree=$(mktemp -d)
trap 'rm -rf "$tree"' EXIT
cd "$tree"

mkdir -p good/src/measure good/tests good/samples good/build-release
echo '// Weighs.' >good/src/measure/weigh.h
echo 'TO DO and XX are no marks; CHECK(true_weight); a /homestead/ is no home' >good/README.md
sh "$here/scan_tree.sh" good || { echo 'A good tree was refused.'; exit 1; }

cp -r good bad
printf '// Weighs.\n// %s: round\nREQUIRE(%s);\nopen("/%s/cook/book.toml");\n' 'TO''DO' 'true' 'home' >bad/src/measure/weigh.h
printf '#pragma once\n// %s\n' 'XX''X' >bad/tests/show.h
{ echo '// Long.'; yes 'int x;' | head -400; } >bad/src/measure/long.cpp
printf 'copy it from /%s/batches.csv\n' 'tmp' >bad/samples/packages
touch bad/notes.txt
cat >expected <<'END'
warning: src/measure/long.cpp has 401 lines; split it at 400
src/measure/weigh.h:2: unfinished work
tests/show.h:2: unfinished work
src/measure/weigh.h:3: a check that cannot fail
samples/packages:1: a path of one machine
src/measure/weigh.h:4: a path of one machine
tests/show.h:1: the first line says the one job of the file: // …
notes.txt: not among the agreed entries at the top
END
sh "$here/expect_refusal.sh" expected sh "$here/scan_tree.sh" bad
