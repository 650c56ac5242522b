# What is installed, and the Debian package that CPack makes of it; see packaging/debian/build. The program looks for its
# data in ../share/cotter as seen from itself, so any prefix does; the package's is /usr.
install(TARGETS cotter RUNTIME DESTINATION bin)
install(DIRECTORY ${COTTER_SHARE}/ DESTINATION share/cotter)
install(FILES ${CMAKE_CURRENT_LIST_DIR}/cotter.desktop ${CMAKE_CURRENT_LIST_DIR}/cotter-desk.desktop
  DESTINATION share/applications)
foreach(size 192 512)
  install(FILES ${PROJECT_SOURCE_DIR}/assets/icon/icon-${size}.png DESTINATION share/icons/hicolor/${size}x${size}/apps
    RENAME cotter.png)
endforeach()
install(FILES ${PROJECT_SOURCE_DIR}/packaging/CHANGELOG.md DESTINATION share/doc/cotter)
# Collected by packaging/licences before the package is made; a plain `cmake --install` does without.
install(DIRECTORY ${PROJECT_BINARY_DIR}/licences DESTINATION share/doc/cotter OPTIONAL)

# The copyright file is in Debian's machine-readable form: a text's lines are indented, an empty one is a full stop.
file(READ ${PROJECT_SOURCE_DIR}/packaging/LICENSE licence)
string(REGEX MATCH "Copyright [^\n]*" holders "${licence}")
string(REGEX REPLACE "^.*Copyright [^\n]*\n+" "" licence "${licence}")
string(REGEX REPLACE "^Copyright \\(c\\) " "Copyright: " COTTER_COPYRIGHT_FIELD "${holders}")
string(REGEX REPLACE "[ \n]+$" "" licence "${licence}")
string(REGEX REPLACE "\n\n" "\n.\n" licence "${licence}")
string(REGEX REPLACE "\n" "\n " COTTER_LICENCE_INDENTED " ${licence}")
configure_file(${CMAKE_CURRENT_LIST_DIR}/copyright.in ${PROJECT_BINARY_DIR}/copyright @ONLY)
install(FILES ${PROJECT_BINARY_DIR}/copyright DESTINATION share/doc/cotter)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME cotter)
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_CONTACT "The Cotter authors <cotter@cotter.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "record of work on towed trailers, in the yard and at the office")
set(CPACK_PACKAGE_DESCRIPTION "Cotter keeps what was found, measured and done at a towed trailer: photos of every
 corner, findings, readings, torques, fluid levels, quotes. It hands over one dated, signed packet that anyone can
 check with public tools, takes packets in at the office, and says what is due. It needs no network.")
string(REPLACE "\n " "\n" CPACK_PACKAGE_DESCRIPTION "${CPACK_PACKAGE_DESCRIPTION}")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE
  WORLD_READ WORLD_EXECUTE)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_SECTION misc)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_PACKAGE_SUGGESTS "openssh-client, unzip, postgresql")  # packets checked without Cotter; many seats
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
include(CPack)

option(COTTER_TRY_PACKAGE "Let ctest install the package in a clean root" OFF)
if(COTTER_TRY_PACKAGE)
  enable_testing()
  add_test(NAME debian_package COMMAND ${CMAKE_CURRENT_LIST_DIR}/try ${PROJECT_BINARY_DIR}/package)
  set_tests_properties(debian_package PROPERTIES LABELS package SKIP_RETURN_CODE 77)
endif()
