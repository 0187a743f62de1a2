# What `cmake --install` lays down, and how the program finds its templates and fonts from wherever it lies.
#
# The program joins LARDINER_DATA_DIR ("../share/lardiner" unless the folders are named otherwise) to its own folder. The build
# tree holds links in the same place, so that bin/lardiner runs there as it does when installed.
file(RELATIVE_PATH LARDINER_DATA_DIR ${CMAKE_INSTALL_FULL_BINDIR} ${CMAKE_INSTALL_FULL_DATADIR}/lardiner)

cmake_path(SET data_in_build NORMALIZE ${CMAKE_RUNTIME_OUTPUT_DIRECTORY}/${LARDINER_DATA_DIR})
cmake_path(IS_PREFIX CMAKE_BINARY_DIR ${data_in_build} NORMALIZE inside)
if(NOT inside)
  message(FATAL_ERROR "The data folder has to lie beside the program's folder: ${LARDINER_DATA_DIR} leads out of the build")
endif()
file(MAKE_DIRECTORY ${data_in_build})
foreach(folder IN ITEMS templates fonts)
  file(CREATE_LINK ${CMAKE_SOURCE_DIR}/${folder} ${data_in_build}/${folder} SYMBOLIC)
endforeach()

if(TARGET lardiner)
  target_compile_definitions(lardiner PRIVATE LARDINER_DATA_DIR="${LARDINER_DATA_DIR}")
  install(TARGETS lardiner RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
endif()
install(DIRECTORY templates fonts DESTINATION ${CMAKE_INSTALL_DATADIR}/lardiner)
install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR})
