// The draw and the checks. Records are changed in place: apply() would take most of the time.
#include "tests/core/judge/answer_property.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <random>

#include "core/trade/reading_spec.h"
#include "tests/core/judge/answer_yard.h"
#include "tests/core/survey/sample_job.h"

namespace cotter::test {

namespace {

class Lots {
public:
    explicit Lots(unsigned seed) : engine_(seed) {}
    std::size_t below(std::size_t n) { return engine_() % n; }
    template <class List>
    auto& pick(List& list) {
        return list[below(list.size())];
    }

private:
    std::mt19937 engine_;
};

struct Drawn {
    Job job;
    std::vector<Job> before;  // accepted earlier visits
    Instant as_of;
};

const std::vector<Job>& all_good_jobs() {
    static const std::vector<Job> jobs = [] {
        std::vector<Job> out;
        for (AnswerYard yard : {disc_yard(), electric_yard(), drum_yard(), air_yard(), overrun_yard(),
                                AnswerYard({an_axle(BrakeKind::electric_drum, Wheels::dual)}, Actuation::electric)}) {
            yard.all_good();
            out.push_back(yard.job());
        }
        return out;
    }();
    return jobs;
}

Place corner_of_place(const Place& p) {
    return p.is_corner() ? Place::corner(p.axle, p.side) : p;
}

TowAnswer answer(const Drawn& d, const Job* stranger = nullptr) {
    std::vector<EarlierVisit> earlier;
    for (const Job& job : d.before) earlier.push_back({&job, true});
    if (stranger != nullptr) earlier.push_back({stranger, false});
    return answer_towing(d.job, earlier, shipped_limits(), d.as_of, State::now);
}

int rank(const TowAnswer& a) {
    return std::min(static_cast<int>(a.outcome), static_cast<int>(TowOutcome::nothing_against));
}

// Worse for the wearing and the measured alike: thinner, looser, emptier.
void worsen(Reading& r, Lots& chance) {
    constexpr std::array kLess{0.0, 0.2, 0.5, 0.79, 0.9};
    constexpr std::array kMore{1.1, 2.0, 5.0, 20.0};
    const ReadingSpec* spec = reading_spec(r.what);
    const bool more = spec != nullptr && spec->high;
    const double factor = more ? chance.pick(kMore) : chance.pick(kLess);
    for (ReadingPoint& p : r.points)
        if (const auto number = Number::parse(fmt::format("{:.4f}", p.value.value() * factor))) p.value = *number;
}

void worsen(Look& look, Lots& chance) {
    const TradePoint* p = find_point(look.point);
    if (p == nullptr || chance.below(3) == 0 || p->entries.empty()) {
        look.result = chance.below(2) == 0 ? LookResult::bad : LookResult::cannot_tell;
        return;
    }
    const LookEntry& entry = p->entries[chance.below(p->entries.size())];
    if (entry.grade == Grade::serviceable) return;
    look.result = LookResult::bad;
    for (LookItem& item : look.items)
        if (item.item == entry.id) item.result = LookResult::bad;
    if (p->list == ListKind::faults) look.items.push_back({std::string(entry.id), LookResult::bad});
    if (p->list == ListKind::choice) look.items = {{std::string(entry.id), LookResult::bad}};
}

void add_finding(Job& job, Lots& chance, int n) {
    constexpr std::array kWhat{std::pair("pads", "thin"),
                               std::pair("hub cap", "cracked"),
                               std::pair("bearing", "spalled"),
                               std::pair("brake hose", "chafed"),
                               std::pair("tyre", "bulge"),
                               std::pair("coupler", "worn"),
                               std::pair("toolbox", "rusted through"),
                               std::pair("U-bolts", "loose")};
    const auto& corners = job.all<Trailer>().front().corners();
    Finding f;
    f.id = {numbered(90000 + n)};
    f.place = corners[chance.below(corners.size())];
    std::tie(f.component, f.defect) = chance.pick(kWhat);
    f.grade = static_cast<Grade>(chance.below(4));
    f.outcome = static_cast<Outcome>(chance.below(4));
    f.at = job.all<Visit>().front().opened;
    f.at.unix_s += static_cast<std::int64_t>(chance.below(4 * 3600));
    f.by = "A. Tester";
    job.all<Finding>().push_back(f);
}

void change(Job& job, Lots& chance, int n) {
    switch (chance.below(8)) {
        case 0:
            if (auto& all = job.all<Look>(); !all.empty())
                all.erase(all.begin() + static_cast<std::ptrdiff_t>(chance.below(all.size())));
            break;
        case 1:
            if (auto& all = job.all<Reading>(); !all.empty())
                all.erase(all.begin() + static_cast<std::ptrdiff_t>(chance.below(all.size())));
            break;
        case 2:
            if (!job.all<Look>().empty()) worsen(chance.pick(job.all<Look>()), chance);
            break;
        case 3:
            if (!job.all<Reading>().empty()) worsen(chance.pick(job.all<Reading>()), chance);
            break;
        case 4:
            add_finding(job, chance, n);
            break;
        case 5:
            job.all<Visit>().front().duty = static_cast<Duty>(chance.below(5));
            job.all<Visit>().front().role = chance.below(4) == 0 ? VisitRole::owner : VisitRole::mechanic;
            break;
        case 6:
            if (auto& all = job.all<Torque>(); !all.empty()) chance.pick(all).passes.pop_back();
            break;
        default:
            break;
    }
}

void shift(Job& job, std::int64_t days, int number) {
    const auto move = [&](auto& list) {
        for (auto& r : list) r.at.unix_s += days * 86400;
    };
    Visit& visit = job.all<Visit>().front();
    visit.id = {numbered(800000 + number)};
    visit.opened.unix_s += days * 86400;
    move(job.all<Look>());
    move(job.all<Reading>());
    move(job.all<Finding>());
    move(job.all<Torque>());
    move(job.all<Level>());
    move(job.all<Sidewall>());
    move(job.all<Chamber>());
    move(job.all<BreakawayTest>());
    move(job.all<MakerLimit>());
}

Drawn draw(Lots& chance) {
    Drawn d;
    const std::size_t kind = chance.below(all_good_jobs().size());
    d.job = all_good_jobs()[kind];
    const std::size_t changes = chance.below(4);
    for (std::size_t i = 0; i < changes; ++i) change(d.job, chance, static_cast<int>(i));
    if (chance.below(3) == 0) {
        Job before = all_good_jobs()[kind];
        for (std::size_t i = chance.below(3); i > 0; --i) change(before, chance, static_cast<int>(50 + i));
        constexpr std::array<std::int64_t, 5> kDays{-1, -20, -80, -100, -400};
        shift(before, chance.pick(kDays), 1);
        d.before.push_back(std::move(before));
    }
    d.as_of = d.job.all<Visit>().front().opened;
    constexpr std::array<std::int64_t, 8> kHours{5, 5, 5, 5, 5, 30, 100 * 24, 400 * 24};
    d.as_of.unix_s += chance.pick(kHours) * 3600;
    return d;
}

// Everything that answers this point at this place, taken out of all visits.
void silence(Job& job, const TradePoint& p, const Place& place) {
    const Place corner = corner_of_place(place);
    const auto there = [&](const Place& other) { return corner_of_place(other) == corner || !place.is_corner(); };
    std::erase_if(job.all<Look>(), [&](const Look& l) { return l.point == name_of(p.id) && l.place == place; });
    std::erase_if(job.all<Reading>(), [&](const Reading& r) {
        const ReadingSpec* spec = reading_spec(r.what);
        return spec != nullptr && there(r.place) &&
               std::find(p.readings.begin(), p.readings.end(), spec->name) != p.readings.end();
    });
    std::erase_if(job.all<Finding>(), [](const Finding&) { return true; });
    if (p.level) std::erase_if(job.all<Level>(), [&](const Level& l) { return there(l.place); });
    if (p.torque) std::erase_if(job.all<Torque>(), [&](const Torque& t) { return there(t.place); });
    if (p.timed) job.all<BreakawayTest>().clear();
    if (p.id == PointId::tire_id || p.id == PointId::tire_load)
        std::erase_if(job.all<Sidewall>(), [&](const Sidewall& s) { return s.place == place; });
    if (p.id == PointId::air_kind) std::erase_if(job.all<Chamber>(), [&](const Chamber& c) { return there(c.place); });
}

bool by_record(const PointAnswer& a) {
    if (!a.point) return false;
    const TradePoint& p = point(*a.point);
    const bool plate = *a.point <= PointId::use_tow || *a.point == PointId::cpl_rate || *a.point == PointId::load_known;
    return !plate && (!p.computed || *a.point == PointId::tire_load);
}

const PointAnswer* same(const TowAnswer& in, const PointAnswer& a) {
    for (const PointAnswer& other : in.points)
        if (other.point == a.point && other.place == a.place) return &other;
    return nullptr;
}

std::string told(const char* what, unsigned round, const PointAnswer& a, const TowAnswer& before,
                 const TowAnswer& after) {
    return fmt::format("round {}: {}: {} at {}\nbefore: {}\nafter: {}", round, what, a.point ? name_of(*a.point) : "?",
                       a.place.text(), why(before), why(after));
}

struct Round {
    Lots& chance;
    PropertyRun& run;
    unsigned number;
    const Drawn& drawn;
    const TowAnswer& before;

