// One file checked: a packet ready to be filed, or the reason why not. For core/ledger only; several at once.
#pragma once

#include <optional>

#include "core/ledger/filing.h"
#include "core/photo/vault_stage.h"

namespace cotter::ledger {

struct Checked {
    std::string path;
    std::uint64_t bytes = 0;              // of the file; 0 for a folder
    std::optional<CheckedPacket> packet;  // nothing: see `arrival` and `why`
    Arrival arrival = Arrival::refused;   // refused or failed
    std::string why;
    std::string fingerprint, job;  // as far as it could be read
    int revision = 0;
};

struct CheckTools {
    Files& files;
    VaultStage& stage;
};

// Checks the packet at `path` and puts its photos beside as `bunch` of the stage, where they stay only while the answer
// has a packet. `workers`: for the files inside the packet.
[[nodiscard]] Checked check_one(const CheckTools& tools, Workers& workers, const std::string& path, std::size_t bunch);

}  // namespace cotter::ledger
