// Temporary names, own names, and both on the disk.
#include "core/photo/vault_stage.h"

#include <fmt/format.h>

namespace cotter {

Result<std::unique_ptr<VaultStage>> VaultStage::open(Files& files, const std::string& folder) {
    const std::string incoming = join_path(folder, "incoming");
    COTTER_TRY(files.make_folders(incoming));
    auto lock = files.lock(join_path(folder, "receiving"));
    if (!lock && lock.error().code == Errc::busy)
        return fail(Errc::busy, "another program is taking photos into this vault", folder, "wait until it is done");
    if (!lock) return unexpected(lock.error());
    COTTER_ASSIGN(const auto left, files.list(incoming));
    for (const std::string& name : left) COTTER_TRY(files.remove(join_path(incoming, name)));
    COTTER_TRY(files.make_folders(join_path(folder, "photos")));
    COTTER_TRY(files.sync_folder(folder));
    COTTER_TRY(files.sync_folder(parent_folder(folder)));
    return std::unique_ptr<VaultStage>(new VaultStage(files, folder, std::move(*lock)));
}

VaultStage::~VaultStage() {
    while (!waiting_.empty()) drop(waiting_.begin()->first);
}

Result<> VaultStage::write(const std::string& part, ByteView bytes) {
    COTTER_ASSIGN(const auto out, files_.create(part, false));
    COTTER_TRY(out->write(bytes));
    COTTER_TRY(out->sync());
    return out->close();
}

Result<> VaultStage::put(std::size_t bunch, const std::string& sha256, const std::string& extension, ByteView bytes) {
    const std::string shelf = join_path(folder_, "photos/" + sha256.substr(0, 2));
    const std::string path = join_path(shelf, sha256 + "." + extension);
    const auto there = files_.info(path);
    if (there && there->size == bytes.size()) {
        const std::lock_guard guard(mutex_);
        shelves_.insert(shelf);  // it may have been named a moment before a power cut
        return {};
    }
    const std::string part = join_path(folder_, fmt::format("incoming/{}-{}.part", bunch, sha256));
    {
        const std::lock_guard guard(mutex_);
        // The same photo in two slots is staged once: it has one name, before and after.
        if (!waiting_[bunch].emplace(part, path).second) return {};
    }
    return write(part, bytes);
}

VaultStage::Waiting VaultStage::take(std::size_t bunch) {
    const std::lock_guard guard(mutex_);
    const auto node = waiting_.extract(bunch);
    return node.empty() ? Waiting() : std::move(node.mapped());
}

Result<> VaultStage::keep(std::size_t bunch) {
    for (const auto& [part, path] : take(bunch)) {
        const std::string shelf = parent_folder(path);
        if (made_.insert(shelf).second) COTTER_TRY(files_.make_folders(shelf));
        COTTER_TRY(files_.rename(part, path));
        const std::lock_guard guard(mutex_);
        shelves_.insert(shelf);
    }
    return {};
}

void VaultStage::drop(std::size_t bunch) {
    for (const auto& [part, path] : take(bunch)) (void)files_.remove(part);  // what stays is removed at the next open()
}

Result<> VaultStage::settle() {
    std::set<std::string> shelves;
    {
        const std::lock_guard guard(mutex_);
        shelves.swap(shelves_);
    }
    if (shelves.empty()) return {};
    for (const std::string& shelf : shelves) COTTER_TRY(files_.sync_folder(shelf));
    return files_.sync_folder(join_path(folder_, "photos"));
}

}  // namespace cotter
