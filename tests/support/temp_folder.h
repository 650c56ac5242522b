// A folder of the real disk that is gone with its owner. For tests that need what an in-memory disk cannot give.
#pragma once

#include <filesystem>
#include <random>
#include <string>

namespace cotter::test {

class TempFolder {
public:
    TempFolder() {
        std::random_device chance;
        const auto folder = std::filesystem::temp_directory_path() /
                            ("cotter-test-" + std::to_string(chance()) + std::to_string(chance()));
        std::error_code failed;
        if (std::filesystem::create_directory(folder, failed)) path_ = folder.generic_string();
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
