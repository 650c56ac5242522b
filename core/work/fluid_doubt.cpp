// Doubts about a product.
#include "core/work/fluid_doubt.h"

#include <algorithm>
#include <fmt/format.h>

namespace cotter {

namespace {

constexpr const char* kPractice = "trade practice; the manufacturer's manual overrides it";

void meet(std::vector<FluidMet>& out, const std::string& product, std::string_view how) {
    const bool there = std::any_of(out.begin(), out.end(), [&](const FluidMet& m) { return m.product == product; });
    if (!product.empty() && !there) out.push_back({product, std::string(how)});
}

void meet_levels(const Job& job, const Place& place, std::string_view fluid, const Id<Level>& but, std::string_view how,
                 std::vector<FluidMet>& out) {
    const auto& all = job.all<Level>();
    for (auto it = all.rbegin(); it != all.rend(); ++it)
        if (it->fluid == fluid && it->id != but && it->place.axle == place.axle &&
            (!place.is_corner() || it->place.side == place.side))
            meet(out, it->product, how);
}

void meet_counts(const Job& job, std::string_view how, std::vector<FluidMet>& out) {
    const auto& all = job.all<BleedCount>();
    for (auto it = all.rbegin(); it != all.rend(); ++it) meet(out, it->fluid, how);
}

MixVerdict fits(const FluidTable& table, std::string_view product, std::optional<HubKind> hub) {
    if (hub) return fits_hub(table, product, *hub);
    const FluidKind* kind = table.find(product);
    if (kind == nullptr) return may_mix(table, product, product);  // says that it is not known
    if (kind->use == FluidUse::brake) return {Mixing::may, {}, {}};
    return {Mixing::must_not, fmt::format("{} is for hubs: it destroys the seals of a brake", kind->id), {}};
}

FluidDoubt doubt_of(MixVerdict verdict, std::string_view how) {
    if (verdict.source.empty()) verdict.source = kPractice;
    if (!how.empty()) verdict.words += fmt::format(" ({})", how);
    return {verdict.mixing, std::move(verdict.words), std::move(verdict.source)};
}

}  // namespace

std::vector<FluidMet> fluids_met(const Job& job, const Job* last, const Place& place, std::string_view fluid,
                                 const Id<Level>& but) {
    std::vector<FluidMet> out;
    const bool brake = fluid == "brake fluid";
    if (brake) meet_counts(job, "put in while bleeding", out);
    meet_levels(job, place, fluid, but, "recorded at this visit", out);
    if (last == nullptr) return out;
    if (brake) meet_counts(*last, "put in at the last visit", out);
    meet_levels(*last, place, fluid, {}, "recorded at the last visit", out);
    return out;
}

std::vector<FluidDoubt> doubts_about(const FluidTable& table, std::string_view product, std::optional<HubKind> hub,
                                     std::span<const FluidMet> met) {
    std::vector<FluidDoubt> out;
    if (product.empty()) return out;
    if (const MixVerdict verdict = fits(table, product, hub); verdict.mixing != Mixing::may)
        out.push_back(doubt_of(verdict, {}));
    if (table.find(product) == nullptr) return out;  // whatever it meets, that is the reason
    for (const FluidMet& there : met)
        if (const MixVerdict verdict = may_mix(table, product, there.product); verdict.mixing != Mixing::may)
            out.push_back(doubt_of(verdict, there.how));
    std::stable_sort(out.begin(), out.end(), [](const FluidDoubt& a, const FluidDoubt& b) {
        return (a.mixing == Mixing::must_not) > (b.mixing == Mixing::must_not);
    });
    return out;
}

}  // namespace cotter
