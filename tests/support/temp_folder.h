// A folder of the real disk that is gone with its owner. For tests that need what an in-memory disk cannot give.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>
#include <unistd.h>

namespace cotter::test {

class TempFolder {
public:
    TempFolder() {
        std::string name = (std::filesystem::temp_directory_path() / "cotter-test-XXXXXX").string();
        path_ = ::mkdtemp(name.data()) == nullptr ? std::string() : name;
    }
    TempFolder(const TempFolder&) = delete;
    TempFolder& operator=(const TempFolder&) = delete;
    ~TempFolder() {
        std::error_code ignored;
        if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
    }
    [[nodiscard]] const std::string& path() const { return path_; }  // empty when none could be made

private:
    std::string path_;
};

}  // namespace cotter::test
