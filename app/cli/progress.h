// A bar for long work, drawn only where stdout is a terminal. One thread.
#pragma once

#include <cstddef>
#include <string>

namespace cotter::cli {

class Progress {
public:
    Progress(bool shown, std::string what) : shown_(shown), what_(std::move(what)) {}
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;
    ~Progress();  // leaves the terminal line clean
    void at(std::size_t done, std::size_t total);

private:
    bool shown_;
    std::string what_;
    int last_percent_ = -1;
};

}  // namespace cotter::cli
