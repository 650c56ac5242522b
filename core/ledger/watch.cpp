// See watch.h.
#include "core/ledger/watch.h"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace cotter::ledger {

namespace {

constexpr std::int64_t kFirstPause = 10, kLongestPause = 3600;  // s, of a packet that failed
constexpr std::int64_t kFirstWait = 2, kLongestWait = 60;       // s, of a ledger that cannot be written to

std::int64_t doubled(std::int64_t pause, std::int64_t first, std::int64_t longest) {
    return pause == 0 ? first : std::min(pause * 2, longest);
}

}  // namespace

Result<std::vector<std::string>> Watch::look(std::int64_t now_s) {
    COTTER_ASSIGN(const auto paths, packets_below(files_, folder_));
    std::map<std::string, Seen> now;
    std::vector<std::string> out;
    for (const std::string& path : paths) {
        const auto info = files_.info(path);
        if (!info) continue;
        Seen seen;
        seen.size = info->size;
        seen.modified = info->modified_unix_s;
        const auto before = seen_.find(path);
        if (before != seen_.end() && before->second.size == seen.size && before->second.modified == seen.modified) {
            seen = before->second;
            if (!seen.done && now_s >= seen.next_s) out.push_back(path);
        }
        now.emplace(path, seen);
    }
    seen_ = std::move(now);
    std::sort(out.begin(), out.end());
    return out;
}

void Watch::done(const std::string& path) {
    Seen& seen = seen_[path];
    seen.done = true;
    seen.pause = 0;
}

void Watch::failed(const std::string& path, std::int64_t now_s) {
    Seen& seen = seen_[path];
    seen.pause = doubled(seen.pause, kFirstPause, kLongestPause);
    seen.next_s = now_s + seen.pause;
}

bool Watch::waiting() const {
    return std::any_of(seen_.begin(), seen_.end(), [](const auto& one) { return one.second.pause > 0; });
}

void Watcher::in_the_way(const std::string& what, const std::string& line) {
    if (std::exchange(said_, what) != what) ports_.say(line);
}

void Watcher::out_of_the_way() {
    pause_ = 0;
    if (!said_.empty()) ports_.say(fmt::format("going on with {}", folder_));
    said_.clear();
}

void Watcher::look() {
    const std::int64_t now_s = ports_.clock.now().unix_s;
    if (pause_ > 0 && now_s < next_s_) return;
    const auto packets = watch_.look(now_s);
    if (!packets) {
        if (packets.error().code == Errc::not_found)
            return in_the_way("folder", fmt::format("the folder is not there, waiting for it: {}", folder_));
        return in_the_way(packets.error().what,
                          "the folder cannot be looked into, trying again: " + packets.error().line());
    }
    if (packets->empty() && pause_ > 0) {  // they were taken away meanwhile; nobody has asked the ledger
        pause_ = 0;
        return said_.clear();
    }
    if (packets->empty()) return out_of_the_way();
    const auto taken = ports_.take(*packets, [&](const Receipt& receipt) {
        refused_ = refused_ || receipt.arrival == Arrival::refused;
        if (receipt.arrival == Arrival::failed)
            watch_.failed(receipt.path, now_s);
        else
            watch_.done(receipt.path);
    });
    if (taken) return out_of_the_way();
    const bool busy = taken.error().code == Errc::busy;
    pause_ = busy ? kFirstWait : doubled(pause_, kFirstWait, kLongestWait);
    next_s_ = now_s + pause_;
    // What the system says of it, in brackets, is another thing while a server goes down and while it is down.
    const std::string what = taken.error().what.substr(0, taken.error().what.find(" ("));
    in_the_way(what, fmt::format("{}: {}", busy ? "waiting for its turn" : "waiting", taken.error().line()));
}

bool Watcher::all_good() const {
    return !refused_ && said_.empty() && !watch_.waiting();
}

}  // namespace cotter::ledger