    void fail(const char* what, const PointAnswer& a, const TowAnswer& after) const {
        run.failures.push_back(told(what, number, a, before, after));
    }
};

void check_silence(const Round& r, const PointAnswer& a) {
    if (!a.essential || !by_record(a)) return;
    Drawn d = r.drawn;
    silence(d.job, point(*a.point), a.place);
    for (Job& job : d.before) silence(job, point(*a.point), a.place);
    const TowAnswer after = answer(d);
    const PointAnswer* now = same(after, a);
    if (now == nullptr || !now->essential) return;
    ++r.run.silences;
    if (rank(after) >= 3) r.fail("nothing found against it from silence", a, after);
    if (now->known) r.fail("known without an answer", a, after);
}

// Comparisons with mates say more about the others when one of them is known: what they find is no better without it.
bool compares(PointId id) {
    return id == PointId::hub_heat || id == PointId::tire_id || id == PointId::air_kind || id == PointId::brk_pair ||
           id == PointId::load_gross || id == PointId::load_tongue;
}

bool carries_bad(const TowAnswer& in, const Uuid& record) {
    return std::any_of(in.points.begin(), in.points.end(), [&](const PointAnswer& a) {
        return a.record == record && (!a.known || a.grade >= Grade::repair);
    });
}

template <class F>
bool with_record(Job& job, const Uuid& id, F f) {
    const auto in = [&](auto& list) {
        for (std::size_t i = 0; i < list.size(); ++i)
            if (list[i].id.uuid == id) {
                f(list, i);
                return true;
            }
        return false;
    };
    return in(job.all<Look>()) || in(job.all<Reading>()) || in(job.all<Level>()) || in(job.all<Torque>()) ||
           in(job.all<BreakawayTest>()) || in(job.all<Sidewall>());
}

void check_removal(const Round& r, const PointAnswer& a) {
    if (!by_record(a) || !a.known || a.grade >= Grade::repair || compares(*a.point) || a.record.nil()) return;
    if (carries_bad(r.before, a.record)) return;
    Drawn d = r.drawn;
    const auto take_out = [](auto& list, std::size_t i) { list.erase(list.begin() + static_cast<std::ptrdiff_t>(i)); };
    bool found = with_record(d.job, a.record, take_out);
    for (Job& job : d.before) found = found || with_record(job, a.record, take_out);
    if (!found) return;
    ++r.run.removals;
    const TowAnswer after = answer(d);
    if (rank(after) > rank(r.before)) r.fail("a good answer taken away improves it", a, after);
}

void worsen_record(std::vector<Look>& list, std::size_t i, Lots& chance) {
    worsen(list[i], chance);
}
void worsen_record(std::vector<Reading>& list, std::size_t i, Lots& chance) {
    worsen(list[i], chance);
}
void worsen_record(std::vector<Level>& list, std::size_t i, Lots& chance) {
    list[i].before.mark = static_cast<LevelMark>(chance.below(3));
}
void worsen_record(std::vector<Torque>& list, std::size_t i, Lots& chance) {
    if (!list[i].passes.empty()) list[i].passes.resize(chance.below(list[i].passes.size()));
}
void worsen_record(std::vector<BreakawayTest>& list, std::size_t i, Lots& chance) {
    if (list[i].wheels.empty()) return;
    chance.pick(list[i].wheels).at_end = chance.below(2) == 0 ? Held::turns : Held::not_tried;
}
void worsen_record(std::vector<Sidewall>& list, std::size_t i, Lots& chance) {
    if (chance.below(2) == 0)
        list[i].not_for_highway = true;
    else
        list[i].index_single = list[i].index_dual = static_cast<int>(60 + chance.below(30));
}

void check_worsening(const Round& r, const PointAnswer& a) {
    if (!by_record(a) || !a.known || a.grade >= Grade::repair || a.record.nil()) return;
    if (carries_bad(r.before, a.record) || a.point == PointId::hub_heat) return;
    Drawn d = r.drawn;
    const auto make_worse = [&](auto& list, std::size_t i) { worsen_record(list, i, r.chance); };
    bool found = with_record(d.job, a.record, make_worse);
    for (Job& job : d.before) found = found || with_record(job, a.record, make_worse);
    if (!found) return;
    ++r.run.worsenings;
    const TowAnswer after = answer(d);
    if (rank(after) > rank(r.before)) r.fail("a good answer made worse improves it", a, after);
}

// Silence one place, copy another place's answer: the silent one stays open.
void check_neighbor(const Round& r, const PointAnswer& a) {
    if (!a.essential || !by_record(a) || !a.place.is_corner() || point(*a.point).timed) return;
    Drawn d = r.drawn;
    d.before.clear();
    silence(d.job, point(*a.point), a.place);
    const auto copy = [](auto& list, std::size_t i) {
        auto again = list[i];
        again.id.uuid.bytes[0] = 0xee;
        again.at.unix_s += 60;
        list.push_back(again);
    };
    bool copied = false;
    for (const PointAnswer& other : r.before.points)
        if (other.point == a.point && other.place != a.place && other.known && !other.record.nil())
            copied = with_record(d.job, other.record, copy) || copied;
    const TowAnswer after = answer(d);
    const PointAnswer* now = same(after, a);
    if (!copied || now == nullptr || !now->essential) return;
    ++r.run.neighbors;
    if (now->known) r.fail("another place's answer fills this one", a, after);
}

void check_stranger(const Round& r) {
    Job stranger = r.chance.pick(all_good_jobs());
    stranger.all<Trailer>() = r.drawn.job.all<Trailer>();
    for (std::size_t i = r.chance.below(3); i > 0; --i) change(stranger, r.chance, static_cast<int>(70 + i));
    constexpr std::array<std::int64_t, 5> kDays{-300, -30, -1, 0, 1};
    shift(stranger, r.chance.pick(kDays), 2);
    ++r.run.strangers;
    const TowAnswer after = answer(r.drawn, &stranger);
    if (rank(after) > rank(r.before)) r.fail("an unaccepted signer improves it", PointAnswer{}, after);
    for (const PointAnswer& a : r.before.points) {
        const PointAnswer* now = same(after, a);
        if (!a.known && a.essential && now != nullptr && now->known && now->grade < Grade::repair)
            r.fail("an unaccepted signer answers", a, after);
        if (a.known && a.point && a.grade >= Grade::repair && now != nullptr && now->grade < a.grade)
            r.fail("an unaccepted signer closes", a, after);
    }
}

void check_end(const Round& r) {
    if (!r.before.runs_out) return;
    Drawn d = r.drawn;
    d.as_of = *r.before.runs_out;
    --d.as_of.unix_s;
    ++r.run.ends;
    const TowAnswer after = answer(d);
    if (after.outcome != r.before.outcome || after.essential_open != r.before.essential_open)
        r.fail("changed before it was said to run out", PointAnswer{}, after);
}

}  // namespace

PropertyRun run_properties(unsigned seed, std::size_t rounds) {
    PropertyRun run;
    Lots chance(seed);
    for (std::size_t i = 0; i < rounds; ++i) {
        const Drawn drawn = draw(chance);
        const TowAnswer before = answer(drawn);
        ++run.rounds;
        ++run.outcomes[static_cast<std::size_t>(before.outcome)];
        const Round round{chance, run, static_cast<unsigned>(i), drawn, before};
        const PointAnswer& a = before.points[chance.below(before.points.size())];
        switch (chance.below(6)) {
            case 0:
                check_silence(round, a);
                break;
            case 1:
                check_removal(round, a);
                break;
            case 2:
                check_worsening(round, a);
                break;
            case 3:
                check_neighbor(round, a);
                break;
            case 4:
                check_stranger(round);
                break;
            default:
                check_end(round);
                break;
        }
    }
    return run;
}

}  // namespace cotter::test
