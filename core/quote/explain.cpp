// Differences by group: parts by the items they serve, everything else by kind.
#include "core/quote/explain.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <numeric>
#include <tuple>

#include "core/quote/exact.h"
#include "core/quote/extent.h"
#include "core/quote/totals.h"

namespace cotter {

namespace {

// Items that any line of either quote buys together are one group.
class Groups {
public:
    Groups(std::span<const Need> needs, const Quote& a, const Quote& b) : needs_(needs) {
        parent_.resize(needs.size());
        std::iota(parent_.begin(), parent_.end(), std::size_t{0});
        std::map<std::string, std::size_t> first;
        for (std::size_t n = 0; n < needs.size(); ++n) join(n, first.emplace(item_key(needs[n].item), n).first->second);
        for (const Quote* quote : {&a, &b})
            for (const QuoteLine& line : quote->lines)
                for (const Id<Need>& need : line.needs) join(index(line.needs.front()), index(need));
    }

    // The group of a parts line; the number of needs when it serves none that is known.
    std::size_t of(const QuoteLine& line) {
        const std::size_t at = line.needs.empty() ? needs_.size() : index(line.needs.front());
        return at == needs_.size() ? at : root(at);
    }

    std::string name(std::size_t group) {
        std::string out;
        std::vector<std::string> said;
        for (std::size_t n = 0; n < needs_.size(); ++n) {
            if (group >= needs_.size() || root(n) != group) continue;
            if (std::find(said.begin(), said.end(), item_key(needs_[n].item)) != said.end()) continue;
            said.push_back(item_key(needs_[n].item));
            out += (out.empty() ? "" : " and ") + needs_[n].item;
        }
        return out.empty() ? "other parts" : out;
    }

private:
    std::size_t index(const Id<Need>& id) const {
        std::size_t at = 0;
        while (at < needs_.size() && needs_[at].id != id) ++at;
        return at;
    }
    std::size_t root(std::size_t at) {
        while (parent_[at] != at) at = parent_[at] = parent_[parent_[at]];
        return at;
    }
    void join(std::size_t a, std::size_t b) {
        if (a < needs_.size() && b < needs_.size()) parent_[root(b)] = root(a);
    }

    std::span<const Need> needs_;
    std::vector<std::size_t> parent_;
};

struct Heap {
    std::int64_t low = 0;
    std::int64_t high = 0;
    std::string words;

