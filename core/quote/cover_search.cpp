// The search: items from frontiers, the bound over them, branching.
#include "core/quote/cover_search.h"

#include <algorithm>
#include <numeric>

namespace cotter {

// ---- one item ------------------------------------------------------------------------------------------------

Frontier CoverSearch::frontier_of(const Item& item, const Source& source, const Branch& branch) {
    if (source.kit) {
        const Kit& kit = kits_[source.index];
        const bool shut = branch.door[task_.offers[kit.offer].delivery] == Door::shut;
        const Packs packs{kit.parts[source.part].amount, kit.share[source.part], branch.least[source.index],
                          shut ? 0 : branch.most[source.index]};
        return packs_frontier(packs, item.lot, item.needed, thinned_);
    }
    Frontier out{{0, 0, kUnused, 0}};
    if (branch.door[source.index] == Door::shut) return out;
    const auto item_index = static_cast<std::size_t>(&item - items_.data());
    const auto& shares = share_[source.index];
    const auto share = shares.find(item_index);
    const bool shared = branch.door[source.index] == Door::undecided && share != shares.end();
    for (std::size_t i = 0; i < source.frontier.size(); ++i) {
        const Combination& c = source.frontier[i];
        if (c.amount > 0)
            out.push_back({c.amount, c.cost + (shared ? share->second : 0), static_cast<std::int64_t>(i), 0});
    }
    return out;
}

CoverSearch::Chosen CoverSearch::solve(std::size_t index, const Branch& branch) {
    const Item& item = items_[index];
    std::vector<Frontier> given;
    std::vector<Frontier> joined;
    for (const Source& source : item.sources) {
        given.push_back(frontier_of(item, source, branch));
        joined.push_back(joined_frontier(joined.empty() ? Frontier{{0, 0, 0, 0}} : joined.back(), given.back(),
                                         item.needed, thinned_));
    }
    Chosen chosen;
    chosen.covered = !joined.empty() && enough(joined.back(), item.needed) != nullptr;
    if (!chosen.covered) return chosen;
    chosen.cost = joined.back().back().cost;
    chosen.picks.resize(item.sources.size());
    std::size_t at = joined.back().size() - 1;
    for (std::size_t s = item.sources.size(); s-- > 0;) {
        const Combination& c = joined[s][at];
        chosen.picks[s] = given[s][static_cast<std::size_t>(c.second)].first;
        at = static_cast<std::size_t>(c.first);
    }
    return chosen;
}

std::vector<std::int64_t> CoverSearch::signature(std::size_t index, const Branch& branch) const {
    std::vector<std::int64_t> out;
    for (const Source& source : items_[index].sources) {
        if (!source.kit) {
            out.push_back(static_cast<std::int64_t>(branch.door[source.index]));
            continue;
        }
        const bool shut = branch.door[task_.offers[kits_[source.index].offer].delivery] == Door::shut;
        out.push_back(branch.least[source.index]);
        out.push_back(shut ? 0 : branch.most[source.index]);
    }
    return out;
}

const CoverSearch::Chosen& CoverSearch::look(std::size_t item, const Branch& branch) {
    auto key = signature(item, branch);
    if (const auto it = seen_[item].find(key); it != seen_[item].end()) return it->second;
    return seen_[item].emplace(std::move(key), solve(item, branch)).first->second;
}

// ---- all items -----------------------------------------------------------------------------------------------

// What this branch costs at least; nothing when it cannot cover everything.
std::optional<std::int64_t> CoverSearch::bound_of(const Branch& branch, Picture& picture) {
    picture.clear();
    std::int64_t sum = 0;
    for (std::size_t d = 0; d < branch.door.size(); ++d)
        if (branch.door[d] == Door::open) sum += task_.freight[d];
    for (std::size_t k = 0; k < kits_.size(); ++k)
        if (branch.least[k] > 0 && branch.door[task_.offers[kits_[k].offer].delivery] == Door::shut)
            return std::nullopt;
    for (std::size_t i = 0; i < items_.size(); ++i) {
        picture.push_back(&look(i, branch));
        if (!picture.back()->covered) return std::nullopt;
        sum += picture.back()->cost;
    }
    return sum;
}

// Packs of each offer; of a kit as many as the item that wants most.
std::vector<std::int64_t> CoverSearch::packs_of(const Picture& picture) const {
    std::vector<std::int64_t> packs(task_.offers.size());
    bool unused = false;
    for (std::size_t i = 0; i < items_.size(); ++i)
        for (std::size_t s = 0; s < items_[i].sources.size(); ++s) {
            const Source& source = items_[i].sources[s];
            const std::int64_t pick = picture[i]->picks[s];
            if (source.kit) {
                std::int64_t& n = packs[kits_[source.index].offer];
                n = std::max(n, pick);
                continue;
            }
            auto at = static_cast<std::size_t>(pick);
            for (std::size_t o = pick == kUnused ? 0 : source.offers.size(); o-- > 0;) {
                const Combination& c = source.steps[o][at];
                const CoverOffer& offer = task_.offers[source.offers[o]];
                const Packs one{offer.parts[0].amount, offer.price, 0, items_[i].needed};
                packs[source.offers[o]] =
                    packs_frontier(one, items_[i].lot, items_[i].needed, unused)[static_cast<std::size_t>(c.second)]
                        .first;
                at = static_cast<std::size_t>(c.first);
            }
        }
    return packs;
}

void CoverSearch::take_if_better(const Picture& picture) {
    CoverAnswer answer{packs_of(picture), 0, false, true};
    std::vector<bool> used(task_.freight.size());
    for (std::size_t o = 0; o < answer.packs.size(); ++o) {
        if (answer.packs[o] == 0) continue;
        answer.cost += answer.packs[o] * task_.offers[o].price;
        answer.waits = answer.waits || task_.offers[o].waits;
        used[task_.offers[o].delivery] = true;
    }
    for (std::size_t d = 0; d < used.size(); ++d)
        if (used[d]) answer.cost += task_.freight[d];
    if (answer.cost >= bound_) return;
    bound_ = answer.cost;
    best_ = std::move(answer);
}

// ---- branching -----------------------------------------------------------------------------------------------

// The undecided delivery that most items use.
std::optional<std::size_t> CoverSearch::delivery_to_decide(const Branch& branch, const Picture& picture) const {
    std::vector<int> users(branch.door.size());
    for (std::size_t i = 0; i < items_.size(); ++i)
        for (std::size_t s = 0; s < items_[i].sources.size(); ++s) {
            const Source& source = items_[i].sources[s];
            const std::int64_t pick = picture[i]->picks[s];
            if (source.kit ? pick > 0 : pick != kUnused)
                ++users[source.kit ? task_.offers[kits_[source.index].offer].delivery : source.index];
        }
    std::optional<std::size_t> most;
    for (std::size_t d = 0; d < users.size(); ++d)
        if (branch.door[d] == Door::undecided && users[d] > 0 && (!most || users[d] > users[*most])) most = d;
    return most;
}

// Two branches that part at a kit of which the items want different numbers; false when there is none.
bool CoverSearch::split_kit(const Branch& branch, const Picture& picture, Branch& few, Branch& many) const {
    for (std::size_t k = 0; k < kits_.size(); ++k) {
        std::int64_t low = branch.most[k];
        std::int64_t high = branch.least[k];
        for (std::size_t p = 0; p < kits_[k].parts.size(); ++p) {
            const std::int64_t n = picture[kits_[k].parts[p].demand]->picks[kits_[k].at[p]];
            low = std::min(low, n);
            high = std::max(high, n);
        }
        if (low >= high) continue;
        few = many = branch;
        few.most[k] = low + (high - low - 1) / 2;
        many.least[k] = few.most[k] + 1;
        return true;
    }
    return false;
}

void CoverSearch::branch_on(Branch branch) {
    Picture picture;
    const auto bound = bound_of(branch, picture);
    if (!bound || *bound >= bound_) return;
    if (budget_ == 0) {
        thinned_ = true;
        return;
    }
    --budget_;
    take_if_better(picture);
    if (*bound >= bound_) return;
    if (const auto d = delivery_to_decide(branch, picture)) {
        Branch shut = branch;
        branch.door[*d] = Door::open;
        shut.door[*d] = Door::shut;
        branch_on(std::move(branch));
        branch_on(std::move(shut));
        return;
    }
    Branch few;
    Branch many;
    if (!split_kit(branch, picture, few, many)) return;
    branch_on(std::move(many));
    branch_on(std::move(few));
}

std::optional<CoverAnswer> CoverSearch::run(std::int64_t bound) {
    bound_ = bound;
    Branch root{std::vector<Door>(task_.freight.size(), Door::undecided), std::vector<std::int64_t>(kits_.size()),
                std::vector<std::int64_t>(kits_.size())};
    for (std::size_t d = 0; d < task_.freight.size(); ++d)
        if (task_.freight[d] == 0) root.door[d] = Door::open;
    for (std::size_t k = 0; k < kits_.size(); ++k)
        for (const CoverPart& part : kits_[k].parts)
            root.most[k] = std::max(root.most[k], (items_[part.demand].needed + part.amount - 1) / part.amount);
    tighten(root);
    branch_on(std::move(root));
    if (best_) best_->proved = !thinned_;
    return std::move(best_);
}

}  // namespace cotter
