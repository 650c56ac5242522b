# The program's own data, laid out in the build folder as it is when installed: <build>/share/cotter.
find_path(COTTER_FONTS DejaVuSans.ttf PATHS /usr/share/fonts/truetype/dejavu NO_DEFAULT_PATH
  NO_CMAKE_FIND_ROOT_PATH REQUIRED)
find_path(COTTER_SCREEN_FONTS B612-Regular.otf PATHS /usr/share/fonts/opentype/b612 NO_DEFAULT_PATH
  NO_CMAKE_FIND_ROOT_PATH REQUIRED)
set(COTTER_SHARE ${PROJECT_BINARY_DIR}/share/cotter)
add_custom_target(cotter_share ALL
  COMMAND ${CMAKE_COMMAND} -E make_directory ${COTTER_SHARE}/fonts ${COTTER_SHARE}/demo
  COMMAND ${CMAKE_COMMAND} -E copy_if_different ${COTTER_FONTS}/DejaVuSans.ttf ${COTTER_FONTS}/DejaVuSans-Bold.ttf
          ${COTTER_SCREEN_FONTS}/B612-Regular.otf ${COTTER_SCREEN_FONTS}/B612-Bold.otf ${COTTER_SHARE}/fonts
  COMMAND ${CMAKE_COMMAND} -E copy_if_different /usr/share/doc/fonts-dejavu-core/copyright
          ${COTTER_SHARE}/fonts/DejaVu-licence.txt
  COMMAND ${CMAKE_COMMAND} -E copy_if_different /usr/share/doc/fonts-b612/copyright ${COTTER_SHARE}/fonts/B612-licence.txt
  COMMAND ${CMAKE_COMMAND} -E copy_directory ${PROJECT_SOURCE_DIR}/assets/demo ${COTTER_SHARE}/demo
  COMMAND ${CMAKE_COMMAND} -E copy_directory ${PROJECT_SOURCE_DIR}/assets/limits ${COTTER_SHARE}/limits
  COMMAND ${CMAKE_COMMAND} -E copy_directory ${PROJECT_SOURCE_DIR}/assets/procedures ${COTTER_SHARE}/procedures
  COMMENT "Laying out the program's data")