    void add(const QuoteLine& line, const std::string& text) {
        low += line.low;
        high += line.high;
        words += (words.empty() ? "" : "; ") + text;
    }
};

struct Pair {
    Heap a;
    Heap b;
    [[nodiscard]] Difference difference(LineKind kind, std::string what) const {
        const auto side = [](const Heap& heap) { return heap.words.empty() ? std::string("nothing") : heap.words; };
        return {kind,          std::move(what), fmt::format("{}, against {}", side(a), side(b)),
                a.low - b.low, a.high - b.high, kind == LineKind::core};
    }
};

std::string line_words(const QuoteLine& line) {
    if (line.kind == LineKind::parts)
        return line.basis.empty() ? line.text : fmt::format("{}: {}", line.text, line.basis);
    const std::string amount = line.low == line.high
                                   ? money_text(line.low)
                                   : fmt::format("{}–{}", money_text(line.low), money_text(line.high));
    return fmt::format("{} {}", line.text, amount);
}

std::string kind_name(LineKind kind) {
    std::string name(name_of(kind));
    name[0] = static_cast<char>(name[0] - 'a' + 'A');
    return name;
}

Heap tax_heap(const Quote& quote) {
    Heap heap;
    for (const QuoteTax& tax : quote.taxes) {
        heap.low += tax.low;
        heap.high += tax.high;
        heap.words +=
            fmt::format("{}{} % of {}", heap.words.empty() ? "" : "; ", tax.percent.text(), money_text(tax.on_high));
    }
    return heap;
}

// What both quotes lack explains no difference between them.
void add_remarks(const Quote& quote, const Quote& other, std::vector<std::string>& out) {
    for (const Leftover& left : quote.leftovers)
        out.push_back(fmt::format("{} leaves {} of {} over, for {}", quote.name, extent_text(left.extent), left.item,
                                  name_of(left.to)));
    if (quote.ready_days > 0)
        out.push_back(fmt::format("{} has to wait {} days for parts", quote.name, quote.ready_days));
    for (const std::string& missing : quote.missing)
        if (std::find(other.missing.begin(), other.missing.end(), missing) == other.missing.end())
            out.push_back(fmt::format("{} lacks: {}", quote.name, missing));
}

std::string headline(const Quote& a, const Quote& b, std::int64_t difference) {
    if (difference == 0) return fmt::format("{} costs the same as {}", a.name, b.name);
    return fmt::format("{} is {} {} than {}", a.name, money_text(difference < 0 ? -difference : difference),
                       difference > 0 ? "dearer" : "cheaper", b.name);
}

void add_lines(const Quote& a, const Quote& b, Groups& groups, Explanation& out) {
    std::map<std::size_t, Pair> parts;
    std::map<LineKind, Pair> others;
    const auto sort = [&](const Quote& quote, Heap Pair::*side) {
        for (const QuoteLine& line : quote.lines) {
            Pair& pair = line.kind == LineKind::parts ? parts[groups.of(line)] : others[line.kind];
            (pair.*side).add(line, line_words(line));
        }
    };
    sort(a, &Pair::a);
    sort(b, &Pair::b);
    for (const auto& [group, pair] : parts) out.reasons.push_back(pair.difference(LineKind::parts, groups.name(group)));
    for (const auto& [kind, pair] : others) out.reasons.push_back(pair.difference(kind, kind_name(kind)));
    out.reasons.push_back(Pair{tax_heap(a), tax_heap(b)}.difference(LineKind::other, "Tax"));
}

}  // namespace

Result<Explanation> why_dearer(const Quote& a, const Quote& b, std::span<const Need> needs) {
    if (a.currency != b.currency)
        return fail(Errc::refused, "quotes in different currencies cannot be compared",
                    a.currency + " and " + b.currency);
    Explanation out;
    out.low = a.total_low - b.total_low;
    out.high = a.total_high - b.total_high;
    out.headline = headline(a, b, out.high);
    Groups groups(needs, a, b);
    add_lines(a, b, groups, out);
    std::erase_if(out.reasons, [](const Difference& d) { return d.low == 0 && d.high == 0; });
    const auto size = [](const Difference& d) { return d.high < 0 ? -d.high : d.high; };
    std::stable_sort(out.reasons.begin(), out.reasons.end(), [&](const Difference& x, const Difference& y) {
        return x.beside != y.beside ? y.beside : size(x) > size(y);
    });
    add_remarks(a, b, out.remarks);
    add_remarks(b, a, out.remarks);
    return out;
}

std::vector<SideBySide> side_by_side(std::span<const Quote> quotes, std::span<const Offer> offers, SortBy by) {
    std::vector<SideBySide> out;
    for (const Quote& quote : quotes) {
        SideBySide row{&quote, 0, 0, 0, false};
        if (const auto per = per_corner(quote)) {
            row.per_corner_low = per->low;
            row.per_corner_high = per->high;
        }
        bool first = true;
        for (const QuoteLine& line : quote.lines) {
            const auto offer = std::find_if(offers.begin(), offers.end(), [&](const Offer& o) {
                return line.kind == LineKind::parts && line.offer == o.id;
            });
            if (offer == offers.end()) continue;
            row.warranty_months =
                first ? offer->warranty_months : std::min(row.warranty_months, offer->warranty_months);
            row.warranty_labour = (first || row.warranty_labour) && offer->warranty_labour;
            first = false;
        }
        out.push_back(row);
    }
    const auto key = [&](const SideBySide& row) -> std::int64_t {
        switch (by) {
            case SortBy::soonest:
                return row.quote->ready_days;
            case SortBy::completeness:
                return static_cast<std::int64_t>(row.quote->missing.size());
            case SortBy::warranty:
                return -row.warranty_months;
            case SortBy::total:
                break;
        }
        return row.quote->total_high;
    };
    std::stable_sort(out.begin(), out.end(), [&](const SideBySide& x, const SideBySide& y) {
        return std::tuple(key(x), x.quote->total_high, !x.warranty_labour) <
               std::tuple(key(y), y.quote->total_high, !y.warranty_labour);
    });
    return out;
}

}  // namespace cotter
