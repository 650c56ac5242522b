// Clock, randomness and threads of a POSIX desktop.
#include <atomic>
#include <ctime>
#include <sys/random.h>
#include <unistd.h>
#include <cstdlib>
#include <filesystem>
#include <thread>
#include <vector>

#include "platform/desktop/ports.h"

namespace cotter {

namespace {

class SystemClock final : public Clock {
public:
    Instant now() override {
        const std::time_t now = std::time(nullptr);
        std::tm local{};
        ::localtime_r(&now, &local);
        return {now, static_cast<int>(local.tm_gmtoff / 60)};
    }
};

class SystemRandom final : public Random {
public:
    void fill(std::span<std::uint8_t> out) override {
        while (!out.empty()) {
            const ssize_t got = ::getrandom(out.data(), out.size(), 0);
            if (got < 0) std::abort();  // no kernel randomness: no key may ever be made
            out = out.subspan(static_cast<std::size_t>(got));
        }
    }
};

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

std::unique_ptr<Clock> make_system_clock() {
    return std::make_unique<SystemClock>();
}
std::unique_ptr<Random> make_system_random() {
    return std::make_unique<SystemRandom>();
}
std::unique_ptr<Workers> make_thread_workers() {
    return std::make_unique<ThreadWorkers>();
}

std::string share_folder() {
    std::error_code unknown;
    const auto program = std::filesystem::read_symlink("/proc/self/exe", unknown);
    return (program.parent_path().parent_path() / "share" / "cotter").string();
}
bool stdout_is_terminal() {
    return ::isatty(STDOUT_FILENO) == 1;
}

}  // namespace cotter
