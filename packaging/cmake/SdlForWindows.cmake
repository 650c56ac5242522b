# SDL 2.32.4 as part_sdl for Windows, by SDL's own CMake, which takes half a minute to find out what the compiler has.
# Only what a window, input and drawing need: no sound, sensors or force feedback.
set(SDL_SHARED OFF CACHE BOOL "")
set(SDL_STATIC ON CACHE BOOL "")
foreach(without TEST AUDIO JOYSTICK HAPTIC HIDAPI SENSOR VULKAN)
  set(SDL_${without} OFF CACHE BOOL "")
endforeach()
set(SDL2_DISABLE_INSTALL ON CACHE BOOL "")
set(SDL2_DISABLE_UNINSTALL ON CACHE BOOL "")
add_subdirectory(${parts}/sdl-2.32.4 ${PROJECT_BINARY_DIR}/sdl EXCLUDE_FROM_ALL SYSTEM)
add_library(part_sdl INTERFACE)
target_link_libraries(part_sdl INTERFACE SDL2::SDL2-static)
