// Hubs and bearings: oil, end play, the lock, temperatures after stops.
#include <algorithm>

#include "core/judge/answer_rules.h"
#include "core/judge/gross_bands.h"
#include "core/judge/heat.h"

namespace cotter::answering {

namespace {

Verdict of_mark(const LevelSeen& seen) {
    const Fact what = fact(FactId::level_seen, seen.mark);
    switch (seen.mark) {
        case LevelMark::empty:
            return told(Grade::do_not_tow, what);
        case LevelMark::below:
            return told(Grade::repair, what);
        case LevelMark::at:
            return told(Grade::serviceable, what);
        case LevelMark::above:
            return told(Grade::watch, what);
        case LevelMark::not_seen:
            break;
    }
    return open(what);
}

struct PlayRange {
    std::optional<double> least, most;
    AnswerSource source;
};

// The maker's range: figures entered, else what the bearing was set by.
PlayRange makers_range(const Scene& scene, const Sitting& sitting, const Place& corner) {
    PlayRange out;
    for (const Limit* l : makers_figures(scene, sitting, what::end_play, corner)) {
        (is_lower(l->bound) ? out.least : out.most) = l->value.si();
        out.source = source_of(*l);
    }
    if (out.least || out.most) return out;
    for (const BearingSetting& b : sitting.job->all<BearingSetting>()) {
        if (corner_only(b.place) != corner || b.source.empty()) continue;
        if (b.play_min) out.least = b.play_min->si();
        if (b.play_max) out.most = b.play_max->si();
        out.source = {RestsOn::maker, b.source, Evidence::read};
    }
    return out;
}

void judge_play(const Scene& scene, const Ask& ask, const Sitting& s, const Measures& dial, Reply& r) {
    const auto [low, high] = std::minmax_element(dial.begin(), dial.end(), thinner);
    const Measure& most = **high;
    const Amount shown = most.amount();
    if ((*low)->si < 0) {
        r.verdicts.push_back(open(fact(FactId::play_negative, (*low)->amount())));
        return;
    }
    if (bands::end_play_gross(shown)) {
        r.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::play_gross, shown), own_band()));
        return;
    }
    const double step = std::max(most.step_si, 1e-9);
    if (dial.size() > 1 && most.si - (*low)->si > 2 * step * (1 + 1e-6))
        r.verdicts.push_back(open(fact(FactId::play_scatters, (*low)->amount(), shown)));
    const PlayRange range = makers_range(scene, s, ask.place);
    const Axle* axle = scene.axle(ask.place);
    const double grain = 1e-9;
    if (range.least || range.most) {
        const bool out =
            (range.least && (*low)->si < *range.least - grain) || (range.most && most.si > *range.most + grain);
        r.verdicts.push_back(told(out ? Grade::repair : Grade::serviceable,
                                  fact(out ? FactId::play_outside_maker : FactId::play_within_maker, shown),
                                  range.source));
    } else if (axle != nullptr && axle->hub == HubKind::preset) {
        r.verdicts.push_back(open(fact(FactId::play_preset, shown)));
    } else {
        const Grade grade = *bands::end_play(shown);
        const FactId id = most.si == 0                  ? FactId::play_none
                          : grade == Grade::serviceable ? FactId::play_good
                                                        : FactId::play_loose;
        r.verdicts.push_back(told(
            grade, fact(id, shown),
            grade >= Grade::repair ? own_band() : practice("bearing play 0.001 to 0.005 in, some makers to 0.010")));
    }
}

// After the hub was opened, in the same visit, only a dial tells the play.
bool dial_wanted(const Scene& scene, const Ask& ask, const Reply& look) {
    return std::any_of(scene.works.begin(), scene.works.end(), [&](const Done& d) {
        return d.work == Work::hub_opened && d.sitting == look.sitting->index &&
               concerns(d.place, ask.place, Spot::corner) && later_than_work(look, d);
    });
}

struct Hub {
    Place corner;
    const Measure* measure = nullptr;
};

std::vector<Hub> hubs_of(const Scene& scene, const Sitting& s) {
    std::vector<Hub> out;
    for (const Place& corner : scene.trailer->corners()) {
        const Measure* newest = nullptr;
        for (const Measure* m : measures(s, what::hub_temperature, corner))
            if (!m->fault && (newest == nullptr || newest->reading->at < m->reading->at)) newest = m;
        out.push_back({corner, newest});
    }
    return out;
}

bool within_minutes(const std::vector<Hub>& hubs, std::int64_t minutes) {
    std::int64_t first = INT64_MAX, last = INT64_MIN;
    for (const Hub& h : hubs)
        if (h.measure != nullptr) {
            first = std::min(first, h.measure->reading->at.unix_s);
            last = std::max(last, h.measure->reading->at.unix_s);
        }
    return last - first <= minutes * 60;
}

