#!/bin/sh
# The installed program finds its templates and fonts wherever its folder is moved, and nowhere else:
# sh install_test.sh CMAKE BUILD SOURCE.
set -eu
cmake=$1 build=$2 source=$3
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT

"$cmake" --install "$build" --prefix "$place/first" >"$place/log"
for file in bin/lardiner share/lardiner/templates share/lardiner/fonts share/doc/lardiner/LICENSE; do
  [ -e "$place/first/$file" ] || { echo "not installed: $file"; exit 1; }
done
mv "$place/first" "$place/moved"

run() { (cd "$place" && "$place/moved/bin/lardiner" --kitchen "$source/samples/kitchen" check); }
run || { echo 'The installed program did not run from where it was moved to.'; exit 1; }

mv "$place/moved/share/lardiner/templates" "$place/moved/share/lardiner/lost"
if run >"$place/log" 2>&1; then echo 'It ran without its templates: it found some elsewhere.'; exit 1; fi
grep -q 'moved/bin/../share/lardiner\|moved/share/lardiner' "$place/log" || { cat "$place/log"; echo 'It does not say where it looked.'; exit 1; }
