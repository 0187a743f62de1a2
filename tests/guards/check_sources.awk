# Holds the tags [src:key/section] of the tests against the list of sources, SOURCES.md, which is read too.

FILENAME ~ /SOURCES\.md$/ { if (/^[ \t]*\|/) read_source($0); next }
{ read_tags($0) }

END {
  for (key in used) if (!(key in listed)) complain(used[key], "the source \"" key "\" is not in tests/SOURCES.md")
  for (key in listed) if (!(key in used)) complain(listed[key], "no test uses the source \"" key "\"")
  exit found > 0
}

function complain(place, what) { found++; print place ": " what }

function here() { return FILENAME ":" FNR }

function trimmed(text) { gsub(/^[ \t]+|[ \t]+$/, "", text); return text }

# | key | full citation | status |, a row of a table.
function read_source(line,    column, key) {
  sub(/^[ \t]*\|/, "", line)
  sub(/\|[ \t]*$/, "", line)
  if (line ~ /^[ |:-]*$/) return
  if (split(line, column, "|") != 3) { complain(here(), "write key | full citation | status"); return }
  key = trimmed(column[1])
  if (key == "key") return
  if (key !~ /^[a-z0-9][a-z0-9.-]*$/) complain(here(), "\"" key "\" is no key: small letters, digits, hyphens, full stops")
  if (key in listed) complain(here(), "\"" key "\" is listed already at " listed[key])
  else listed[key] = here()
  if (trimmed(column[2]) == "") complain(here(), "\"" key "\" has no citation")
  if (trimmed(column[3]) !~ /^(text read|from memory|common practice|computed)/)
    complain(here(), "the status of \"" key "\" begins with text read, from memory, common practice or computed")
}

function read_tags(line,    key) {
  while (match(line, /\[src:[^]]*\]/)) {
    key = substr(line, RSTART + 5, RLENGTH - 6)
    line = substr(line, RSTART + RLENGTH)
    if (key !~ /^[a-z0-9][a-z0-9.-]*(\/[^ ]+)?$/) { complain(here(), "[src:" key "] is not [src:key/section]"); continue }
    sub(/\/.*/, "", key)
    if (!(key in used)) used[key] = here()
  }
}
