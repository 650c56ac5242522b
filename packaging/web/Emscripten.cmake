# The toolchain file of the web build: emscripten from where packaging/web/toolchain laid it out, and how all of ours and
# of the parts is compiled for the browser. Use: cmake -DCMAKE_TOOLCHAIN_FILE=packaging/web/Emscripten.cmake …
if(NOT EMSCRIPTEN_ROOT_PATH)
  execute_process(COMMAND ${CMAKE_CURRENT_LIST_DIR}/toolchain --where OUTPUT_VARIABLE EMSCRIPTEN_ROOT_PATH
    RESULT_VARIABLE missing OUTPUT_STRIP_TRAILING_WHITESPACE)
  if(missing)
    message(FATAL_ERROR "the compiler for the web is not there; run packaging/web/toolchain")
  endif()
  set(EMSCRIPTEN_ROOT_PATH ${EMSCRIPTEN_ROOT_PATH} CACHE PATH "Emscripten's own folder")
endif()

# Exceptions and long jumps by WebAssembly's own instructions; no threads. Position-independent code would only be slower.
set(CMAKE_C_FLAGS_INIT "-Oz -DNDEBUG -fwasm-exceptions")
set(CMAKE_CXX_FLAGS_INIT "-Oz -DNDEBUG -fwasm-exceptions")
set(CMAKE_EXE_LINKER_FLAGS_INIT
  "-O2 -fwasm-exceptions -sALLOW_MEMORY_GROWTH=1 -sINITIAL_MEMORY=64MB -sSTACK_SIZE=2MB")
set(CMAKE_POSITION_INDEPENDENT_CODE OFF)

set(COTTER_PARTS_FROM_SOURCE ON)
# One thread, and no shared libraries to load.
set(COTTER_SQLITE_DEFINE SQLITE_THREADSAFE=0)
include(${EMSCRIPTEN_ROOT_PATH}/cmake/Modules/Platform/Emscripten.cmake)
