// Files on Windows, the twin of platform/desktop/posix_files.cpp.
// Works: reading, writing, atomic rename that waits for the disk, locks between processes, files of the owner alone,
// paths in UTF-8 and of any length. A file that we have open keeps nobody from reading or removing it. Not here:
// bringing a folder to the disk by itself, which Windows has no call for; a rename waits for the disk instead, and what
// is in a file is there after its own sync().
#include <windows.h>

#include <sddl.h>

#include <algorithm>
#include <utility>

#include "platform/desktop/ports.h"
#include "platform/windows/wide.h"

namespace cotter {

namespace {

constexpr DWORD kShared = FILE_SHARE_READ | FILE_SHARE_WRITE | FILE_SHARE_DELETE;
constexpr DWORD kQuotaExceeded = 1295;  // ERROR_DISK_QUOTA_EXCEEDED, which not every SDK names
constexpr int kTries = 20;              // a virus scanner or an indexer may have a new file open for a moment
constexpr DWORD kBetweenTries = 25;     // ms

Errc code_of(DWORD error) {
    switch (error) {
        case ERROR_FILE_NOT_FOUND:
        case ERROR_PATH_NOT_FOUND:
        case ERROR_INVALID_DRIVE:
        case ERROR_BAD_NETPATH:
        case ERROR_BAD_NET_NAME:
            return Errc::not_found;
        case ERROR_DISK_FULL:
        case ERROR_HANDLE_DISK_FULL:
        case kQuotaExceeded:
            return Errc::no_space;
        case ERROR_SHARING_VIOLATION:
        case ERROR_LOCK_VIOLATION:
            return Errc::busy;
        default:
            return Errc::io;
    }
}

std::string advice_for(DWORD error) {
    switch (error) {
        case ERROR_DISK_FULL:
        case ERROR_HANDLE_DISK_FULL:
        case kQuotaExceeded:
            return "free some space and try again";
        case ERROR_ACCESS_DENIED:
        case ERROR_WRITE_PROTECT:
            return "choose a place that you may write to";
        case ERROR_SHARING_VIOLATION:
        case ERROR_LOCK_VIOLATION:
            return "close it in the other program and try again";
        case ERROR_INVALID_NAME:
            return "a name on Windows has none of < > : \" | ? *";
        default:
            return {};
    }
}

// What the system says to an error, in one line.
std::string words_of(DWORD error) {
    wchar_t text[512];
    DWORD size = ::FormatMessageW(FORMAT_MESSAGE_FROM_SYSTEM | FORMAT_MESSAGE_IGNORE_INSERTS, nullptr, error, 0, text,
                                  512, nullptr);
    while (size > 0 && (text[size - 1] <= L' ' || text[size - 1] == L'.')) size -= 1;
    return size == 0 ? "error " + std::to_string(error) : to_utf8({text, size});
}

unexpected<Error> system_failure(const char* what, const std::string& path, DWORD error = ::GetLastError()) {
    return fail(code_of(error), std::string(what) + " (" + words_of(error) + ")", path, advice_for(error));
}

Result<std::wstring> wide(const std::string& path) {
    auto out = wide_path(path);
    if (!out) return fail(Errc::refused, "the path is no readable text", path, "write it in UTF-8");
    return *std::move(out);
}

// A handle that closes itself.
class Handle {
public:
    explicit Handle(HANDLE handle) : handle_(handle) {}
    Handle(Handle&& other) noexcept : handle_(other.release()) {}
    Handle& operator=(Handle&& other) noexcept {
        std::swap(handle_, other.handle_);
        return *this;
    }
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;
    ~Handle() {
        if (good()) ::CloseHandle(handle_);
    }
    [[nodiscard]] bool good() const { return handle_ != INVALID_HANDLE_VALUE && handle_ != nullptr; }
    [[nodiscard]] HANDLE get() const { return handle_; }
    [[nodiscard]] HANDLE release() { return std::exchange(handle_, INVALID_HANDLE_VALUE); }

private:
    HANDLE handle_;
};

OVERLAPPED at_offset(std::uint64_t offset) {
    OVERLAPPED at{};
    at.Offset = static_cast<DWORD>(offset);
    at.OffsetHigh = static_cast<DWORD>(offset >> 32);
    return at;
}

DWORD one_call(std::size_t size) {
    constexpr std::size_t kMost = 64u << 20;
    return static_cast<DWORD>(std::min(size, kMost));
}

class WindowsReader final : public FileReader {
public:
    WindowsReader(Handle file, std::uint64_t size, std::string path)
        : file_(std::move(file)), size_(size), path_(std::move(path)) {}
    [[nodiscard]] std::uint64_t size() const override { return size_; }

