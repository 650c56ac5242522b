// The visits of a trailer made ready to be asked: values by name and place, looks by point, distances, work.
#include <algorithm>
#include <tuple>

#include "core/base/text.h"
#include "core/judge/answering.h"
#include "core/trade/work_done.h"

namespace cotter::answering {

namespace {

constexpr std::int64_t kDay = 86400;

// "axle 2 right, inner" of a reading over the whole trailer -> that corner, with "inner" left over; "axle 2" -> the
// axle.
void settle_place(Measure& m) {
    const std::string text = ascii_lower(m.where);
    if (m.place.is_corner() || !text.starts_with("axle ") || text.size() < 6) return;
    const int axle = text[5] - '0';
    if (axle < 1 || axle > 4) return;
    std::size_t end = 6;
    m.axle = axle;
    for (const Side side : {Side::left, Side::right})
        if (const auto word = std::string(" ") + std::string(name_of(side)); text.compare(6, word.size(), word) == 0) {
            m.place = Place::corner(axle, side);
            m.axle = 0;
            end = 6 + word.size();
        }
    while (end < text.size() && (text[end] == ' ' || text[end] == ',')) ++end;
    m.where.remove_prefix(end);
}

// Of duals, a tire's value at the corner with "inner" or "outer" belongs to that wheel.
void settle_wheel(Measure& m, const Trailer* trailer) {
    if (!m.place.is_corner() || m.place.wheel != Wheel::only || trailer == nullptr) return;
    if (m.spec == nullptr || m.spec->component != "tyre" || m.spec->name == what::dual_diameters) return;
    const auto number = static_cast<std::size_t>(m.place.axle);
    if (number > trailer->axles.size() || trailer->axles[number - 1].wheels != Wheels::dual) return;
    if (m.where == "inner" || m.where.starts_with("inner wheel")) m.place.wheel = Wheel::inner;
    if (m.where == "outer" || m.where.starts_with("outer wheel")) m.place.wheel = Wheel::outer;
}

std::optional<FactId> fault_of(const Measure& m, const Instant& as_of) {
    const Unit* unit = find_unit(m.reading->unit);
    if (m.reading->at.unix_s > as_of.unix_s + kDay) return FactId::future;
    if (unit == nullptr || m.reading->unit.empty()) return FactId::no_unit;
    if (unit->quantity != m.spec->quantity) return FactId::other_unit;
    return m.si >= m.spec->lowest && m.si <= m.spec->highest ? std::nullopt : std::optional(FactId::implausible);
}

double usual_step(const ReadingSpec& spec, std::string_view ucum) {
    for (const UnitStep& step : spec.units)
        if (step.ucum == ucum)
            if (const auto number = Number::parse(step.step)) return number->value() * find_unit(ucum)->factor;
    return 0;
}

void read_points(const Reading& r, const ReadingSpec& spec, const Trailer* trailer, const Instant& as_of,
                 std::vector<Measure>& out) {
    for (const ReadingPoint& point : r.points) {
        Measure m;
        m.place = r.place;
        m.spec = &spec;
        m.where = point.where;
        m.reading = &r;
        m.point = &point;
        settle_place(m);
        settle_wheel(m, trailer);
        const Unit* unit = find_unit(r.unit);
        if (unit != nullptr) {
            m.si = m.amount().si();
            m.step_si = r.resolution ? r.resolution->value() * unit->factor : usual_step(spec, r.unit);
        }
        m.fault = fault_of(m, as_of);
        out.push_back(m);
    }
}

// Does `other` put `m` out of date? A nameless point is the whole of its reading.
bool replaces(const Measure& other, const Measure& m) {
    if (other.spec != m.spec || other.axle != m.axle || other.fault == FactId::future) return false;
    if (other.place != m.place) return false;
    if (other.reading->stage != m.reading->stage) return other.reading->stage == Stage::after;
    const bool same = other.where == m.where || other.where.empty() || m.where.empty();
    if (!same || other.reading == m.reading) return false;
    return other.reading->at > m.reading->at || (other.reading->at == m.reading->at && other.reading > m.reading);
}

bool taken_before(const Measure& a, const Measure& b) {
    const auto key = [](const Measure& m) { return std::tuple(m.spec, m.reading->stage, m.reading->at, m.reading); };
    return key(a) < key(b);
}

std::vector<Measure> without_replaced(const std::vector<Measure>& values) {
    std::vector<Measure> kept;
    kept.reserve(values.size());
    for (std::size_t from = 0; from < values.size();) {
        std::size_t to = from;
        while (to < values.size() && values[to].spec == values[from].spec) ++to;
        for (std::size_t i = from; i < to; ++i) {
            bool gone = false;
            for (std::size_t j = from; j < to && !gone; ++j) gone = replaces(values[j], values[i]);
            if (!gone) kept.push_back(values[i]);
        }
        from = to;
    }
    return kept;
}

void read_values(Sitting& sitting, const TowQuestion& question) {
    const bool as_found = sitting.current && question.state == State::found;
    for (const Reading& r : sitting.job->all<Reading>()) {
        if (as_found && r.stage == Stage::after) continue;
        const ReadingSpec* spec = reading_spec(r.what);
        if (spec == nullptr) continue;
        if (r.taken != Taken::measured)
            sitting.not_taken.push_back(&r);
        else
            read_points(r, *spec, sitting.job->only<Trailer>(), question.as_of, sitting.all);
    }
    std::stable_sort(sitting.all.begin(), sitting.all.end(), taken_before);
    sitting.values = without_replaced(sitting.all);
}

void read_looks(Sitting& sitting, const TowQuestion& question) {
    const bool as_found = sitting.current && question.state == State::found;
    for (const Look& look : sitting.job->all<Look>()) {
        if (as_found && look.stage == Stage::after) continue;
        if (look.at.unix_s > question.as_of.unix_s + kDay) continue;
        if (const TradePoint* point = find_point(look.point)) sitting.looks.push_back({point->id, &look});
    }
    std::stable_sort(sitting.looks.begin(), sitting.looks.end(),
                     [](const LookAt& a, const LookAt& b) { return a.point < b.point; });
}

template <class R>
void last_of(const Job& job, Instant& last) {
    for (const R& r : job.all<R>()) last = std::max(last, r.at);
}

Instant last_record(const Job& job, const Instant& opened) {
    if (const SignOff* signed_off = job.only<SignOff>()) return std::max(opened, signed_off->at);
    Instant last = opened;
    last_of<Finding>(job, last);
    last_of<Reading>(job, last);
    last_of<Torque>(job, last);
    last_of<Level>(job, last);
    last_of<StepMark>(job, last);
    last_of<Look>(job, last);
    last_of<Sidewall>(job, last);
    last_of<Chamber>(job, last);
    last_of<BreakawayTest>(job, last);
    last_of<Event>(job, last);
    return last;
}

// Older packets say no role: a visit that holds nothing but what can be seen from outside is an owner's look.
bool looked_from_outside(const Job& job) {
    const auto& looks = job.all<Look>();
    const auto& readings = job.all<Reading>();
    const auto& marks = job.all<StepMark>();
    if (std::any_of(looks.begin(), looks.end(), [](const Look& l) { return l.reach != Reach::outside; })) return false;
    if (std::any_of(readings.begin(), readings.end(), [](const Reading& r) {
            const TradePoint* point = point_of_reading(r.what);
            return point != nullptr && point->reach != Reach::outside && r.taken == Taken::measured;
        }))
        return false;
    if (!job.all<Torque>().empty() || !job.all<BearingSetting>().empty()) return false;
    const auto owners = [](const StepMark& m) { return m.procedure.starts_with("owner"); };
    return !looks.empty() || std::any_of(marks.begin(), marks.end(), owners);
}

Sitting sitting_of(const Job& job, bool accepted, bool current, const TowQuestion& question) {
    Sitting s;
    s.job = &job;
    s.accepted = accepted;
    s.current = current;
    const Visit* visit = job.only<Visit>();
    s.opened = visit != nullptr ? visit->opened : question.as_of;
    const VisitRole role = visit != nullptr ? visit->role : VisitRole::not_said;
    s.owner = role == VisitRole::owner || (role == VisitRole::not_said && looked_from_outside(job));
    s.last = last_record(job, s.opened);
    read_values(s, question);
    read_looks(s, question);
    return s;
}

// Meters from each visit to the newest at which the distance is known.
void measure_distances(std::vector<Sitting>& sittings) {
    const auto meters = [](const Sitting& s, std::string_view name) -> std::optional<double> {
        for (const Measure* m : measures_anywhere(s, name))
            if (!m->fault) return m->si;
        return std::nullopt;
    };
    for (Sitting& s : sittings) {
        const auto start = meters(s, what::run_total);
        double run = 0;
        bool known = true;
        for (std::size_t i = s.index + 1; i < sittings.size(); ++i) {
            const auto counter = meters(sittings[i], what::run_total), since = meters(sittings[i], what::run_since);
            if (start && counter)
                run = std::max(run, *counter - *start), known = true;
            else if (since && known)
                run += *since;
            else if (sittings[i].accepted)  // what is not accepted may add to the way, and hides none of it
                known = false;
            if (known || run > 0) s.run_m = std::max(s.run_m, run);
        }
    }
}

void gather_work(Scene& scene) {
    if (scene.trailer == nullptr) return;
    for (const Sitting& s : scene.sittings) {
        if (s.current && scene.question->state == State::found) continue;
        for (std::size_t w = 0; w < names(Work{}).size(); ++w) {
            const auto work = static_cast<Work>(w);
            if (work == Work::hydraulics_opened) {
                if (const auto at = work_done(*s.job, work, Place::at(Station::trailer)))
                    scene.works.push_back({work, s.index, *at, Place::at(Station::trailer)});
                continue;
            }
            for (const Place& corner : scene.trailer->corners())
                if (const auto at = work_done(*s.job, work, corner))
                    scene.works.push_back({work, s.index, *at, corner});
        }
    }
}

}  // namespace

const Sitting& Scene::current() const {
    return *std::find_if(sittings.begin(), sittings.end(), [](const Sitting& s) { return s.current; });
}

Place corner_only(const Place& place) {
    return place.is_corner() ? Place::corner(place.axle, place.side) : place;
}

namespace {
Measures named(const std::vector<Measure>& values, std::string_view name) {
    Measures out;
    const ReadingSpec* spec = reading_spec(name);
    auto it = std::lower_bound(values.begin(), values.end(), spec,
                               [](const Measure& m, const ReadingSpec* s) { return m.spec < s; });
    for (; it != values.end() && it->spec == spec; ++it) out.push_back(&*it);
    return out;
}

// At a wheel of duals only what was taken at that wheel; at a corner, what was taken at either wheel too.
Measures at(Measures list, const Place& place) {
    std::erase_if(list, [&](const Measure* m) {
        if (m->axle != 0) return true;
        return place.wheel == Wheel::only ? corner_only(m->place) != place : m->place != place;
    });
    return list;
}
}  // namespace

Measures measures_anywhere(const Sitting& sitting, std::string_view name) {
    return named(sitting.values, name);
}

Measures measures(const Sitting& sitting, std::string_view name, const Place& place) {
    return at(named(sitting.values, name), place);
}

Measures all_measures(const Sitting& sitting, std::string_view name, const Place& place) {
    return at(named(sitting.all, name), place);
}

Scene scene_of(const TowQuestion& question) {
    Scene scene;
    scene.question = &question;
    scene.job = &question.job;
    scene.trailer = question.job.only<Trailer>();
    scene.visit = question.job.only<Visit>();
    scene.layout = layout_of(question.job);
    scene.sittings.push_back(sitting_of(question.job, question.accepted, true, question));
    for (const EarlierVisit& other : question.earlier)
        if (other.job != nullptr && other.job != &question.job && other.job->id() != question.job.id())
            scene.sittings.push_back(sitting_of(*other.job, other.accepted, false, question));
    std::stable_sort(scene.sittings.begin(), scene.sittings.end(), [](const Sitting& a, const Sitting& b) {
        return std::pair(a.opened, a.current) < std::pair(b.opened, b.current);
    });
    scene.limits.assign(question.limits.begin(), question.limits.end());
    for (const MakerLimit& m : question.job.all<MakerLimit>()) scene.limits.push_back(limit_of(m));
    for (std::size_t i = 0; i < scene.sittings.size(); ++i) {
        Sitting& s = scene.sittings[i];
        s.index = i;
        scene.own_limits.emplace_back();
        if (!s.current)
            for (const MakerLimit& m : s.job->all<MakerLimit>()) scene.own_limits.back().push_back(limit_of(m));
    }
    measure_distances(scene.sittings);
    gather_work(scene);
    return scene;
}

}  // namespace cotter::answering
