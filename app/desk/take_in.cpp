// See take_in.h.
#include "app/desk/take_in.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/desk/rows.h"

namespace cotter::desk {

namespace {

constexpr std::size_t kMostPackets = 16;          // of one task
constexpr std::uint64_t kMostBytes = 64u << 20u;  // the same, but for a single larger one

Result<> open_once(Batch& batch) {
    if (batch.ledger != nullptr) return {};
    COTTER_ASSIGN(batch.ledger, batch.open());
    return {};
}

class FindPackets final : public Task {
public:
    FindPackets(Files& files, std::shared_ptr<Batch> batch, std::function<void(Taken)> told)
        : files_(files), batch_(std::move(batch)), told_(std::move(told)) {}

    bool step() override {
        if (const auto found = find(); !found) taken_.error = found.error();
        return true;
    }
    void done() override { told_(std::move(taken_)); }

private:
    Result<> find() {
        COTTER_ASSIGN(batch_->packets, ledger::packets_in(files_, batch_->paths));
        for (const std::string& path : batch_->packets) {
            const auto info = files_.info(path);
            batch_->sizes.push_back(info ? info->size : 0);
        }
        return open_once(*batch_);
    }

    Files& files_;
    std::shared_ptr<Batch> batch_;
    std::function<void(Taken)> told_;
    Taken taken_;
};

class TakeNext final : public Task {
public:
    TakeNext(std::shared_ptr<Batch> batch, std::function<void(Taken)> told)
        : batch_(std::move(batch)), told_(std::move(told)) {}

    bool step() override {
        std::vector<std::string> packets;
        std::uint64_t bytes = 0;
        while (batch_->next < batch_->packets.size() && packets.size() < kMostPackets &&
               (packets.empty() || bytes + batch_->sizes[batch_->next] <= kMostBytes)) {
            bytes += batch_->sizes[batch_->next];
            packets.push_back(batch_->packets[batch_->next++]);
        }
        ledger::ReceiveOptions how;
        how.trust = batch_->trust;
        how.told = [this](const ledger::Receipt& receipt) { taken_.receipts.push_back(receipt); };
        if (const auto done = ledger::receive(*batch_->ledger, packets, how); !done) taken_.error = done.error();
        return true;
    }
    void done() override { told_(std::move(taken_)); }

private:
    std::shared_ptr<Batch> batch_;
    std::function<void(Taken)> told_;
    Taken taken_;
};

}  // namespace

std::unique_ptr<Task> find_packets(Files& files, std::shared_ptr<Batch> batch, std::function<void(Taken)> told) {
    return std::make_unique<FindPackets>(files, std::move(batch), std::move(told));
}

std::unique_ptr<Task> take_next(std::shared_ptr<Batch> batch, std::function<void(Taken)> told) {
    return std::make_unique<TakeNext>(std::move(batch), std::move(told));
}

void TakeInState::count(const ledger::Receipt& receipt) {
    ++done;
    bytes_done += receipt.bytes;
    switch (receipt.arrival) {
        case ledger::Arrival::there_already:
            ++there;
            break;
        case ledger::Arrival::refused:
            ++refused;
            break;
        case ledger::Arrival::failed:
            ++failed;
            break;
        default:
            ++taken;
            break;
    }
}

std::string TakeInState::rate_words() const {
    if (seconds <= 0 || bytes_done == 0) return {};
    const double rate = static_cast<double>(bytes_done) / static_cast<double>(seconds);
    const double left = static_cast<double>(bytes_total - std::min(bytes_done, bytes_total)) / rate;
    return fmt::format("{} a second, {:.0f} s left", size_words(rate), left);
}

std::string TakeInState::outcome_words() const {
    std::string out = fmt::format("{} taken in", taken);
    if (there > 0) out += fmt::format(", {} there already", there);
    if (refused > 0) out += fmt::format(", {} refused", refused);
    if (failed > 0) out += fmt::format(", {} failed", failed);
    return out;
}

}  // namespace cotter::desk
