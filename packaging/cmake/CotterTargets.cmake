# How every target of ours is compiled: one place for the standard, warnings and sanitizers.
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
if(NOT DEFINED CMAKE_POSITION_INDEPENDENT_CODE)
  set(CMAKE_POSITION_INDEPENDENT_CODE ON)
endif()
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

add_library(cotter_flags INTERFACE)
target_include_directories(cotter_flags INTERFACE ${PROJECT_SOURCE_DIR})
target_compile_options(cotter_flags INTERFACE -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wno-sign-conversion
  -Wnon-virtual-dtor -Woverloaded-virtual
  $<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>  # gcc 12 sees it in every variant
  $<$<BOOL:${COTTER_WERROR}>:-Werror>)
if(COTTER_SANITIZE)
  target_compile_options(cotter_flags INTERFACE -fsanitize=${COTTER_SANITIZE} -fno-omit-frame-pointer
    -fno-sanitize-recover=all)
  target_link_options(cotter_flags INTERFACE -fsanitize=${COTTER_SANITIZE})
endif()

# cotter_library(NAME sources… [NEEDS cotter_x…] [USES part…])
# NEEDS: our own libraries, seen by users of this one too. USES: outside parts, private to this library's sources.
function(cotter_library name)
  cmake_parse_arguments(ARG "" "" "NEEDS;USES" ${ARGN})
  add_library(${name} STATIC ${ARG_UNPARSED_ARGUMENTS})
  target_link_libraries(${name} PUBLIC cotter_flags ${ARG_NEEDS} PRIVATE ${ARG_USES})
endfunction()
