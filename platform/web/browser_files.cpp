// See browser_ports.h. A blob's writer collects its bytes in the page; what was closed is there under its name, and is
// kept with the next change of the book, in one transaction with it.
#include <cstdlib>
#include <string_view>

#include "platform/desktop/ports.h"
#include "platform/web/bridge.h"
#include "platform/web/browser_ports.h"

namespace cotter {

namespace {

constexpr std::string_view kBlobFolders[] = {"/book/photos", "/book/previews", "/book/thumbs", "/book/packets",
                                             "/inbox",       "/share",         "/letters"};

class BlobReader final : public FileReader {
public:
    BlobReader(std::string path, std::uint64_t size) : path_(std::move(path)), size_(size) {}
    [[nodiscard]] std::uint64_t size() const override { return size_; }
    Result<> read_at(std::uint64_t offset, std::span<std::uint8_t> out) const override {
        if (offset + out.size() > size_)
            return fail(Errc::damaged, "the file ends too early", path_, "choose it again");
        if (cotter_js_blob_read(path_.c_str(), static_cast<double>(offset), out.data(),
                                static_cast<double>(out.size())) == 0)
            return fail(Errc::io, "the browser cannot read the file any more", path_, "choose it again");
        return {};
    }

private:
    std::string path_;
    std::uint64_t size_;
};

class BlobWriter final : public FileWriter {
public:
    explicit BlobWriter(std::string path) : path_(std::move(path)), writer_(cotter_js_blob_create(path_.c_str())) {}
    ~BlobWriter() override {
        if (writer_ != 0) cotter_js_blob_close(writer_);
    }
    BlobWriter(const BlobWriter&) = delete;
    BlobWriter& operator=(const BlobWriter&) = delete;

    Result<> write(ByteView bytes) override {
        if (cotter_js_blob_write(writer_, bytes.data(), static_cast<double>(bytes.size())) == 0)
            return fail(Errc::no_space, "the browser has no room for the file", path_, "free some space and try again");
        return {};
    }
    Result<> sync() override { return {}; }
    Result<> close() override {
        cotter_js_blob_close(std::exchange(writer_, 0));
        return {};
    }

private:
    std::string path_;
    int writer_;
};

unexpected<Error> no_such(const std::string& path) {
    return fail(Errc::not_found, "there is no such file", path);
}

class BrowserFiles final : public Files {
public:
    Result<FileInfo> info(const std::string& path) override {
        if (!blob_path(path)) return memory_->info(path);
        const double size = cotter_js_blob_size(path.c_str());
        if (size < 0) return no_such(path);
        return FileInfo{FileInfo::Kind::file, static_cast<std::uint64_t>(size), 0};
    }
    Result<std::vector<std::string>> list(const std::string& folder) override {
        if (!blob_path(folder)) return memory_->list(folder);
        const std::unique_ptr<char, decltype(&std::free)> names(cotter_js_blob_list(folder.c_str()), &std::free);
        std::vector<std::string> out;
        std::string_view rest = names.get();
        for (auto end = rest.find('\n'); end != std::string_view::npos; end = rest.find('\n')) {
            out.emplace_back(rest.substr(0, end));
            rest.remove_prefix(end + 1);
        }
        return out;
    }
    Result<std::unique_ptr<FileReader>> open(const std::string& path) override {
        if (!blob_path(path)) return memory_->open(path);
        const double size = cotter_js_blob_size(path.c_str());
        if (size < 0) return no_such(path);
        return std::make_unique<BlobReader>(path, static_cast<std::uint64_t>(size));
    }
    Result<std::unique_ptr<FileWriter>> create(const std::string& path, bool secret) override {
        if (!blob_path(path)) return memory_->create(path, secret);
        return std::make_unique<BlobWriter>(path);
    }
    Result<> rename(const std::string& from, const std::string& to) override {
        if (!blob_path(from)) return memory_->rename(from, to);
        if (cotter_js_blob_rename(from.c_str(), to.c_str()) == 0) return no_such(from);
        return {};
    }
    Result<> remove(const std::string& path) override {
        if (!blob_path(path)) return memory_->remove(path);
        if (cotter_js_blob_remove(path.c_str()) == 0) return no_such(path);
        return {};
    }
    Result<> make_folders(const std::string& path) override {
        return blob_path(path) ? Result<>() : memory_->make_folders(path);
    }
    Result<> sync_folder(const std::string& path) override {
        return blob_path(path) ? Result<>() : memory_->sync_folder(path);
    }
    Result<std::unique_ptr<FileLock>> lock(const std::string& path) override { return memory_->lock(path); }

private:
    std::unique_ptr<Files> memory_ = make_system_files();
};

}  // namespace

bool blob_path(const std::string& path) {
    for (const std::string_view folder : kBlobFolders)
        if (path.starts_with(folder) && (path.size() == folder.size() || path[folder.size()] == '/')) return true;
    return false;
}

std::unique_ptr<Files> make_browser_files() {
    return std::make_unique<BrowserFiles>();
}

}  // namespace cotter
