// Bags as zips and as folders.
#include "core/packet/bag_source.h"

#include <algorithm>

#include "core/base/text.h"

namespace cotter {

namespace {

constexpr std::size_t kPiece = std::size_t{1} << 20;
constexpr int kDeepest = 32;  // folders within folders

class ZipBag final : public BagSource {
public:
    ZipBag(std::unique_ptr<FileReader> file, ZipIndex index) : file_(std::move(file)), index_(std::move(index)) {}

    Result<> find_top(const std::string& path) {
        if (index_.entries.empty()) return fail(Errc::not_ours, "the archive is empty", path);
        top_ = index_.entries[0].name.substr(0, index_.entries[0].name.find('/'));
        std::erase_if(index_.entries, [](const ZipEntry& e) { return e.name.ends_with('/'); });
        for (const ZipEntry& entry : index_.entries) {
            if (!entry.name.starts_with(top_ + "/"))
                return fail(Errc::refused, "the archive does not have exactly one top folder", one_line(entry.name));
            files_.push_back({entry.name.substr(top_.size() + 1), entry.size});
        }
        return {};
    }
    Result<> read(std::size_t file, const std::function<void(ByteView)>& sink) const override {
        return read_entry(*file_, index_.entries[file], sink);
    }
    [[nodiscard]] const ZipIndex* archive() const override { return &index_; }
    [[nodiscard]] Result<bool> packed_as_ours(std::size_t file, ByteView unpacked) const override {
        return compressed_as_ours(*file_, index_.entries[file], unpacked);
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
            const bool is_folder = info.kind == FileInfo::Kind::folder;
            if (!is_folder && info.kind != FileInfo::Kind::file)
                return fail(Errc::refused, "it is a link or a special file", one_line(path));
            if (depth > kDeepest || files_.size() >= limits.entries)
                return fail(Errc::refused, "the folder has more files or levels than allowed", one_line(path));
            if (is_folder) COTTER_TRY(walk(path, limits, depth + 1));
            else files_.push_back({path, info.size});
        }
        return {};
    }
    Result<> read(std::size_t file, const std::function<void(ByteView)>& sink) const override {
        COTTER_ASSIGN(const auto reader, disk_.open(join_path(path_, files_[file].path)));
        if (reader->size() != files_[file].size)
            return fail(Errc::damaged, "the file is being changed while it is read", one_line(files_[file].path));
        Bytes buffer(static_cast<std::size_t>(std::min<std::uint64_t>(kPiece, reader->size())));
        for (std::uint64_t done = 0; done < reader->size(); done += buffer.size()) {
            if (reader->size() - done < buffer.size()) buffer.resize(static_cast<std::size_t>(reader->size() - done));
            COTTER_TRY(reader->read_at(done, buffer));
            sink(buffer);
        }
        return {};
    }

private:
    Files& disk_;
    std::string path_;
};

}  // namespace

Result<std::unique_ptr<BagSource>> open_bag(Files& files, const std::string& path, const ZipLimits& limits) {
    std::string clean = path;
    while (clean.size() > 1 && clean.back() == '/') clean.pop_back();
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
    Bytes out;
    out.reserve(static_cast<std::size_t>(f.size));
    COTTER_TRY(bag.read(file, [&](ByteView piece) { out.insert(out.end(), piece.begin(), piece.end()); }));
    return out;
}

}  // namespace cotter
