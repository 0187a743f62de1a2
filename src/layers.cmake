# The layers: data flows one way, book + records -> facts -> paper, code, page.
#
# Three guards keep it so (each has a test in tests/guards that shows it catches a breach):
#   1. src/ is on nobody's include path; a layer's public include root holds its own folder alone, so an include of a
#      layer that is not in USES does not compile.
#   2. each layer's tests link that layer WHOLE_ARCHIVE with only what it may use, so a call upwards does not link.
#   3. tests/guards scans the #include lines and names file and line.

set(LARDINER_WARNINGS -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wnon-virtual-dtor -Wold-style-cast
    -Wcast-qual -Woverloaded-virtual -Wnull-dereference)
if(LARDINER_WARNINGS_AS_ERRORS)
  list(APPEND LARDINER_WARNINGS -Werror)
endif()
if(CMAKE_BUILD_TYPE STREQUAL "Release")
  # GCC 12's flow analysis reports null dereferences inside Qt's own inlined containers at -O2.
  list(REMOVE_ITEM LARDINER_WARNINGS -Wnull-dereference)
endif()
if(CMAKE_CXX_COMPILER_ID MATCHES Clang)
  # Clang counts changes of sign among -Wconversion, GCC does not.
  list(APPEND LARDINER_WARNINGS -Wno-sign-conversion)
endif()

# What every target of ours is compiled with.
function(lardiner_compile target)
  target_compile_options(${target} PRIVATE ${LARDINER_WARNINGS})
  target_compile_definitions(${target} PRIVATE QT_NO_CAST_TO_ASCII QT_NO_KEYWORDS QT_NO_FOREACH)
  if(LARDINER_SANITIZE)
    target_compile_options(${target} PRIVATE -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
    target_link_options(${target} PUBLIC -fsanitize=address,undefined)
  endif()
  if(LARDINER_FUZZ)
    target_compile_options(${target} PRIVATE -fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all
      -fno-omit-frame-pointer)
    target_link_options(${target} PUBLIC -fsanitize=address,undefined)
  endif()
endfunction()

# What nearly every file includes from outside, compiled once: by the layer that all others use. The fuzz programs are
# built without it, so that a file which does not name what it uses is found there.
function(share_headers name)
  if(LARDINER_FUZZ OR NOT TARGET problem)
    return()
  endif()
  if(name STREQUAL problem)
    target_precompile_headers(problem PRIVATE <QByteArray> <QDateTime> <QHash> <QString> <QStringList> <QTimeZone>
      <algorithm> <memory> <optional> <utility> <vector> <tl/expected.hpp>)
  else()
    target_precompile_headers(${name} REUSE_FROM problem)
  endif()
endfunction()

# Verified to compile alone are the headers that have no source of their own: a source includes its own header first
# (tests/guards/scan_includes.awk), and the fuzz build compiles those of the layers it links without the shared headers.
function(layer_headers name root)
  set(headers)
  set(alone)
  foreach(header IN LISTS ARGN)
    string(REGEX REPLACE "h$" "cpp" source ${header})
    if(EXISTS ${CMAKE_CURRENT_SOURCE_DIR}/${source})
      list(APPEND headers ${root}/${name}/${header})
    else()
      list(APPEND alone ${root}/${name}/${header})
    endif()
  endforeach()
  target_sources(${name} PUBLIC FILE_SET HEADERS BASE_DIRS ${root} FILES ${headers}
    FILE_SET alone TYPE HEADERS BASE_DIRS ${root} FILES ${alone})
  set_target_properties(${name} PROPERTIES VERIFY_INTERFACE_HEADER_SETS ON INTERFACE_HEADER_SETS_TO_VERIFY alone)
endfunction()

# add_layer(<name> SOURCES … HEADERS … USES <layer>… THIRD_PARTY <target>…)
# A static library whose public include root holds its own folder only; third-party libraries stay private to it.
function(add_layer name)
  cmake_parse_arguments(PARSE_ARGV 1 LAYER "" "" "SOURCES;HEADERS;USES;THIRD_PARTY")
  set(root ${CMAKE_BINARY_DIR}/include_roots/${name})
  file(MAKE_DIRECTORY ${root})
  file(CREATE_LINK ${CMAKE_CURRENT_SOURCE_DIR} ${root}/${name} SYMBOLIC)

  add_library(${name} STATIC ${LAYER_SOURCES})
  set_target_properties(${name} PROPERTIES OUTPUT_NAME lardiner_${name})
  layer_headers(${name} ${root} ${LAYER_HEADERS})
  target_link_libraries(${name} PUBLIC Qt6::Core ${LAYER_USES} PRIVATE ${LAYER_THIRD_PARTY})
  lardiner_compile(${name})
  share_headers(${name})
endfunction()
