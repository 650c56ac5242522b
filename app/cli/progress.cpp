// The bar.
#include "app/cli/progress.h"

#include <cstdio>
#include <fmt/format.h>

namespace cotter::cli {

namespace {
constexpr int kWidth = 30;
}

void Progress::at(std::size_t done, std::size_t total) {
    if (!shown_ || total == 0) return;
    const int percent = static_cast<int>(done * 100 / total);
    if (percent == last_percent_) return;
    last_percent_ = percent;
    const std::size_t filled = static_cast<std::size_t>(percent * kWidth / 100);
    const std::string bar = std::string(filled, '#') + std::string(kWidth - filled, '.');
    fmt::print("\r{} [{}] {:3} %  {}/{}", what_, bar, percent, done, total);
    std::fflush(stdout);
}

Progress::~Progress() {
    if (last_percent_ >= 0) fmt::print("\r\x1b[K");
    if (shown_) std::fflush(stdout);
}

}  // namespace cotter::cli
