// Bags as zips and as folders.
#include "core/packet/bag_source.h"

#include <algorithm>

#include "core/base/text.h"

namespace cotter {

namespace {

constexpr std::size_t kBagPiece = std::size_t{256} << 10;  // stays in the second-level cache between its uses
constexpr int kDeepest = 32;                               // folders within folders

class ZipBag final : public BagSource {
public:
    ZipBag(std::unique_ptr<FileReader> file, ZipIndex index) : file_(std::move(file)), index_(std::move(index)) {}

    Result<> find_top(const std::string& path) {
        if (index_.entries.empty()) return fail(Errc::not_ours, "the archive is empty", path);
        top_ = index_.entries[0].name.substr(0, index_.entries[0].name.find('/'));
        for (const ZipEntry& entry : index_.entries) {
            if (!entry.name.starts_with(top_ + "/"))
                return fail(Errc::refused, "the archive does not have exactly one top folder", one_line(entry.name));
            const std::string below = entry.name.substr(top_.size() + 1);
            payload_folder_ = payload_folder_ || below.starts_with("data/");
            if (!entry.folder()) add({below, entry.size});
        }
        std::erase_if(index_.entries, [](const ZipEntry& e) { return e.folder(); });
        return {};
    }
    Result<> read(std::size_t file, const std::function<void(ByteView)>& sink,
                  std::span<std::uint8_t> into) const override {
        return read_entry(*file_, index_.entries[file], sink, into);
    }
    [[nodiscard]] const ZipIndex* archive() const override { return &index_; }
    [[nodiscard]] Result<bool> packed_as_ours(std::size_t file, ByteView unpacked) const override {
        return cotter::packed_as_ours(*file_, index_.entries[file], unpacked);
    }

private:
    std::unique_ptr<FileReader> file_;
    ZipIndex index_;
};

class FolderBag final : public BagSource {
public:
    FolderBag(Files& files, std::string path) : disk_(files), path_(std::move(path)) { top_ = base_name(path_); }

    // Collects the files below `folder` (relative, "" for the top).
    Result<> walk(const std::string& folder, const ZipLimits& limits, int depth) {
        COTTER_ASSIGN(const auto names, disk_.list(join_path(path_, folder)));
        for (const std::string& name : names) {
            const std::string path = join_path(folder, name);
            COTTER_ASSIGN(const FileInfo info, disk_.info(join_path(path_, path)));
            COTTER_TRY(check_one(path, info, limits, depth));
            if (info.kind != FileInfo::Kind::folder) {
                add({path, info.size});
                continue;
            }
            payload_folder_ = payload_folder_ || path == "data";
            COTTER_TRY(walk(path, limits, depth + 1));
        }
        return {};
    }
    Result<> read(std::size_t file, const std::function<void(ByteView)>& sink,
                  std::span<std::uint8_t> into) const override {
        COTTER_ASSIGN(const auto reader, disk_.open(join_path(path_, files_[file].path)));
        if (reader->size() != files_[file].size)
            return fail(Errc::damaged, "the file is being changed while it is read", one_line(files_[file].path));
        Bytes buffer(into.empty() ? static_cast<std::size_t>(std::min<std::uint64_t>(kBagPiece, reader->size())) : 0);
        for (std::uint64_t done = 0; done < reader->size();) {
            const auto size = static_cast<std::size_t>(std::min<std::uint64_t>(kBagPiece, reader->size() - done));
            const auto place = into.empty() ? std::span(buffer) : into.subspan(static_cast<std::size_t>(done));
            COTTER_TRY(reader->read_at(done, place.first(size)));
            done += size;
            sink(place.first(size));
        }
        return {};
    }

private:
    Result<> check_one(const std::string& path, const FileInfo& info, const ZipLimits& limits, int depth) {
        const auto refuse = [&](const char* what) { return fail(Errc::refused, what, one_line(path)); };
        if (!is_utf8(path)) return refuse("its name is not UTF-8");
        if (info.kind == FileInfo::Kind::link || info.kind == FileInfo::Kind::other)
            return refuse("it is a link or a special file");
        if (depth >= kDeepest) return refuse("it lies deeper than allowed");
        if (++seen_ > limits.entries) return refuse("the folder has more files than allowed");
        total_ += info.size;
        if (info.size > limits.file_size || total_ > limits.total_size) return refuse("it is larger than allowed");
        return {};
    }

    Files& disk_;
    std::string path_;
    std::size_t seen_ = 0;
    std::uint64_t total_ = 0;
};

}  // namespace

void BagSource::add(BagFile file) {
    by_path_.emplace(file.path, files_.size());
    files_.push_back(std::move(file));
}

std::optional<std::size_t> BagSource::find(const std::string& path) const {
    const auto it = by_path_.find(path);
    return it == by_path_.end() ? std::nullopt : std::optional(it->second);
}

Result<std::unique_ptr<BagSource>> open_bag(Files& files, const std::string& path, const ZipLimits& limits) {
    const std::string clean = without_end_slash(path);
    COTTER_ASSIGN(const FileInfo info, files.info(clean));
    if (info.kind == FileInfo::Kind::folder) {
        auto bag = std::make_unique<FolderBag>(files, clean);
        COTTER_TRY(bag->walk("", limits, 0));
        return bag;
    }
    COTTER_ASSIGN(auto file, files.open(clean));
    COTTER_ASSIGN(ZipIndex index, read_zip_index(*file, limits));
    auto bag = std::make_unique<ZipBag>(std::move(file), std::move(index));
    COTTER_TRY(bag->find_top(clean));
    return bag;
}

Result<Bytes> read_whole(const BagSource& bag, std::size_t file, std::uint64_t max) {
    const BagFile& f = bag.files()[file];
    if (f.size > max) return fail(Errc::refused, "the file is larger than allowed for its kind", one_line(f.path));
    Bytes out(static_cast<std::size_t>(f.size));
    COTTER_TRY(bag.read(
        file, [](ByteView) {}, out));
    return out;
}

}  // namespace cotter
