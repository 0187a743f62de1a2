# layer_tests(<layer> [EXTRA <target>…]): tests/<layer>/*.cpp as the program test_<layer>, linked with the whole of that layer
# and only what the layer may use, so that a call upwards does not link.
function(layer_tests layer)
  cmake_parse_arguments(PARSE_ARGV 1 TESTS "" "" "EXTRA")
  if(NOT TARGET ${layer})
    return()
  endif()
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/${layer}/*.cpp)
  if(NOT sources)
    return()
  endif()
  add_executable(test_${layer} ${sources})
  target_link_libraries(test_${layer} PRIVATE catch_main $<LINK_LIBRARY:WHOLE_ARCHIVE,${layer}> ${TESTS_EXTRA})
  target_include_directories(test_${layer} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/support)
  target_compile_definitions(test_${layer} PRIVATE LARDINER_SOURCE_DIR="${CMAKE_SOURCE_DIR}"
    LARDINER_OPEN_DATA="${CMAKE_SOURCE_DIR}/../shared/data")
  lardiner_compile(test_${layer})
  add_test(NAME ${layer} COMMAND test_${layer})
endfunction()
