// Parallel work on threads.
#include <algorithm>
#include <atomic>
#include <thread>
#include <vector>

#include "platform/desktop/ports.h"

namespace cotter {

namespace {

// Method: pieces are drawn from one counter, so that a slow piece holds up only its own thread.
class ThreadWorkers final : public Workers {
public:
    void run(std::size_t pieces, const std::function<void(std::size_t)>& work) override {
        std::atomic<std::size_t> next{0};
        const auto draw = [&] {
            for (std::size_t i = next++; i < pieces; i = next++) work(i);
        };
        const std::size_t cores = std::max(1u, std::thread::hardware_concurrency());
        std::vector<std::jthread> helpers;
        for (std::size_t i = 1; i < std::min(cores, pieces); ++i) helpers.emplace_back(draw);
        draw();
    }
};

}  // namespace

std::unique_ptr<Workers> make_thread_workers() {
    return std::make_unique<ThreadWorkers>();
}

}  // namespace cotter