    Result<> read_at(std::uint64_t offset, std::span<std::uint8_t> out) const override {
        while (!out.empty()) {
            OVERLAPPED at = at_offset(offset);
            DWORD got = 0;
            const BOOL done = ::ReadFile(file_.get(), out.data(), one_call(out.size()), &got, &at);
            if (done == FALSE && ::GetLastError() != ERROR_HANDLE_EOF)
                return system_failure("cannot read the file", path_);
            if (got == 0) return fail(Errc::damaged, "the file ends too early", path_, "copy it again");
            offset += got;
            out = out.subspan(got);
        }
        return {};
    }

private:
    Handle file_;
    std::uint64_t size_;
    std::string path_;
};

class WindowsWriter final : public FileWriter {
public:
    WindowsWriter(Handle file, std::string path) : file_(std::move(file)), path_(std::move(path)) {}

    Result<> write(ByteView bytes) override {
        while (!bytes.empty()) {
            DWORD put = 0;
            if (::WriteFile(file_.get(), bytes.data(), one_call(bytes.size()), &put, nullptr) == FALSE)
                return system_failure("cannot write the file", path_);
            bytes = bytes.subspan(put);
        }
        return {};
    }
    Result<> sync() override {
        if (::FlushFileBuffers(file_.get()) == FALSE) return system_failure("cannot bring the file to the disk", path_);
        return {};
    }
    Result<> close() override {
        if (::CloseHandle(file_.release()) == FALSE) return system_failure("cannot finish the file", path_);
        return {};
    }

private:
    Handle file_;
    std::string path_;
};

class WindowsLock final : public FileLock {
public:
    explicit WindowsLock(Handle file) : file_(std::move(file)) {}

private:
    Handle file_;  // the lock ends with it, also when the process is killed
};

// Access for the user who runs us and nobody else. Nothing where the system does not tell who that is.
class OwnerOnly {
public:
    OwnerOnly() {
        HANDLE raw = nullptr;
        if (::OpenProcessToken(::GetCurrentProcess(), TOKEN_QUERY, &raw) == FALSE) return;
        const Handle token(raw);
        alignas(TOKEN_USER) std::uint8_t user[256];
        DWORD size = 0;
        LPWSTR name = nullptr;
        if (::GetTokenInformation(token.get(), TokenUser, user, sizeof user, &size) == FALSE ||
            ::ConvertSidToStringSidW(reinterpret_cast<TOKEN_USER*>(user)->User.Sid, &name) == FALSE)
            return;
        const std::wstring rule = std::wstring(L"D:P(A;;FA;;;") + name + L")";
        ::LocalFree(name);
        ::ConvertStringSecurityDescriptorToSecurityDescriptorW(rule.c_str(), SDDL_REVISION_1, &descriptor_, nullptr);
    }
    OwnerOnly(const OwnerOnly&) = delete;
    OwnerOnly& operator=(const OwnerOnly&) = delete;
    ~OwnerOnly() { ::LocalFree(descriptor_); }
    [[nodiscard]] bool good() const { return descriptor_ != nullptr; }
    [[nodiscard]] SECURITY_ATTRIBUTES attributes() const { return {sizeof(SECURITY_ATTRIBUTES), descriptor_, FALSE}; }

private:
    PSECURITY_DESCRIPTOR descriptor_ = nullptr;
};

FileInfo::Kind kind_of(const FILE_ATTRIBUTE_TAG_INFO& what) {
    const bool link = what.ReparseTag == IO_REPARSE_TAG_SYMLINK || what.ReparseTag == IO_REPARSE_TAG_MOUNT_POINT;
    if ((what.FileAttributes & FILE_ATTRIBUTE_REPARSE_POINT) != 0 && link) return FileInfo::Kind::link;
    return (what.FileAttributes & FILE_ATTRIBUTE_DIRECTORY) != 0 ? FileInfo::Kind::folder : FileInfo::Kind::file;
}

std::int64_t unix_seconds(const FILETIME& time) {
    constexpr std::int64_t kTicks = 10'000'000;               // a second, of 100 ns
    constexpr std::int64_t kFrom1601To1970 = 11'644'473'600;  // s
    const auto ticks = (static_cast<std::uint64_t>(time.dwHighDateTime) << 32) | time.dwLowDateTime;
    return static_cast<std::int64_t>(ticks) / kTicks - kFrom1601To1970;
}

std::uint64_t whole(DWORD high, DWORD low) {
    return (static_cast<std::uint64_t>(high) << 32) | low;
}

bool is_folder(const std::wstring& path) {
    const DWORD attributes = ::GetFileAttributesW(path.c_str());
    return attributes != INVALID_FILE_ATTRIBUTES && (attributes & FILE_ATTRIBUTE_DIRECTORY) != 0;
}

// Tries again while somebody else has the file open without sharing it.
template <class Call>
bool patiently(const Call& call) {
    for (int i = 1; !call(); ++i) {
        const DWORD error = ::GetLastError();
        if (i == kTries || (error != ERROR_SHARING_VIOLATION && error != ERROR_ACCESS_DENIED)) return false;
        ::Sleep(kBetweenTries);
        ::SetLastError(error);
    }
    return true;
}

class WindowsFiles final : public Files {
public:
    Result<FileInfo> info(const std::string& path) override {
        COTTER_ASSIGN(const auto name, wide(path));
        const Handle file(::CreateFileW(name.c_str(), FILE_READ_ATTRIBUTES, kShared, nullptr, OPEN_EXISTING,
                                        FILE_FLAG_BACKUP_SEMANTICS | FILE_FLAG_OPEN_REPARSE_POINT, nullptr));
        if (!file.good()) return system_failure("cannot look at the file", path);
        if (::GetFileType(file.get()) != FILE_TYPE_DISK) return FileInfo{FileInfo::Kind::other, 0, 0};
        BY_HANDLE_FILE_INFORMATION facts{};
        FILE_ATTRIBUTE_TAG_INFO tag{};
        if (::GetFileInformationByHandle(file.get(), &facts) == FALSE)
            return system_failure("cannot look at the file", path);
        tag.FileAttributes = facts.dwFileAttributes;
        if ((facts.dwFileAttributes & FILE_ATTRIBUTE_REPARSE_POINT) != 0)
            ::GetFileInformationByHandleEx(file.get(), FileAttributeTagInfo, &tag, sizeof tag);
        const auto kind = kind_of(tag);
        const bool sized = kind != FileInfo::Kind::folder;
        return FileInfo{kind, sized ? whole(facts.nFileSizeHigh, facts.nFileSizeLow) : 0,
                        unix_seconds(facts.ftLastWriteTime)};
    }

