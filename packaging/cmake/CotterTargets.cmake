# How every target of ours is compiled: one place for the standard, warnings and sanitizers.
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

# Headers of other houses that most sources include, read once in a build and not once in each source. None of ours is
# among them, so touching one still compiles what includes it and no more. Builds for other systems and packaging/lint go
# without: there a source that forgets an #include is found.
set(read_ahead <algorithm> <array> <cmath> <functional> <map> <memory> <optional> <set> <span> <string> <string_view>
  <variant> <vector> <fmt/format.h> <tl/expected.hpp>)
if(CMAKE_CROSSCOMPILING)
  set(CMAKE_DISABLE_PRECOMPILE_HEADERS ON)
endif()
if(NOT CMAKE_DISABLE_PRECOMPILE_HEADERS AND CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  # gcc 12 forgets that a header read ahead is the system's, and warns of its own library's strings. The other builds ask.
  set(gnu_read_ahead_flags -Wno-array-bounds -Wno-restrict -Wno-stringop-overflow -Wno-stringop-overread)
endif()

add_library(cotter_flags INTERFACE)
target_include_directories(cotter_flags INTERFACE ${PROJECT_SOURCE_DIR})
target_compile_options(cotter_flags INTERFACE -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wno-sign-conversion
  -Wnon-virtual-dtor -Woverloaded-virtual
  $<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>  # gcc 12 sees it in every variant
  ${gnu_read_ahead_flags}
  $<$<BOOL:${COTTER_WERROR}>:-Werror>)
if(COTTER_SANITIZE)
  target_compile_options(cotter_flags INTERFACE -fsanitize=${COTTER_SANITIZE} -fno-omit-frame-pointer
    -fno-sanitize-recover=all)
  target_link_options(cotter_flags INTERFACE -fsanitize=${COTTER_SANITIZE})
endif()

# cotter_read_ahead(TARGET): for targets that stand on cotter_base, with its flags; the first one is cotter_base itself.
function(cotter_read_ahead target)
  if(target STREQUAL "cotter_base")
    target_precompile_headers(${target} PRIVATE ${read_ahead})
  elseif(TARGET cotter_base)
    target_precompile_headers(${target} REUSE_FROM cotter_base)
  endif()
endfunction()

# cotter_library(NAME sources… [NEEDS cotter_x…] [USES part…])
# NEEDS: our own libraries, seen by users of this one too. USES: outside parts, private to this library's sources.
function(cotter_library name)
  cmake_parse_arguments(ARG "" "" "NEEDS;USES" ${ARGN})
  add_library(${name} STATIC ${ARG_UNPARSED_ARGUMENTS})
  target_link_libraries(${name} PUBLIC cotter_flags ${ARG_NEEDS} PRIVATE ${ARG_USES})
  cotter_read_ahead(${name})
endfunction()
