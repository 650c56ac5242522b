# What cotter.exe carries besides code: its icon, version, and what it asks of Windows. Its data lies beside it, as in the
# zip: cotter.exe, share/cotter.
enable_language(RC)
string(REPLACE "." "," version_numbers "${PROJECT_VERSION}")
configure_file(${CMAKE_CURRENT_LIST_DIR}/cotter.rc.in ${PROJECT_BINARY_DIR}/windows/cotter.rc @ONLY)
target_sources(cotter PRIVATE ${PROJECT_BINARY_DIR}/windows/cotter.rc)
set_source_files_properties(${PROJECT_BINARY_DIR}/windows/cotter.rc PROPERTIES
  OBJECT_DEPENDS "${CMAKE_CURRENT_LIST_DIR}/cotter.manifest;${PROJECT_SOURCE_DIR}/assets/icon/cotter.ico")
set_target_properties(cotter PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR})