    Result<std::vector<std::string>> list(const std::string& folder) override {
        COTTER_ASSIGN(const auto pattern, wide(join_path(folder, "*")));
        WIN32_FIND_DATAW entry{};
        HANDLE search = ::FindFirstFileExW(pattern.c_str(), FindExInfoBasic, &entry, FindExSearchNameMatch, nullptr,
                                           FIND_FIRST_EX_LARGE_FETCH);
        if (search == INVALID_HANDLE_VALUE) return system_failure("cannot list the folder", folder);
        std::vector<std::string> names;
        do {
            const std::wstring_view name = entry.cFileName;
            if (name != L"." && name != L"..") names.push_back(to_utf8(name));
        } while (::FindNextFileW(search, &entry) != FALSE);
        const DWORD error = ::GetLastError();
        ::FindClose(search);
        if (error != ERROR_NO_MORE_FILES) return system_failure("cannot list the folder", folder, error);
        std::sort(names.begin(), names.end());
        return names;
    }

    Result<std::unique_ptr<FileReader>> open(const std::string& path) override {
        COTTER_ASSIGN(const auto name, wide(path));
        Handle file(::CreateFileW(name.c_str(), GENERIC_READ, kShared, nullptr, OPEN_EXISTING, 0, nullptr));
        const DWORD error = ::GetLastError();
        if (!file.good() && error == ERROR_ACCESS_DENIED && is_folder(name)) return no_file(path);
        if (!file.good()) return system_failure("cannot open the file", path, error);
        if (::GetFileType(file.get()) != FILE_TYPE_DISK) return no_file(path);
        LARGE_INTEGER size{};
        if (::GetFileSizeEx(file.get(), &size) == FALSE) return system_failure("cannot look at the file", path);
        return std::make_unique<WindowsReader>(std::move(file), static_cast<std::uint64_t>(size.QuadPart), path);
    }

