# Names each #include, each USES of add_layer and each owned word that the table of layers does not allow; reads the table
# first, then the files under the folder `root` (a variable). A row "nobody" of the table is no layer: what it names is refused
# everywhere.

# The table.
FNR == NR {
  if ($0 ~ /^[ \t]*(#|$)/) next
  split($0, column, "|")
  layer = trimmed(column[1])
  if (layer != "nobody") { rank[layer] = ++layers; name_of[layers] = layer }
  own(layer, column[2], owners_of_header)
  own(layer, column[3], owners_of_word)
  next
}

FNR == 1 { layer = layer_of(FILENAME); uses = 0; header = header_of(FILENAME) }
layer == "" { next }
FNR == 1 && !(layer in rank) { say("\"" layer "\" is no layer of tests/guards/layers.txt"); layer = ""; next }
FILENAME ~ /CMakeLists\.txt$/ { check_build($0); next }
/^[ \t]*#[ \t]*(include|include_next|import)/ { check_include($0); next }
{ check_words($0) }

END { exit found > 0 }

function trimmed(text) { gsub(/^[ \t]+|[ \t]+$/, "", text); return text }

function own(layer, list, owners,    words, count, i) {
  count = split(list, words, " ")
  for (i = 1; i <= count; i++) owners[words[i]] = owners[words[i]] " " layer
}

# src/<layer>/… -> <layer>; a file that lies in src itself belongs to none.
function layer_of(file,    rest, slash) {
  rest = substr(file, length(root) + 2)
  slash = index(rest, "/")
  return slash ? substr(rest, 1, slash - 1) : ""
}

# src/<layer>/x.cpp -> <layer>/x.h, where there is such a header: it is included first, so that it is seen to compile alone.
function header_of(file,    name, line, there) {
  if (file !~ /\.cpp$/) return ""
  name = file
  sub(/cpp$/, "h", name)
  there = (getline line < name) >= 0
  close(name)
  return there ? substr(name, length(root) + 2) : ""
}

function say(what) { found++; print FILENAME ":" FNR ": " what }

function may_use(other) { return (other in rank) && rank[other] <= rank[layer] }

# "problem, measure": what the layer may include.
function allowance(    list, i) {
  for (i = 1; i < rank[layer]; i++) list = list (list == "" ? "" : ", ") name_of[i]
  return list == "" ? "its own headers only" : "its own and " list
}

function check_include(line,    target) {
  target = line
  sub(/^[ \t]*#[ \t]*(include_next|include|import)[ \t]*/, "", target)
  if (target ~ /^"/) { sub(/^"/, "", target); sub(/".*/, "", target); check_own_include(target) }
  else if (target ~ /^</) { sub(/^</, "", target); sub(/>.*/, "", target); check_foreign_include(target) }
  else { sub(/[ \t].*/, "", target); check_foreign_include(target) }
  check_first_include(target)
}

function check_first_include(target) {
  if (header != "" && target != header) say("include \"" header "\" first")
  header = ""
}

function check_own_include(target,    folder) {
  folder = target
  if (target ~ /\.\./) { say("an include with \"..\" goes round the layers: \"" target "\""); return }
  if (!sub(/\/.*/, "", folder)) { say("write the layer too: \"" layer "/" target "\""); return }
  if (!may_use(folder)) say(layer " may not include \"" target "\"; it may include " allowance())
}

function check_foreign_include(target,    pattern, folder) {
  folder = target
  sub(/\/.*/, "", folder)
  if (target ~ /\.\./) { say("an include with \"..\" goes round the layers: <" target ">"); return }
  if (target ~ /\// && folder in rank) { say("a header of ours is included with quotes: \"" target "\""); return }
  for (pattern in owners_of_header) {
    if (!matches(target, pattern)) continue
    if (!owns(owners_of_header[pattern])) say("<" target "> belongs to" owners_of_header[pattern] ", not to " layer)
    return
  }
  if (target !~ /^(tl\/expected\.hpp|Q[A-Za-z]+|[a-z_0-9]+)$/) say("<" target "> belongs to no layer of tests/guards/layers.txt")
}

function matches(target, pattern) {
  if (pattern ~ /\*$/) return index(target, substr(pattern, 1, length(pattern) - 1)) == 1
  return target == pattern
}

function owns(owners) { return index(owners " ", " " layer " ") > 0 }

function check_words(line,    word) {
  sub(/^[ \t]*\/\/.*/, "", line)
  sub(/[ \t]\/\/.*/, "", line)
  for (word in owners_of_word) {
    if (!owns(owners_of_word[word]) && has_word(line, word)) say("\"" word "\" belongs to" owners_of_word[word] ", not to " layer)
  }
}

function has_word(line, word,    at, before, after) {
  while ((at = index(line, word)) > 0) {
    before = at > 1 ? substr(line, at - 1, 1) : " "
    after = substr(line, at + length(word), 1)
    if (before !~ /[A-Za-z0-9_]/ && after !~ /[A-Za-z0-9_]/) return 1
    line = substr(line, at + length(word))
  }
  return 0
}

# A layer's CMakeLists.txt: what it uses and where it finds headers is said by add_layer alone.
function check_build(line) {
  sub(/#.*/, "", line)
  if (line ~ ("^[ \t]*(include_directories[ \t]*\\(|target_include_directories[ \t]*\\([ \t]*" layer "[ \t])"))
    say("the include roots of " layer " come from its add_layer alone")
  if (line ~ ("target_link_libraries[ \t]*\\([ \t]*" layer "[ \t]")) say("write what " layer " links in its add_layer")
  check_uses(line)
}

# add_layer(… USES problem measure THIRD_PARTY …), over several lines.
function check_uses(line,    words, count, i) {
  gsub(/[()]/, " & ", line)
  count = split(line, words, " ")
  for (i = 1; i <= count; i++) {
    if (words[i] == "USES") uses = 1
    else if (words[i] ~ /^(SOURCES|HEADERS|THIRD_PARTY|\))$/) uses = 0
    else if (uses && words[i] !~ /::/ && (!may_use(words[i]) || words[i] == layer))
      say(layer " may not use " words[i] "; it may use " allowance())
  }
}
