// Taking packets in beside the screen: a few at a time, on a ledger of its own, so that the desk draws on meanwhile and
// 'Cancel' waits for a few packets at most. For the desk's session; one thread at a time.
//
// Method: each Task takes the next packets and tells the session on the app's thread, which starts the next one. So no
// two threads ever share anything, and pictures that are waited for get their turn between.
#pragma once

#include <functional>
#include <memory>

#include "app/tasks.h"
#include "core/ledger/receive.h"

namespace cotter::desk {

using OpenAnother = std::function<Result<std::unique_ptr<ledger::Ledger>>()>;

// What the tasks of one batch share; whoever runs has it alone.
struct Batch {
    OpenAnother open;
    ledger::TrustList trust;
    std::unique_ptr<ledger::Ledger> ledger;  // since the first task
    std::vector<std::string> paths;          // as handed in
    std::vector<std::string> packets;        // found in them, by the first task
    std::vector<std::uint64_t> sizes;        // of each, bytes
    std::size_t next = 0;
};

// What one task did.
struct Taken {
    std::vector<ledger::Receipt> receipts;
    std::optional<Error> error;  // the ledger can no longer be written to: the batch ends
};

// `told` is called on the app's thread.
[[nodiscard]] std::unique_ptr<Task> find_packets(Files& files, std::shared_ptr<Batch> batch,
                                                 std::function<void(Taken)> told);
[[nodiscard]] std::unique_ptr<Task> take_next(std::shared_ptr<Batch> batch, std::function<void(Taken)> told);

// How far a batch is, for the screen.
struct TakeInState {
    bool running = false, cancelled = false;
    std::size_t done = 0, total = 0;  // packets
    std::uint64_t bytes_done = 0, bytes_total = 0;
    std::size_t taken = 0, there = 0, refused = 0, failed = 0;
    Instant started;
    std::int64_t seconds = 0;  // since then

    void count(const ledger::Receipt& receipt);
    [[nodiscard]] std::string rate_words() const;     // "12.3 MB a second, 40 s left"; empty while not known
    [[nodiscard]] std::string outcome_words() const;  // "950 taken in, 50 refused"
};

}  // namespace cotter::desk