    Result<std::unique_ptr<FileWriter>> create(const std::string& path, bool secret) override {
        COTTER_ASSIGN(const auto name, wide(path));
        const OwnerOnly owner;
        auto rule = owner.attributes();
        if (secret) ::DeleteFileW(name.c_str());  // one that is there would keep its own rules
        Handle file(INVALID_HANDLE_VALUE);
        const bool made = patiently([&] {
            file = Handle(::CreateFileW(name.c_str(), GENERIC_WRITE, kShared, secret && owner.good() ? &rule : nullptr,
                                        CREATE_ALWAYS, FILE_ATTRIBUTE_NORMAL, nullptr));
            return file.good();
        });
        if (!made) return system_failure("cannot create the file", path);
        return std::make_unique<WindowsWriter>(std::move(file), path);
    }

    Result<> rename(const std::string& from, const std::string& to) override {
        COTTER_ASSIGN(const auto old_name, wide(from));
        COTTER_ASSIGN(const auto new_name, wide(to));
        const bool done = patiently([&] {
            return ::MoveFileExW(old_name.c_str(), new_name.c_str(),
                                 MOVEFILE_REPLACE_EXISTING | MOVEFILE_WRITE_THROUGH) != FALSE;
        });
        return done ? Result<>() : system_failure("cannot rename the file", to);
    }

    Result<> remove(const std::string& path) override {
        COTTER_ASSIGN(const auto name, wide(path));
        const bool done = patiently([&] {
            return (is_folder(name) ? ::RemoveDirectoryW(name.c_str()) : ::DeleteFileW(name.c_str())) != FALSE;
        });
        return done ? Result<>() : system_failure("cannot remove the file", path);
    }

    Result<> make_folders(const std::string& path) override {
        COTTER_ASSIGN(const auto name, wide(path));
        if (is_folder(name) || ::CreateDirectoryW(name.c_str(), nullptr) != FALSE) return {};
        const DWORD error = ::GetLastError();
        if (error == ERROR_ALREADY_EXISTS && !is_folder(name))
            return fail(Errc::refused, "a file stands where a folder is needed", path);
        if (error == ERROR_ALREADY_EXISTS) return {};
        const std::string parent = parent_folder(without_end_slash(path));
        if (error != ERROR_PATH_NOT_FOUND || parent.size() >= path.size())
            return system_failure("cannot make the folder", path, error);
        COTTER_TRY(make_folders(parent));
        if (::CreateDirectoryW(name.c_str(), nullptr) != FALSE || is_folder(name)) return {};
        return system_failure("cannot make the folder", path);
    }

    Result<> sync_folder(const std::string& path) override {
        COTTER_ASSIGN(const auto name, wide(path));
        if (is_folder(name)) return {};
        return system_failure("cannot bring the folder to the disk", path, ERROR_PATH_NOT_FOUND);
    }

    Result<std::unique_ptr<FileLock>> lock(const std::string& path) override {
        COTTER_ASSIGN(const auto name, wide(path));
        Handle file(
            ::CreateFileW(name.c_str(), GENERIC_READ | GENERIC_WRITE, kShared, nullptr, OPEN_ALWAYS, 0, nullptr));
        if (!file.good()) return system_failure("cannot create the lock", path);
        OVERLAPPED at = at_offset(0);
        if (::LockFileEx(file.get(), LOCKFILE_EXCLUSIVE_LOCK | LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, &at) == FALSE)
            return system_failure("it is in use by another process", path);
        return std::make_unique<WindowsLock>(std::move(file));
    }

private:
    static unexpected<Error> no_file(const std::string& path) {
        return fail(Errc::refused, "this is not a file", path);
    }
};

}  // namespace

std::unique_ptr<Files> make_system_files() {
    return std::make_unique<WindowsFiles>();
}

}  // namespace cotter
