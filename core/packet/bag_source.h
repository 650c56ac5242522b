// A bag's files, whether it lies there as a folder or as a zip. Reading is allowed from several threads at once.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/base/files.h"
#include "core/packet/zip_reader.h"

namespace cotter {

struct BagFile {
    std::string path;  // below the bag's top folder, "data/job.json"
    std::uint64_t size = 0;
    [[nodiscard]] bool payload() const { return path.starts_with("data/"); }
};

class BagSource {
public:
    virtual ~BagSource() = default;
    [[nodiscard]] const std::vector<BagFile>& files() const { return files_; }
    [[nodiscard]] const std::string& top() const { return top_; }  // the top folder's name
    [[nodiscard]] bool has_payload_folder() const { return payload_folder_; }
    [[nodiscard]] std::optional<std::size_t> find(const std::string& path) const;
    // The file's bytes in pieces of at most 256 KiB; fails when they cannot be read whole and right. `into`: empty, or
    // as long as the file; then the pieces lie there, and stay.
    virtual Result<> read(std::size_t file, const std::function<void(ByteView)>& sink,
                          std::span<std::uint8_t> into) const = 0;
    // The archive behind it, or nullptr for a folder; entries are in the order of files(), folders left out.
    [[nodiscard]] virtual const ZipIndex* archive() const { return nullptr; }
    // Whether a deflated entry is packed as our own writer does it.
    [[nodiscard]] virtual Result<bool> packed_as_ours(std::size_t, ByteView) const { return true; }

protected:
    void add(BagFile file);
    std::vector<BagFile> files_;
    std::string top_;
    bool payload_folder_ = false;

private:
    std::unordered_map<std::string, std::size_t> by_path_;
};

// Opens a folder or a zip with exactly one top folder, after all structural checks. `path` may end in '/'.
[[nodiscard]] Result<std::unique_ptr<BagSource>> open_bag(Files& files, const std::string& path,
                                                          const ZipLimits& limits);

// The whole of one file of at most `max` bytes.
[[nodiscard]] Result<Bytes> read_whole(const BagSource& bag, std::size_t file, std::uint64_t max);

}  // namespace cotter
