// See level_view.h.
#include "app/views/level_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/corner_view.h"
#include "app/views/plan_view.h"

namespace cotter {

namespace {

const Level* level_of(const Job& job, const Route& route, std::string_view fluid) {
    if (const auto uuid = Uuid::parse(route.record))
        if (const Level* there = job.find(Id<Level>{*uuid})) return there;
    const Level* found = nullptr;
    for (const Level& l : job.all<Level>())
        if (at_place(l.place, route.place) && l.fluid == fluid) found = &l;
    return found;
}

// The product goes over from the like fluid before it, unless something speaks against it here.
Level new_level(const Session& session, const Place& place, std::string_view fluid) {
    Level level;
    level.place = place;
    level.fluid = fluid;
    for (const Level& l : session.job().all<Level>())
        if (l.fluid == fluid && !l.product.empty() && fluid_doubt_lines(session, place, fluid, l.product, {}).empty())
            level.product = l.product;
    return level;
}

std::string minutes(std::int64_t seconds) {
    return fmt::format("{}:{:02}", seconds / 60, seconds % 60);
}

// By the place, as a timer may begin before the level is in the job.
std::string timer_key(const Job& job, const Level& level) {
    return fmt::format("{} {} {}", job.id().text(), level.place.text(), level.fluid);
}

SettleTimer timer_of(const Drafts& drafts, std::string record, const Instant& now) {
    SettleTimer timer;
    const TimerDraft* begun = drafts.timer_for(record);
    timer.record = std::move(record);
    if (begun == nullptr) return timer;
    timer.begun = true;
    timer.elapsed_s = std::max<std::int64_t>(0, now.unix_s - begun->started.unix_s);
    const std::int64_t left = begun->seconds - timer.elapsed_s;
    timer.over = left <= 0;
    timer.words = timer.over ? "Settled for " + minutes(timer.elapsed_s) : minutes(left) + " to go";
    return timer;
}

bool kind_fits(const FluidKind& kind, const Job& job, const Place& place) {
    const Trailer* trailer = job.only<Trailer>();
    if (trailer == nullptr || !trailer->has(place)) return true;
    const HubKind hub = trailer->axles[static_cast<std::size_t>(place.axle) - 1].hub;
    return std::find(kind.hubs.begin(), kind.hubs.end(), hub) != kind.hubs.end();
}

constexpr FluidTexts kHubOil{
    "gear oil SAE 90",
    "Oil that is missing went somewhere: look for the leak before topping up.",
    "Overfilled oil is forced past the vent or seal when it warms up: take it down to the line.",
    "Wrong fluid for this hub",
    "I already put it in: record it, the hub must be drained",
    {"window too dark to see through", "cap is dented or covered", "trailer does not stand level", "wheel is off"}};
constexpr FluidTexts kBrakeFluid{
    "DOT 4",
    "The level drops as pads and shoes wear, or because of a leak: look at every hose, line, caliper and cylinder "
    "before topping up.",
    "Overfilled fluid has no room when it warms up or the pads are pushed back: take it down to the mark.",
    "Wrong fluid for this brake system",
    "I already put it in: record it, the system must be flushed",
    {"reservoir too dark to see through", "reservoir is covered", "trailer does not stand level",
     "no mark on the reservoir"}};

std::string_view advice_of(const Level& level, const FluidTexts& texts) {
    if (level.before.mark == LevelMark::empty || level.before.mark == LevelMark::below) return texts.low;
    if (level.before.mark == LevelMark::above || (level.after && level.after->mark == LevelMark::above))
        return texts.over;
    return {};
}

// What was named before, then each kind that is for such a hub or reservoir: nobody should have to type it.
void fill_products(LevelView& view, const Session& session) {
    const FluidTable& table = session.fluids();
    const auto named = [&](const auto& like) { return std::any_of(view.products.begin(), view.products.end(), like); };
    for (const Level& l : session.job().all<Level>())
        if (l.fluid == view.level.fluid && !l.product.empty() &&
            !named([&](const std::string& p) { return p == l.product; }))
            view.products.push_back(l.product);
    for (const FluidKind& kind : table.kinds) {
        const bool here = (kind.use == FluidUse::hub) == view.hub;
        if (here && (!view.hub || kind_fits(kind, session.job(), view.place)) &&
            !named([&](const std::string& p) { return table.find(p) == &kind; }))
            view.products.push_back(kind.id);
    }
}

// What keeps it open, once it has been looked at.
void fill_open(LevelView& view, const Job& job) {
    if (!view.there) return;
    const auto remarks = check_level(view.level);
    view.proved = proves_level(remarks);
    for (const LevelRemark& r : remarks) view.open.push_back(upper_first(r.words) + ".");
    if (const auto mate = differs_from_mate(job, view.level)) view.open.push_back(upper_first(*mate) + ".");
}

}  // namespace

LevelView level_view(const Session& session) {
    const Job& job = session.job();
    const Route& route = session.route();
    LevelView view;
    view.hub = route.place.is_corner();
    const std::string_view fluid = view.hub ? "hub oil" : "brake fluid";
    const Level* there = level_of(job, route, fluid);
    view.there = there != nullptr;
    view.level = view.there ? *there : new_level(session, route.place, fluid);
    view.place = route.place;
    view.chrome = chrome_of(session, upper_first(view.level.fluid), place_words(route.place, session.settings().sides));
    view.now = session.now();
    view.drafts = session.drafts();
    view.timer = timer_of(view.drafts, timer_key(job, view.level), view.now);
    view.texts = view.hub ? kHubOil : kBrakeFluid;
    view.advice = advice_of(view.level, view.texts);
    view.doubts = fluid_doubt_lines(session, route.place, view.level.fluid, view.level.product, view.level.id);
    fill_open(view, job);
    fill_products(view, session);
    if (view.hub) view.next_place = neighbour(job, route.place, 1);
    if (view.next_place) view.next_label = place_words(*view.next_place, session.settings().sides);
    return view;
}

Drafts with_timer(const LevelView& view) {
    constexpr std::int64_t kForgotten = 24 * 3600;  // seconds
    Drafts drafts = view.drafts;
    std::erase_if(drafts.timers, [&](const TimerDraft& t) { return view.now.unix_s - t.started.unix_s > kForgotten; });
    drafts.put_timer({view.timer.record, view.now, kSettleSeconds});
    return drafts;
}

Level with_after(const LevelView& view, LevelMark mark) {
    Level level = view.level;
    level.taken = Taken::measured;
    level.reason.clear();
    level.after = level.after.value_or(LevelSeen{});
    level.after->mark = mark;
    if (!view.timer.begun) return level;
    const std::int64_t s = view.timer.elapsed_s;
    const auto settled =
        s % 60 == 0 && s > 0 ? make_amount(fmt::format("{}", s / 60), "min") : make_amount(fmt::format("{}", s), "s");
    if (settled) level.settled = *settled;
    return level;
}

}  // namespace cotter
