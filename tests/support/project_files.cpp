// The folders are given by CMake, to this file alone.
#include "tests/support/project_files.h"

namespace cotter::test {

std::string project_file(std::string_view path) {
    return std::string(COTTER_SOURCE_DIR "/").append(path);
}

std::string share_folder() {
    return COTTER_SHARE_DIR;
}

}  // namespace cotter::test