// In the unit that this hub was entered in.
double in_unit(const Measure& m, bool fahrenheit) {
    return fahrenheit ? (m.si - 273.15) * 9 / 5 + 32 : m.si - 273.15;
}

void judge_hub(const Scene& scene, const std::vector<Hub>& hubs, std::size_t self, Reply& r) {
    const Measure& own = *hubs[self].measure;
    const bool fahrenheit = own.reading->unit == "[degF]";
    std::vector<double> all;
    std::size_t place = 0;
    for (std::size_t i = 0; i < hubs.size(); ++i) {
        if (hubs[i].measure == nullptr) continue;
        if (i == self) place = all.size();
        all.push_back(in_unit(*hubs[i].measure, fahrenheit));
    }
    const double over = all.size() < 2 ? 0 : compare_hubs(all, 0)[place].over_mates;
    const std::string_view ucum = fahrenheit ? "[degF]" : "Cel";
    const Amount apart = {*Number::parse(figure(std::abs(over), "1", 0).number.text()), std::string(ucum)};
    const Grade grade = bands::hub_heat(all[place], over, fahrenheit);
    const Axle* axle = scene.axle(hubs[self].corner);
    if (grade != Grade::serviceable) {
        const bool alone = bands::hub_heat(all[place], 0, fahrenheit) == grade;
        r.verdicts.push_back(told(
            grade, alone ? fact(FactId::hub_too_hot, own.amount()) : fact(FactId::hub_over_mates, own.amount(), apart),
            own_band()));
    } else if (bands::brake_cold(over, fahrenheit) && axle != nullptr && is_braked(axle->brake)) {
        r.verdicts.push_back(told(Grade::watch, fact(FactId::brake_cold, own.amount(), apart), own_band()));
    } else {
        r.verdicts.push_back(told(Grade::serviceable, fact(FactId::hub_cool, own.amount()), own_band()));
    }
}

}  // namespace

void hub_oil(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        const bool as_found = s.current && scene.question->state == State::found;
        for (const Level& level : s.job->all<Level>()) {
            if (level.fluid != "hub oil" || corner_only(level.place) != ask.place) continue;
            Reply r = reply_at(s, level.at, level.by, level.id.uuid);
            r.absent = level.taken != Taken::measured;
            const bool after = level.after && !as_found;
            if (after) r.stage = Stage::after;
            r.staged = true;
            r.verdicts.push_back(r.absent ? open(fact(FactId::not_taken, level.taken, level.reason))
                                          : of_mark(after ? *level.after : level.before));
            out.push_back(std::move(r));
        }
    }
}

void hub_play(const Scene& scene, const Ask& ask, Replies& out) {
    for (Reply& look : out)
        if (look.facet == Facet::look && is_good(look) && dial_wanted(scene, ask, look))
            look.verdicts.push_back(open(fact(FactId::play_by_dial)));
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, what::end_play, ask.place, out);
        Measures dial = measures(s, what::end_play, ask.place);
        if (dial.empty()) continue;
        Reply r = reply_of(s, dial);
        if (!take_faults(dial, r)) judge_play(scene, ask, s, dial, r);
        out.push_back(std::move(r));
    }
}

void hub_lock(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        if (s.current && scene.question->state == State::found) continue;
        for (const BearingSetting& b : s.job->all<BearingSetting>()) {
            if (corner_only(b.place) != ask.place || !b.new_lock) continue;
            Reply r = reply_at(s, b.at, b.by, b.id.uuid);
            r.verdicts.push_back(told(Grade::serviceable, fact(FactId::lock_new), source_of(ask.point->law)));
            out.push_back(std::move(r));
        }
    }
}

void hub_heat(const Scene& scene, const Ask& ask, Replies& out) {
    if (scene.trailer == nullptr) return;
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, what::hub_temperature, ask.place, out);
        const std::vector<Hub> hubs = hubs_of(scene, s);
        const auto self = std::find_if(hubs.begin(), hubs.end(), [&](const Hub& h) { return h.corner == ask.place; });
        if (self == hubs.end() || self->measure == nullptr) continue;
        Reply r = reply_of(s, {self->measure});
        judge_hub(scene, hubs, static_cast<std::size_t>(self - hubs.begin()), r);
        for (const Hub& h : hubs)
            if (h.measure == nullptr) r.verdicts.push_back(open(fact(FactId::hub_missing, h.corner)));
        if (!within_minutes(hubs, 5)) r.verdicts.push_back(open(fact(FactId::hubs_apart)));
        out.push_back(std::move(r));
    }
}

}  // namespace cotter::answering
