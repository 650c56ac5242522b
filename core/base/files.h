// The door to the disk, as core needs it. Platforms implement it; tests replace it to inject faults.
// Every path is UTF-8. Every call may be made from any thread; a Reader may be read by several at once.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "core/base/bytes.h"
#include "core/base/error.h"
#include "core/base/path.h"

namespace cotter {

struct FileInfo {
    enum class Kind { file, folder, link, other };
    Kind kind = Kind::file;
    std::uint64_t size = 0;  // bytes; 0 for a folder
    std::int64_t modified_unix_s = 0;
};

// A file open for reading. The file may be changed or cut by others meanwhile.
class FileReader {
public:
    virtual ~FileReader() = default;
    [[nodiscard]] virtual std::uint64_t size() const = 0;  // when opened
    // Fills `out` from `offset`, or fails `damaged` when the file ends before that.
    virtual Result<> read_at(std::uint64_t offset, std::span<std::uint8_t> out) const = 0;
};

// A file being written. Destroyed without close(), it is closed and left as it is.
class FileWriter {
public:
    virtual ~FileWriter() = default;
    virtual Result<> write(ByteView bytes) = 0;
    virtual Result<> sync() = 0;   // returns when the bytes have reached the disk
    virtual Result<> close() = 0;  // a failure here means the file is not to be trusted
};

// Held until destroyed; another process's lock() of the same path fails `busy` meanwhile.
class FileLock {
public:
    virtual ~FileLock() = default;
};

class Files {
public:
    virtual ~Files() = default;

    virtual Result<FileInfo> info(const std::string& path) = 0;  // of the link itself; not_found when absent
    virtual Result<std::vector<std::string>> list(const std::string& folder) = 0;  // names only, sorted by byte
    virtual Result<std::unique_ptr<FileReader>> open(const std::string& path) = 0;
    // Creates or empties `path`. `secret`: readable by the owner alone (mode 0600 where there are modes).
    virtual Result<std::unique_ptr<FileWriter>> create(const std::string& path, bool secret = false) = 0;
    virtual Result<> rename(const std::string& from, const std::string& to) = 0;  // replaces `to` atomically
    virtual Result<> remove(const std::string& path) = 0;                         // one file or empty folder
    virtual Result<> make_folders(const std::string& path) = 0;  // with parents; fine when there already
    virtual Result<> sync_folder(const std::string& path) = 0;
    virtual Result<std::unique_ptr<FileLock>> lock(const std::string& path) = 0;
};

// The whole of a file; fails `refused` when it is over `max_bytes`.
[[nodiscard]] Result<Bytes> read_file(Files& files, const std::string& path, std::uint64_t max_bytes);

// Writes `path` so that after a power cut there is the old file or the new one, never a part:
// temporary name in the same folder, sync, rename, folder sync. On failure the temporary is removed.
[[nodiscard]] Result<> replace_file(Files& files, const std::string& path, ByteView bytes, bool secret = false);

}  // namespace cotter
