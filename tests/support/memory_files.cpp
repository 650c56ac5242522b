// The in-memory disk: a tree of nodes, each with what is seen now and what has reached the disk.
#include "tests/support/memory_files.h"

#include <algorithm>
#include <map>
#include <mutex>
#include <set>

namespace cotter {

namespace {

struct Node;
using Names = std::map<std::string, std::shared_ptr<Node>>;

struct Node {
    bool folder = false;
    Bytes content{}, on_disk{};      // of a file
    Names names{}, names_on_disk{};  // of a folder
};

std::vector<std::string> parts_of(const std::string& path) {
    std::vector<std::string> parts;
    for (std::size_t at = 0; at <= path.size();) {
        const auto slash = std::min(path.find('/', at), path.size());
        if (slash > at && path.substr(at, slash - at) != ".") parts.push_back(path.substr(at, slash - at));
        at = slash + 1;
    }
    return parts;
}

void lose_unsynced(Node& node, MemoryFiles::Cut cut) {
    node.content = node.on_disk;
    if (cut == MemoryFiles::Cut::strict) node.names = node.names_on_disk;
    node.names_on_disk = node.names;
    for (auto& [name, child] : node.names) lose_unsynced(*child, cut);
}

void collect(const Node& node, const std::string& at, std::vector<std::string>& out) {
    for (const auto& [name, child] : node.names) {
        const std::string path = at.empty() ? name : at + "/" + name;
        if (child->folder)
            collect(*child, path, out);
        else
            out.push_back(path);
    }
}

enum class Need { no_space_too, io_only };  // may the call run out of space?

}  // namespace

struct MemoryFiles::Disk {
    mutable std::mutex mutex;
    std::shared_ptr<Node> root = std::make_shared<Node>(Node{.folder = true});
    std::set<std::string> locked;
    int era = 0;  // counts power cuts
    int calls = 0, strike_at = 0;
    bool struck = false;
    Errc code = Errc::io;
    Mode mode = Mode::once;

    // Counts a call; its error when the armed failure strikes it.
    Result<> step(const char* what, const std::string& path, Need need) {
        if (code == Errc::no_space && need == Need::io_only) return {};
        ++calls;
        if (strike_at == 0 || calls < strike_at || (mode == Mode::once && calls > strike_at)) return {};
        struck = true;
        return fail(code, std::string("this ") + what + " was made to fail", path);
    }

    [[nodiscard]] std::shared_ptr<Node> find(const std::string& path) const {
        std::shared_ptr<Node> node = root;
        for (const auto& part : parts_of(path)) {
            const auto it = node->names.find(part);
            if (it == node->names.end()) return nullptr;
            node = it->second;
        }
        return node;
    }

    // The folder that holds `path`, or nullptr.
    [[nodiscard]] std::shared_ptr<Node> holder(const std::string& path) const {
        auto node = find(parent_folder(path));
        return node && node->folder ? node : nullptr;
    }

    void arm(int n, Errc new_code, Mode new_mode) {
        const std::lock_guard guard(mutex);
        calls = 0, strike_at = n, struck = false, code = new_code, mode = new_mode;
    }
};

namespace {

using Disk = MemoryFiles::Disk;

unexpected<Error> absent(const std::string& path) {
    return fail(Errc::not_found, "there is no such file or folder", path);
}

// A file open for reading or writing: gone with the power.
struct Handle {
    std::shared_ptr<Disk> disk;
    std::shared_ptr<Node> node;
    std::string path;
    int era;

