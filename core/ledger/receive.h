// Taking packets in: checked whole before anything of them is believed, all or nothing, each once. One thread calls;
// checking and hashing run on all cores through the Workers port.
//
// Method: packets are worked through in the order of their paths, a group at a time. A group's packets are checked at
// once, their photos written beside under temporary names; then the photos get their own names on the disk, and only
// then one transaction files all good packets of the group with a receipt for every file, while the next group is
// checked. So at any moment the ledger holds whole packets only, and a batch that was killed goes on where it was when
// it is handed in again: what is on file already is checked once more and changes nothing.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/ledger/ledger.h"
#include "core/ledger/trust.h"

namespace cotter::ledger {

// How far a batch is. Rate and remaining time come from the clock.
struct Progress {
    std::size_t done = 0, total = 0;  // files
    std::uint64_t bytes_done = 0, bytes_total = 0;
    double bytes_per_second = 0;  // 0 while not known
    double seconds_left = 0;      // 0 while not known
};

struct ReceiveOptions {
    TrustList trust;                                     // empty: keys are known only from what came before
    std::function<bool(const Progress&)> progress = {};  // false: stop after the group at hand; what is done stays
    std::function<void(const Receipt&)> told = {};       // each file's receipt, in the order of the paths
};

struct ReceiveResult {
    std::size_t taken = 0, there_already = 0, refused = 0, failed = 0;
    bool cancelled = false;
};

// The packets among `paths`: files as they are; folders are searched for *.zip in them and below, and a folder that is
// itself a bag counts as one. Sorted by path, none twice. A path that is not there becomes a refusal later.
[[nodiscard]] Result<std::vector<std::string>> packets_in(Files& files, const std::vector<std::string>& paths);

// The packets in a folder and below, as above; through a link when the folder is one.
[[nodiscard]] Result<std::vector<std::string>> packets_below(Files& files, const std::string& folder);

// Takes them in. Fails only when the ledger itself can no longer be written to (then what is receipted is on file and
// the rest is as it was); whatever is wrong with a packet is its receipt.
[[nodiscard]] Result<ReceiveResult> receive(Ledger& ledger, const std::vector<std::string>& packets,
                                            const ReceiveOptions& options);

}  // namespace cotter::ledger
