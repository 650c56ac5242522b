// Branch and bound over deliveries and kits, for cover.cpp. One search, one thread.
#pragma once

#include <map>
#include <optional>

#include "core/quote/cover.h"
#include "core/quote/frontier.h"

namespace cotter {

class CoverSearch {
public:
    // Only offers with usable[i] are looked at. The task must outlive the search and have passed its checks.
    CoverSearch(const CoverTask& task, const std::vector<bool>& usable, std::size_t budget);

    // The cheapest packs, waiting apart; nothing when an item cannot be covered or nothing below `bound` exists.
    [[nodiscard]] std::optional<CoverAnswer> run(std::int64_t bound);

private:
    static constexpr std::int64_t kUnused = -1;  // a pick: nothing of this delivery

    enum class Door : std::int8_t { undecided, open, shut };

    struct Branch {
        std::vector<Door> door;           // of each delivery
        std::vector<std::int64_t> least;  // packs of each kit
        std::vector<std::int64_t> most;
    };
    // One thing that an item's combination is joined from: a delivery's single-item offers, or one kit.
    struct Source {
        bool kit = false;
        std::size_t index = 0;            // delivery or kit
        std::size_t part = 0;             // of the kit
        Frontier frontier;                // of a delivery's offers; a kit's depends on the branch
        std::vector<Frontier> steps;      // how `frontier` was joined from the offers
        std::vector<std::size_t> offers;  // in the order of the steps
    };
    struct Item {
        std::int64_t needed = 0;
        std::int64_t lot = 1;
        std::vector<Source> sources;
    };
    struct Chosen {
        std::int64_t cost = 0;
        bool covered = false;
        std::vector<std::int64_t> picks;  // of each source: index into its frontier, or packs of the kit
    };
    struct Kit {
        std::size_t offer = 0;
        std::vector<CoverPart> parts;
        std::vector<std::size_t> at;      // the source of each part within its item
        std::vector<std::int64_t> share;  // of the price, by part; they add up to it
    };
    using Picture = std::vector<const Chosen*>;  // one of each item

    void add_singles(const std::vector<bool>& usable);
    void add_kits(const std::vector<bool>& usable);
    void add_source(std::size_t item, std::size_t delivery, std::vector<std::size_t> offers);
    [[nodiscard]] std::vector<std::size_t> worthwhile(std::vector<std::size_t> offers) const;
    void spread_kit_prices();

    [[nodiscard]] Frontier frontier_of(const Item& item, const Source& source, const Branch& branch);
    [[nodiscard]] std::vector<std::int64_t> signature(std::size_t item, const Branch& branch) const;
    [[nodiscard]] Chosen solve(std::size_t item, const Branch& branch);
    [[nodiscard]] const Chosen& look(std::size_t item, const Branch& branch);
    [[nodiscard]] std::optional<std::int64_t> bound_of(const Branch& branch, Picture& picture);

    void tighten(const Branch& root);
    struct Split;
    [[nodiscard]] std::vector<Split> freight_splits(const Branch& branch) const;
    [[nodiscard]] std::vector<Split> kit_splits() const;
    void take_splits(const std::vector<Split>& freight, const std::vector<Split>& kits);
    [[nodiscard]] double pull_of(const Picture& picture, std::vector<Split>& splits, bool kits) const;
    void take_if_better(const Picture& picture);
    [[nodiscard]] std::vector<std::int64_t> packs_of(const Picture& picture) const;
    void branch_on(Branch branch);
    [[nodiscard]] std::optional<std::size_t> delivery_to_decide(const Branch& branch, const Picture& picture) const;
    [[nodiscard]] bool split_kit(const Branch& branch, const Picture& picture, Branch& few, Branch& many) const;

    const CoverTask& task_;
    std::size_t budget_;
    std::vector<Item> items_;
    std::vector<Kit> kits_;
    std::vector<std::map<std::size_t, std::int64_t>> share_;         // of each delivery's freight, by item
    std::vector<std::map<std::vector<std::int64_t>, Chosen>> seen_;  // of each item, by what of the branch concerns it
    std::int64_t bound_ = 0;
    std::optional<CoverAnswer> best_;
    bool thinned_ = false;
};

}  // namespace cotter