    [[nodiscard]] Result<> step(const char* what, Need need) const {
        if (era != disk->era) return fail(Errc::io, "the power went since this was opened", path);
        return disk->step(what, path, need);
    }
};

class Reader final : public FileReader {
public:
    explicit Reader(Handle handle) : handle_(std::move(handle)), size_(handle_.node->content.size()) {}
    [[nodiscard]] std::uint64_t size() const override { return size_; }
    Result<> read_at(std::uint64_t offset, std::span<std::uint8_t> out) const override {
        const std::lock_guard guard(handle_.disk->mutex);
        COTTER_TRY(handle_.step("read", Need::io_only));
        const Bytes& content = handle_.node->content;
        if (offset > content.size() || out.size() > content.size() - offset)
            return fail(Errc::damaged, "the file ends too early", handle_.path);
        std::copy_n(content.begin() + static_cast<std::ptrdiff_t>(offset), out.size(), out.begin());
        return {};
    }

private:
    Handle handle_;
    std::uint64_t size_;
};

class Writer final : public FileWriter {
public:
    explicit Writer(Handle handle) : handle_(std::move(handle)) {}
    Result<> write(ByteView bytes) override {
        const std::lock_guard guard(handle_.disk->mutex);
        auto done = handle_.step("write", Need::no_space_too);
        if (done || handle_.era == handle_.disk->era) {
            const ByteView kept = done ? bytes : bytes.first(bytes.size() / 2);
            handle_.node->content.insert(handle_.node->content.end(), kept.begin(), kept.end());
        }
        return done;
    }
    Result<> sync() override {
        const std::lock_guard guard(handle_.disk->mutex);
        COTTER_TRY(handle_.step("sync", Need::no_space_too));
        handle_.node->on_disk = handle_.node->content;
        return {};
    }
    Result<> close() override {
        const std::lock_guard guard(handle_.disk->mutex);
        return handle_.step("close", Need::no_space_too);
    }

private:
    Handle handle_;
};

class Lock final : public FileLock {
public:
    explicit Lock(Handle handle) : handle_(std::move(handle)) {}
    ~Lock() override {
        const std::lock_guard guard(handle_.disk->mutex);
        if (handle_.era == handle_.disk->era) handle_.disk->locked.erase(handle_.path);
    }

private:
    Handle handle_;
};

}  // namespace

MemoryFiles::MemoryFiles() : disk_(std::make_shared<Disk>()) {}
MemoryFiles::~MemoryFiles() = default;

void MemoryFiles::fail_call(int n, Errc code, Mode mode) {
    disk_->arm(n, code, mode);
}
void MemoryFiles::stop_failing() {
    disk_->arm(0, Errc::io, Mode::once);
}
bool MemoryFiles::failed() const {
    const std::lock_guard guard(disk_->mutex);
    return disk_->struck;
}
int MemoryFiles::calls() const {
    const std::lock_guard guard(disk_->mutex);
    return disk_->calls;
}

void MemoryFiles::power_cut(Cut cut) {
    const std::lock_guard guard(disk_->mutex);
    lose_unsynced(*disk_->root, cut);
    disk_->locked.clear();
    ++disk_->era;
}

void MemoryFiles::put(const std::string& path, ByteView bytes) {
    const std::lock_guard guard(disk_->mutex);
    std::shared_ptr<Node> node = disk_->root;
    for (const auto& part : parts_of(path)) {
        node->folder = true;
        auto& child = node->names[part];
        if (!child) child = std::make_shared<Node>();
        node->names_on_disk[part] = child;
        node = child;
    }
    node->content.assign(bytes.begin(), bytes.end());
    node->on_disk = node->content;
}

Bytes MemoryFiles::get(const std::string& path) const {
    const std::lock_guard guard(disk_->mutex);
    const auto node = disk_->find(path);
    return node ? node->content : Bytes{};
}

bool MemoryFiles::has(const std::string& path) const {
    const std::lock_guard guard(disk_->mutex);
    return disk_->find(path) != nullptr;
}

std::vector<std::string> MemoryFiles::all_files() const {
    const std::lock_guard guard(disk_->mutex);
    std::vector<std::string> paths;
    collect(*disk_->root, "", paths);
    std::sort(paths.begin(), paths.end());
    return paths;
}

void MemoryFiles::flip_bit(const std::string& path, std::size_t offset) {
    const std::lock_guard guard(disk_->mutex);
    const auto node = disk_->find(path);
    if (node && offset < node->content.size()) node->content[offset] ^= 1;
    if (node && offset < node->on_disk.size()) node->on_disk[offset] ^= 1;
}

Result<FileInfo> MemoryFiles::info(const std::string& path) {
    const std::lock_guard guard(disk_->mutex);
    COTTER_TRY(disk_->step("look", path, Need::io_only));
    const auto node = disk_->find(path);
    if (!node) return absent(path);
    return FileInfo{node->folder ? FileInfo::Kind::folder : FileInfo::Kind::file, node->content.size(), 0};
}

Result<std::vector<std::string>> MemoryFiles::list(const std::string& folder) {
    const std::lock_guard guard(disk_->mutex);
    COTTER_TRY(disk_->step("listing", folder, Need::io_only));
    const auto node = disk_->find(folder);
    if (!node || !node->folder) return absent(folder);
    std::vector<std::string> out;
    for (const auto& [name, child] : node->names) out.push_back(name);
    return out;
}

Result<std::unique_ptr<FileReader>> MemoryFiles::open(const std::string& path) {
    const std::lock_guard guard(disk_->mutex);
    COTTER_TRY(disk_->step("opening", path, Need::io_only));
    auto node = disk_->find(path);
    if (!node) return absent(path);
    if (node->folder) return fail(Errc::refused, "this is not a file", path);
    return std::make_unique<Reader>(Handle{disk_, std::move(node), path, disk_->era});
}

Result<std::unique_ptr<FileWriter>> MemoryFiles::create(const std::string& path, bool) {
    const std::lock_guard guard(disk_->mutex);
    COTTER_TRY(disk_->step("creation", path, Need::no_space_too));
    const auto folder = disk_->holder(path);
    if (!folder) return absent(path);
    auto& node = folder->names[base_name(path)];
    if (!node) node = std::make_shared<Node>();
    if (node->folder) return fail(Errc::io, "a folder stands where a file is needed", path);
    node->content.clear();
    return std::make_unique<Writer>(Handle{disk_, node, path, disk_->era});
}

Result<> MemoryFiles::rename(const std::string& from, const std::string& to) {
    const std::lock_guard guard(disk_->mutex);
    COTTER_TRY(disk_->step("renaming", to, Need::io_only));
    const auto source = disk_->holder(from);
    const auto target = disk_->holder(to);
    auto node = disk_->find(from);
    if (!source || !target || !node) return absent(from);
    if (const auto there = disk_->find(to); there && (there->folder || node->folder) && !there->names.empty())
        return fail(Errc::io, "a folder with something in it stands there", to);
    source->names.erase(base_name(from));
    target->names[base_name(to)] = std::move(node);
    return {};
}

Result<> MemoryFiles::remove(const std::string& path) {
    const std::lock_guard guard(disk_->mutex);
    COTTER_TRY(disk_->step("removal", path, Need::io_only));
    const auto node = disk_->find(path);
    if (!node) return absent(path);
    if (!node->names.empty()) return fail(Errc::io, "the folder is not empty", path);
    disk_->holder(path)->names.erase(base_name(path));
    return {};
}

Result<> MemoryFiles::make_folders(const std::string& path) {
    const std::lock_guard guard(disk_->mutex);
    COTTER_TRY(disk_->step("making of folders", path, Need::no_space_too));
    std::shared_ptr<Node> node = disk_->root;
    for (const auto& part : parts_of(path)) {
        auto& child = node->names[part];
        if (!child) child = std::make_shared<Node>(Node{.folder = true});
        if (!child->folder) return fail(Errc::refused, "a file stands where a folder is needed", path);
        node = child;
    }
    return {};
}

Result<> MemoryFiles::sync_folder(const std::string& path) {
    const std::lock_guard guard(disk_->mutex);
    COTTER_TRY(disk_->step("folder sync", path, Need::io_only));
    const auto node = disk_->find(path);
    if (!node || !node->folder) return absent(path);
    node->names_on_disk = node->names;
    return {};
}

Result<std::unique_ptr<FileLock>> MemoryFiles::lock(const std::string& path) {
    const std::lock_guard guard(disk_->mutex);
    COTTER_TRY(disk_->step("locking", path, Need::io_only));
    const auto folder = disk_->holder(path);
    if (!folder) return absent(path);
    auto& node = folder->names[base_name(path)];
    if (!node) node = std::make_shared<Node>();
    if (!disk_->locked.insert(path).second) return fail(Errc::busy, "it is in use by another process", path);
    return std::make_unique<Lock>(Handle{disk_, node, path, disk_->era});
}

}  // namespace cotter
