# The toolchain file of the Windows build: Debian's MinGW-w64 with its POSIX threads, which std::thread stands on. Nothing
# but what Windows itself brings is loaded at run time. Use: cmake -DCMAKE_TOOLCHAIN_FILE=packaging/windows/Mingw.cmake …
set(CMAKE_SYSTEM_NAME Windows)
set(CMAKE_SYSTEM_PROCESSOR x86_64)
set(CMAKE_C_COMPILER x86_64-w64-mingw32-gcc-posix)
set(CMAKE_CXX_COMPILER x86_64-w64-mingw32-g++-posix)
set(CMAKE_RC_COMPILER x86_64-w64-mingw32-windres)
set(CMAKE_FIND_ROOT_PATH /usr/x86_64-w64-mingw32)
set(CMAKE_FIND_ROOT_PATH_MODE_PROGRAM NEVER)
set(CMAKE_FIND_ROOT_PATH_MODE_LIBRARY ONLY)
set(CMAKE_FIND_ROOT_PATH_MODE_INCLUDE ONLY)
set(CMAKE_FIND_ROOT_PATH_MODE_PACKAGE ONLY)

# Windows 10 and newer; names in system calls are UTF-16; printf as C has it, whatever runtime is there.
set(windows_flags "-O2 -DNDEBUG -D_WIN32_WINNT=0x0A00 -DUNICODE -D_UNICODE -D__USE_MINGW_ANSI_STDIO=1")
set(CMAKE_C_FLAGS_INIT "${windows_flags}")
set(CMAKE_CXX_FLAGS_INIT "${windows_flags}")
set(CMAKE_EXE_LINKER_FLAGS_INIT "-static -s")
set(CMAKE_POSITION_INDEPENDENT_CODE OFF)

set(COTTER_PARTS_FROM_SOURCE ON)
# Several threads, each with a connection of its own.
set(COTTER_SQLITE_DEFINE SQLITE_THREADSAFE=1)
