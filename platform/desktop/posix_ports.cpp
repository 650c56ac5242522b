// Clock and randomness of a POSIX desktop.
#include <ctime>
#include <sys/random.h>
#include <unistd.h>
#include <cstdlib>
#include <filesystem>

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

}  // namespace

std::unique_ptr<Clock> make_system_clock() {
    return std::make_unique<SystemClock>();
}
std::unique_ptr<Random> make_system_random() {
    return std::make_unique<SystemRandom>();
}

std::string share_folder() {
    std::error_code unknown;
    const auto program = std::filesystem::read_symlink("/proc/self/exe", unknown);
    return (program.parent_path().parent_path() / "share" / "cotter").string();
}
std::string home_folder() {
    const char* home = std::getenv("HOME");
    return home == nullptr ? "." : home;
}
std::string absolute_path(const std::string& path) {
    std::error_code unknown;  // the folder that we run in is gone: the path stays as it is
    const auto whole = std::filesystem::absolute(path, unknown);
    return unknown ? path : whole.lexically_normal().string();
}
bool stdout_is_terminal() {
    return ::isatty(STDOUT_FILENO) == 1;
}

ProgramStart::ProgramStart(int argc, char** argv) : arguments_(argv, argv + argc) {}
int ProgramStart::end(int exit_code) const {
    return exit_code;
}

}  // namespace cotter
