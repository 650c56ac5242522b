// Files on a POSIX system.
// Works: reading, writing, atomic rename, folder sync, advisory locks between processes, modes.
// Not here: watching a folder (the app polls).
#include <cerrno>
#include <cstring>
#include <dirent.h>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>

#include "platform/desktop/ports.h"

namespace cotter {

namespace {

Errc code_of(int error) {
    switch (error) {
        case ENOENT:
        case ENOTDIR:
            return Errc::not_found;
        case ENOSPC:
        case EDQUOT:
            return Errc::no_space;
        case EWOULDBLOCK:
            return Errc::busy;
        default:
            return Errc::io;
    }
}

std::string advice_for(int error) {
    switch (error) {
        case ENOSPC:
        case EDQUOT:
            return "free some space and try again";
        case EACCES:
        case EPERM:
        case EROFS:
            return "choose a place that you may write to";
        default:
            return {};
    }
}

unexpected<Error> system_failure(const char* what, const std::string& path, int error = errno) {
    return fail(code_of(error), std::string(what) + " (" + std::strerror(error) + ")", path, advice_for(error));
}

// A file descriptor that closes itself.
class Descriptor {
public:
    explicit Descriptor(int fd) : fd_(fd) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (fd_ >= 0) ::close(fd_);
    }
    [[nodiscard]] int get() const { return fd_; }
    [[nodiscard]] int release() { return std::exchange(fd_, -1); }

private:
    int fd_;
};

class PosixReader final : public FileReader {
public:
    PosixReader(int fd, std::uint64_t size, std::string path) : fd_(fd), size_(size), path_(std::move(path)) {}
    [[nodiscard]] std::uint64_t size() const override { return size_; }

    Result<> read_at(std::uint64_t offset, std::span<std::uint8_t> out) const override {
        while (!out.empty()) {
            const ssize_t got = ::pread(fd_.get(), out.data(), out.size(), static_cast<off_t>(offset));
            if (got < 0 && errno == EINTR) continue;
            if (got < 0) return system_failure("cannot read the file", path_);
            if (got == 0) return fail(Errc::damaged, "the file ends too early", path_, "copy it again");
            offset += static_cast<std::uint64_t>(got);
            out = out.subspan(static_cast<std::size_t>(got));
        }
        return {};
    }

private:
    Descriptor fd_;
    std::uint64_t size_;
    std::string path_;
};

class PosixWriter final : public FileWriter {
public:
    PosixWriter(int fd, std::string path) : fd_(fd), path_(std::move(path)) {}

    Result<> write(ByteView bytes) override {
        while (!bytes.empty()) {
            const ssize_t put = ::write(fd_.get(), bytes.data(), bytes.size());
            if (put < 0 && errno == EINTR) continue;
            if (put < 0) return system_failure("cannot write the file", path_);
            bytes = bytes.subspan(static_cast<std::size_t>(put));
        }
        return {};
    }
    Result<> sync() override {
        if (::fsync(fd_.get()) != 0) return system_failure("cannot bring the file to the disk", path_);
        return {};
    }
    Result<> close() override {
        if (::close(fd_.release()) != 0) return system_failure("cannot finish the file", path_);
        return {};
    }

private:
    Descriptor fd_;
    std::string path_;
};

class PosixLock final : public FileLock {
public:
    explicit PosixLock(int fd) : fd_(fd) {}

private:
    Descriptor fd_;
};

FileInfo::Kind kind_of(mode_t mode) {
    if (S_ISREG(mode)) return FileInfo::Kind::file;
    if (S_ISDIR(mode)) return FileInfo::Kind::folder;
    return S_ISLNK(mode) ? FileInfo::Kind::link : FileInfo::Kind::other;
}

class PosixFiles final : public Files {
public:
    Result<FileInfo> info(const std::string& path) override {
        struct stat st {};
        if (::lstat(path.c_str(), &st) != 0) return system_failure("cannot look at the file", path);
        const auto kind = kind_of(st.st_mode);
        const std::uint64_t size = kind == FileInfo::Kind::folder ? 0 : static_cast<std::uint64_t>(st.st_size);
        return FileInfo{kind, size, st.st_mtime};
    }

    Result<std::vector<std::string>> list(const std::string& folder) override {
        DIR* dir = ::opendir(folder.c_str());
        if (dir == nullptr) return system_failure("cannot list the folder", folder);
        std::vector<std::string> names;
        while (const dirent* entry = ::readdir(dir)) {
            const std::string_view name = entry->d_name;
            if (name != "." && name != "..") names.emplace_back(name);
        }
        ::closedir(dir);
        std::sort(names.begin(), names.end());
        return names;
    }

    Result<std::unique_ptr<FileReader>> open(const std::string& path) override {
        const int fd = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
        if (fd < 0) return system_failure("cannot open the file", path);
        Descriptor guard(fd);
        struct stat st {};
        if (::fstat(fd, &st) != 0) return system_failure("cannot look at the file", path);
        if (!S_ISREG(st.st_mode)) return fail(Errc::refused, "this is not a file", path);
        return std::make_unique<PosixReader>(guard.release(), static_cast<std::uint64_t>(st.st_size), path);
    }

    Result<std::unique_ptr<FileWriter>> create(const std::string& path, bool secret) override {
        const int fd = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, secret ? 0600 : 0666);
        if (fd < 0) return system_failure("cannot create the file", path);
        return std::make_unique<PosixWriter>(fd, path);
    }

    Result<> rename(const std::string& from, const std::string& to) override {
        if (::rename(from.c_str(), to.c_str()) != 0) return system_failure("cannot rename the file", to);
        return {};
    }

    Result<> remove(const std::string& path) override {
        if (::remove(path.c_str()) != 0) return system_failure("cannot remove the file", path);
        return {};
    }

    Result<> make_folders(const std::string& path) override {
        for (auto slash = path.find('/', 1); slash != std::string::npos; slash = path.find('/', slash + 1))
            COTTER_TRY(make_one(path.substr(0, slash)));
        return make_one(path);
    }

    Result<> sync_folder(const std::string& path) override {
        const Descriptor fd(::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
        if (fd.get() < 0 || ::fsync(fd.get()) != 0) return system_failure("cannot bring the folder to the disk", path);
        return {};
    }

    Result<std::unique_ptr<FileLock>> lock(const std::string& path) override {
        const int fd = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
        if (fd < 0) return system_failure("cannot create the lock", path);
        auto lock = std::make_unique<PosixLock>(fd);
        if (::flock(fd, LOCK_EX | LOCK_NB) != 0) return system_failure("it is in use by another process", path);
        return lock;
    }

private:
    static Result<> make_one(const std::string& path) {
        if (::mkdir(path.c_str(), 0777) == 0 || errno == EEXIST) {
            struct stat st {};
            if (::stat(path.c_str(), &st) == 0 && S_ISDIR(st.st_mode)) return {};
            return fail(Errc::refused, "a file stands where a folder is needed", path);
        }
        return system_failure("cannot make the folder", path);
    }
};

}  // namespace

std::unique_ptr<Files> make_system_files() {
    return std::make_unique<PosixFiles>();
}

}  // namespace cotter
