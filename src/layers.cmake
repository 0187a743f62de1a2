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

# add_layer(<name> SOURCES … HEADERS … USES <layer>… THIRD_PARTY <target>…)
# A static library whose public include root holds its own folder only; third-party libraries stay private to it.
function(add_layer name)
  cmake_parse_arguments(PARSE_ARGV 1 LAYER "" "" "SOURCES;HEADERS;USES;THIRD_PARTY")
  set(root ${CMAKE_BINARY_DIR}/include_roots/${name})
  file(MAKE_DIRECTORY ${root})
  file(CREATE_LINK ${CMAKE_CURRENT_SOURCE_DIR} ${root}/${name} SYMBOLIC)
  list(TRANSFORM LAYER_HEADERS PREPEND ${root}/${name}/)

  add_library(${name} STATIC ${LAYER_SOURCES})
  set_target_properties(${name} PROPERTIES OUTPUT_NAME lardiner_${name} VERIFY_INTERFACE_HEADER_SETS ON)
  target_sources(${name} PUBLIC FILE_SET HEADERS BASE_DIRS ${root} FILES ${LAYER_HEADERS})
  target_link_libraries(${name} PUBLIC Qt6::Core ${LAYER_USES} PRIVATE ${LAYER_THIRD_PARTY})
  lardiner_compile(${name})
endfunction()
