// Photos on their way into a vault: written whole and brought to the disk under temporary names, then either given
// their own names or taken away again, all of one bunch at once. For who must not let in a part of what belongs
// together. put() and drop() may be called on several threads, keep() and settle()
// meanwhile on one.
//
// On disk: <vault>/incoming/<bunch>-<sha256>.part, and <vault>/receiving, locked meanwhile: one at a time per vault.
#pragma once

#include <map>
#include <mutex>
#include <set>
#include <string>
#include <vector>

#include "core/base/files.h"

namespace cotter {

class VaultStage {
public:
    // Makes the vault's folder where it is missing, and removes what an interrupted run has left. `busy`: somebody else
    // is at it.
    [[nodiscard]] static Result<std::unique_ptr<VaultStage>> open(Files& files, const std::string& vault_folder);
    ~VaultStage();  // takes away all that was not kept

    // `bytes` must have this hash. What the vault has already is not written again.
    [[nodiscard]] Result<> put(std::size_t bunch, const std::string& sha256, const std::string& extension,
                               ByteView bytes);
    // The bunch's photos get their names. Not on the disk before settle().
    [[nodiscard]] Result<> keep(std::size_t bunch);
    void drop(std::size_t bunch);
    // Success: everything kept would survive a power cut.
    [[nodiscard]] Result<> settle();

private:
    using Waiting = std::map<std::string, std::string>;  // temporary names and own
    VaultStage(Files& files, std::string folder, std::unique_ptr<FileLock> lock)
        : files_(files), folder_(std::move(folder)), lock_(std::move(lock)) {}
    [[nodiscard]] Waiting take(std::size_t bunch);
    [[nodiscard]] Result<> write(const std::string& part, ByteView bytes);

    Files& files_;
    std::string folder_;
    std::unique_ptr<FileLock> lock_;
    std::mutex mutex_;                        // of waiting_ and shelves_
    std::map<std::size_t, Waiting> waiting_;  // by bunch
    std::set<std::string> shelves_;           // to be synced
    std::set<std::string> made_;              // known to be there
};

}  // namespace cotter
