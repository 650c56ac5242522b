// Clock, randomness, folders, arguments and console of Windows, the twin of platform/desktop/posix_ports.cpp.
#include <fcntl.h>
#include <io.h>
#include <windows.h>

#include <bcrypt.h>
#include <shellapi.h>
#include <shlobj.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "platform/desktop/ports.h"
#include "platform/windows/wide.h"

namespace cotter {

namespace {

class SystemClock final : public Clock {
public:
    Instant now() override {
        const __time64_t now = ::_time64(nullptr);
        std::tm local{};
        ::_localtime64_s(&local, &now);
        return {now, static_cast<int>((::_mkgmtime64(&local) - now) / 60)};
    }
};

class SystemRandom final : public Random {
public:
    void fill(std::span<std::uint8_t> out) override {
        while (!out.empty()) {
            const std::size_t part = std::min<std::size_t>(out.size(), 1u << 20);
            const NTSTATUS status =
                ::BCryptGenRandom(nullptr, out.data(), static_cast<ULONG>(part), BCRYPT_USE_SYSTEM_PREFERRED_RNG);
            if (status < 0) std::abort();  // no randomness of the system: no key may ever be made
            out = out.subspan(part);
        }
    }
};

std::string with_slashes(std::wstring_view path) {
    std::string out = to_utf8(path);
    std::replace(out.begin(), out.end(), '\\', '/');
    return out;
}

std::wstring program_path() {
    std::wstring path(MAX_PATH, L'\0');
    for (;;) {
        const DWORD size = ::GetModuleFileNameW(nullptr, path.data(), static_cast<DWORD>(path.size()));
        if (size < path.size()) return path.substr(0, size);
        path.resize(path.size() * 2);
    }
}

// The console reads bytes as UTF-8 and obeys the codes that clear a line. False where it does not know them.
bool ready_console(DWORD which) {
    const HANDLE console = ::GetStdHandle(which);
    DWORD mode = 0;
    return ::GetConsoleMode(console, &mode) != FALSE &&
           ::SetConsoleMode(console, mode | ENABLE_VIRTUAL_TERMINAL_PROCESSING) != FALSE;
}

// A console that nobody else uses was opened by the system for us alone.
bool console_is_ours() {
    DWORD others[2];
    return ::GetConsoleProcessList(others, 2) == 1;
}

}  // namespace

std::unique_ptr<Clock> make_system_clock() {
    return std::make_unique<SystemClock>();
}
std::unique_ptr<Random> make_system_random() {
    return std::make_unique<SystemRandom>();
}

std::string share_folder() {
    return join_path(parent_folder(with_slashes(program_path())), "share/cotter");
}

std::string home_folder() {
    wchar_t* path = nullptr;
    const bool known = ::SHGetKnownFolderPath(FOLDERID_Profile, KF_FLAG_DEFAULT, nullptr, &path) == S_OK;
    const std::string home = known ? with_slashes(path) : ".";
    ::CoTaskMemFree(path);
    return home;
}

std::string absolute_path(const std::string& path) {
    const auto wide = to_wide(path);
    return wide ? with_slashes(from_root(*wide)) : path;
}

bool stdout_is_terminal() {
    return ready_console(STD_OUTPUT_HANDLE) && ready_console(STD_ERROR_HANDLE);
}

// The bytes that we print are the same on every system: no line gets a carriage return.
ProgramStart::ProgramStart(int argc, char** argv) : arguments_(argv, argv + argc) {
    ::_setmode(::_fileno(stdout), _O_BINARY);
    ::_setmode(::_fileno(stderr), _O_BINARY);
    ::SetConsoleOutputCP(CP_UTF8);
    int count = 0;
    wchar_t** words = ::CommandLineToArgvW(::GetCommandLineW(), &count);
    if (words != nullptr) {
        arguments_.clear();
        for (int i = 0; i < count; ++i) arguments_.push_back(to_utf8(words[i]));
        ::LocalFree(words);
    }
    clicked_ = arguments_.size() == 1 && console_is_ours();
    if (clicked_) ::ShowWindow(::GetConsoleWindow(), SW_HIDE);
}

int ProgramStart::end(int exit_code) const {
    if (!clicked_ || exit_code == 0) return exit_code;
    ::ShowWindow(::GetConsoleWindow(), SW_SHOW);
    std::fputs("Press Enter to close this window.\n", stderr);
    (void)std::getchar();
    return exit_code;
}

}  // namespace cotter
