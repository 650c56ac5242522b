# The program's own data, laid out in the build folder as it is when installed: <build>/share/cotter.
find_path(COTTER_FONTS DejaVuSans.ttf PATHS /usr/share/fonts/truetype/dejavu NO_DEFAULT_PATH REQUIRED)
set(COTTER_SHARE ${PROJECT_BINARY_DIR}/share/cotter)
add_custom_target(cotter_share ALL
  COMMAND ${CMAKE_COMMAND} -E make_directory ${COTTER_SHARE}/fonts ${COTTER_SHARE}/demo
  COMMAND ${CMAKE_COMMAND} -E copy_if_different ${COTTER_FONTS}/DejaVuSans.ttf ${COTTER_FONTS}/DejaVuSans-Bold.ttf
          ${COTTER_SHARE}/fonts
  COMMAND ${CMAKE_COMMAND} -E copy_directory ${PROJECT_SOURCE_DIR}/assets/demo ${COTTER_SHARE}/demo
  COMMENT "Laying out the program's data")
