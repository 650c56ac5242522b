# Dear ImGui as part_imgui: its core and the two SDL2 backends, compiled here from what packaging/parts/fetch unpacked.
# For the screens and the platform. COTTER_APP says whether they are built; without it this file does nothing.
set(COTTER_PARTS "$ENV{COTTER_PARTS}" CACHE PATH "Where packaging/parts/fetch unpacks (empty: build/parts)")
if(COTTER_PARTS)
  set(imgui_folder "${COTTER_PARTS}/imgui-1.90.1")
else()
  set(imgui_folder "${PROJECT_SOURCE_DIR}/build/parts/imgui-1.90.1")
endif()
option(COTTER_APP "Build the screens" ON)
if(NOT COTTER_APP)
  return()
endif()
if(NOT EXISTS "${imgui_folder}/imgui.h")
  message(FATAL_ERROR "Dear ImGui is not in ${imgui_folder}: run packaging/parts/fetch, or configure with -DCOTTER_APP=OFF")
endif()
pkg_check_modules(SDL2 REQUIRED IMPORTED_TARGET GLOBAL sdl2)
set_target_properties(PkgConfig::SDL2 PROPERTIES INTERFACE_COMPILE_OPTIONS "")  # -D_REENTRANT: glibc needs none

add_library(part_imgui STATIC EXCLUDE_FROM_ALL
  ${imgui_folder}/imgui.cpp
  ${imgui_folder}/imgui_draw.cpp
  ${imgui_folder}/imgui_tables.cpp
  ${imgui_folder}/imgui_widgets.cpp
  ${imgui_folder}/backends/imgui_impl_sdl2.cpp
  ${imgui_folder}/backends/imgui_impl_sdlrenderer2.cpp)
target_include_directories(part_imgui SYSTEM PUBLIC ${imgui_folder} ${imgui_folder}/backends)
# No demo window, no old names, and asserts stay on in release: a wrong call of ours is found, not drawn.
target_compile_definitions(part_imgui PUBLIC IMGUI_DISABLE_OBSOLETE_FUNCTIONS IMGUI_DISABLE_DEMO_WINDOWS)
target_compile_options(part_imgui PRIVATE -w)
target_link_libraries(part_imgui PUBLIC PkgConfig::SDL2)
if(COTTER_SANITIZE)
  target_compile_options(part_imgui PRIVATE -fsanitize=${COTTER_SANITIZE} -fno-omit-frame-pointer)
endif()
