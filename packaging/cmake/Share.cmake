# The program's own data, laid out in the build folder as it is when installed: <build>/share/cotter.
find_path(COTTER_FONTS DejaVuSans.ttf PATHS /usr/share/fonts/truetype/dejavu NO_DEFAULT_PATH
  NO_CMAKE_FIND_ROOT_PATH REQUIRED)
find_path(COTTER_SCREEN_FONTS B612-Regular.otf PATHS /usr/share/fonts/opentype/b612 NO_DEFAULT_PATH
  NO_CMAKE_FIND_ROOT_PATH REQUIRED)
find_program(COTTER_SUBSET pyftsubset REQUIRED)
set(COTTER_SHARE ${PROJECT_BINARY_DIR}/share/cotter)

# The report's font, of which the letters and signs of languages written from left to right are kept: a quarter of the
# size, and a phone has to load it. Tables that neither the screens nor the report read are left out. The same on every
# platform, as the report's bytes depend on it.
set(letters U+20-52F,U+1E00-1FFF,U+2000-215F,U+2190-21FF,U+2200-22FF,U+25A0-27BF,U+FB00-FB06,U+FFFD)
foreach(font DejaVuSans.ttf DejaVuSans-Bold.ttf)
  add_custom_command(OUTPUT ${COTTER_SHARE}/fonts/${font}
    COMMAND ${CMAKE_COMMAND} -E make_directory ${COTTER_SHARE}/fonts
    COMMAND ${COTTER_SUBSET} ${COTTER_FONTS}/${font} --unicodes=${letters} --layout-features= --notdef-outline
            --drop-tables+=FFTM --output-file=${COTTER_SHARE}/fonts/${font}
    DEPENDS ${COTTER_FONTS}/${font} VERBATIM)
  list(APPEND report_fonts ${COTTER_SHARE}/fonts/${font})
endforeach()

add_custom_target(cotter_share ALL
  COMMAND ${CMAKE_COMMAND} -E make_directory ${COTTER_SHARE}/fonts ${COTTER_SHARE}/demo
  COMMAND ${CMAKE_COMMAND} -E copy_if_different ${COTTER_SCREEN_FONTS}/B612-Regular.otf
          ${COTTER_SCREEN_FONTS}/B612-Bold.otf ${COTTER_SHARE}/fonts
  COMMAND ${CMAKE_COMMAND} -E copy_if_different /usr/share/doc/fonts-dejavu-core/copyright
          ${COTTER_SHARE}/fonts/DejaVu-licence.txt
  COMMAND ${CMAKE_COMMAND} -E copy_if_different /usr/share/doc/fonts-b612/copyright ${COTTER_SHARE}/fonts/B612-licence.txt
  COMMAND ${CMAKE_COMMAND} -E copy_directory ${PROJECT_SOURCE_DIR}/assets/demo ${COTTER_SHARE}/demo
  COMMAND ${CMAKE_COMMAND} -E copy_directory ${PROJECT_SOURCE_DIR}/assets/limits ${COTTER_SHARE}/limits
  COMMAND ${CMAKE_COMMAND} -E copy_directory ${PROJECT_SOURCE_DIR}/assets/procedures ${COTTER_SHARE}/procedures
  DEPENDS ${report_fonts}
  COMMENT "Laying out the program's data")
