// How freight and kit prices are split over the items so that the bound is as high as it gets: Held and Karp's
// subgradient steps (Mathematical Programming 1, 1971) with Polyak's length, shares kept whole and from 0.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/quote/cover_search.h"

namespace cotter {

namespace {

constexpr std::size_t kWork = 3'200;  // items looked at in all, so that a task of many items takes fewer rounds
constexpr std::size_t kLeastRounds = 16, kMostRounds = 80;
constexpr int kPatience = 6;  // rounds without a better bound before the steps are halved

// The shares moved along `pull` by `step`, none below 0, their sum as it was.
void move_shares(std::vector<double>& shares, const std::vector<double>& pull, double step) {
    const double sum = std::accumulate(shares.begin(), shares.end(), 0.0);
    const double mean = std::accumulate(pull.begin(), pull.end(), 0.0) / static_cast<double>(pull.size());
    double now = 0;
    for (std::size_t i = 0; i < shares.size(); ++i) {
        shares[i] = std::max(0.0, shares[i] + step * (pull[i] - mean));
        now += shares[i];
    }
    for (double& share : shares) share = now > 0 ? share * sum / now : sum / static_cast<double>(shares.size());
}

double squares(const std::vector<double>& pull) {
    const double mean = std::accumulate(pull.begin(), pull.end(), 0.0) / static_cast<double>(pull.size());
    double out = 0;
    for (const double p : pull) out += (p - mean) * (p - mean);
    return out;
}

// Whole numbers from 0 that add up to `sum` exactly.
std::vector<std::int64_t> whole(const std::vector<double>& shares, std::int64_t sum) {
    std::vector<std::int64_t> out;
    std::int64_t left = sum;
    for (const double share : shares) {
        out.push_back(std::clamp<std::int64_t>(static_cast<std::int64_t>(share), 0, left));
        left -= out.back();
    }
    if (!out.empty()) *std::max_element(out.begin(), out.end()) += left;
    return out;
}

}  // namespace

// One price that several items share, with how much each bears, and how much more it ought to (its pull).
struct CoverSearch::Split {
    std::size_t index = 0;  // delivery or kit
    std::vector<std::size_t> items;
    std::vector<std::size_t> at;  // the source within each item
    std::vector<double> shares, pull;
};

std::vector<CoverSearch::Split> CoverSearch::freight_splits(const Branch& branch) const {
    std::vector<Split> all(task_.freight.size());
    for (std::size_t i = 0; i < items_.size(); ++i)
        for (std::size_t s = 0; s < items_[i].sources.size(); ++s) {
            const Source& source = items_[i].sources[s];
            if (source.kit || task_.freight[source.index] == 0 || branch.door[source.index] != Door::undecided)
                continue;
            Split& split = all[source.index];
            split.index = source.index;
            split.items.push_back(i);
            split.at.push_back(s);
        }
    std::erase_if(all, [](const Split& split) { return split.items.empty(); });
    for (Split& split : all) {
        split.shares.assign(split.items.size(), 0.0);
        for (std::size_t n = 0; n < split.items.size(); ++n) {
            const auto known = share_[split.index].find(split.items[n]);
            if (known != share_[split.index].end()) split.shares[n] = static_cast<double>(known->second);
        }
        const double sum = std::accumulate(split.shares.begin(), split.shares.end(), 0.0);
        const auto freight = static_cast<double>(task_.freight[split.index]);
        for (double& share : split.shares)
            share = sum > 0 ? share * freight / sum : freight / static_cast<double>(split.shares.size());
    }
    return all;
}

std::vector<CoverSearch::Split> CoverSearch::kit_splits() const {
    std::vector<Split> all;
    for (std::size_t k = 0; k < kits_.size(); ++k) {
        Split split;
        split.index = k;
        split.at = kits_[k].at;
        for (const CoverPart& part : kits_[k].parts) split.items.push_back(part.demand);
        split.shares.assign(kits_[k].share.begin(), kits_[k].share.end());
        all.push_back(std::move(split));
    }
    return all;
}

void CoverSearch::take_splits(const std::vector<Split>& freight, const std::vector<Split>& kits) {
    for (const Split& split : freight) {
        const auto shares = whole(split.shares, task_.freight[split.index]);
        auto& out = share_[split.index];
        out.clear();
        for (std::size_t n = 0; n < shares.size(); ++n) out[split.items[n]] = shares[n];
    }
    for (const Split& split : kits)
        kits_[split.index].share = whole(split.shares, task_.offers[kits_[split.index].offer].price);
    for (auto& seen : seen_) seen.clear();
}

// A delivery pulls at the items that use it; a kit at those that want more of it than the others.
double CoverSearch::pull_of(const Picture& picture, std::vector<Split>& splits, bool kits) const {
    double all = 0;
    for (Split& split : splits) {
        split.pull.clear();
        for (std::size_t n = 0; n < split.items.size(); ++n) {
            const std::int64_t pick = picture[split.items[n]]->picks[split.at[n]];
            split.pull.push_back(kits ? static_cast<double>(pick) : pick == kUnused ? 0.0 : 1.0);
        }
        all += squares(split.pull);
    }
    return all;
}

void CoverSearch::tighten(const Branch& root) {
    auto freight = freight_splits(root), kits = kit_splits();
    if (freight.empty() && kits.empty()) return;
    auto best_freight = freight, best_kits = kits;
    Picture picture;
    std::int64_t best = -1;
    double length = 1;
    int since = 0;
    const std::size_t rounds = std::clamp(kWork / std::max<std::size_t>(1, items_.size()), kLeastRounds, kMostRounds);
    for (std::size_t round = 0; round < rounds; ++round) {
        take_splits(freight, kits);
        const auto bound = bound_of(root, picture);
        if (!bound) return;
        take_if_better(picture);
        if (*bound > best) {
            best = *bound;
            best_freight = freight;
            best_kits = kits;
            since = 0;
        } else if (++since == kPatience) {
            length /= 2;
            since = 0;
        }
        const double pull = pull_of(picture, freight, false) + pull_of(picture, kits, true);
        if (best >= bound_ || pull <= 0) break;
        const double aim = best_ ? static_cast<double>(bound_ - *bound) : 0.05 * static_cast<double>(*bound);
        const double step = length * aim / pull;
        for (auto* splits : {&freight, &kits})
            for (Split& split : *splits) move_shares(split.shares, split.pull, step);
    }
    take_splits(best_freight, best_kits);
}

}  // namespace cotter
