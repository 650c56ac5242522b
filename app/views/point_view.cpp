// See point_view.h.
#include "app/views/point_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/judged_reading.h"
#include "app/views/place_text.h"
#include "app/views/plan_view.h"
#include "app/views/plate_fields.h"
#include "core/judge/fact_english.h"
#include "core/trade/reading_spec.h"

namespace cotter {

namespace {

std::string where_of(const TradePoint& point, const Place& place, SideWords words) {
    return point.spot == Spot::axle ? fmt::format("Axle {}", place.axle) : place_words(place, words);
}

// What a point concerns that is at the place shown: its wheels and its axle are a corner's too.
bool belongs(const PointAnswer& answer, const Place& place) {
    if (!answer.point) return at_place(answer.place, place);
    const TradePoint& p = point(*answer.point);
    if (p.spot == Spot::axle && place.is_corner()) return answer.place.axle == place.axle;
    return at_place(answer.place, place);
}

PointRow row_of(const Session& session, const PointAnswer& answer) {
    const SideWords words = session.settings().sides;
    PointRow row;
    row.place = answer.place;
    row.essential = answer.essential;
    if (!answer.point) row.record = answer.record.text();
    if (answer.known) row.grade = answer.grade;
    row.says = upper_first(in_words(english(answer.fact), words));
    if (!answer.point) {
        row.where = place_words(answer.place, words);
        row.title = row.says;
        row.route = {Screen::corner, answer.place, {}};
        return row;
    }
    const TradePoint& p = point(*answer.point);
    row.point = p.id;
    row.title = p.title;
    row.where = where_of(p, answer.place, words);
    row.route = {Screen::point, answer.place, std::string(name_of(p.id))};
    return row;
}

const PointAnswer* answer_of(const TowAnswer& all, PointId id, const Place& place) {
    for (const PointAnswer& a : all.points)
        if (a.point == id && a.place == place) return &a;
    return nullptr;
}

std::string law_words(const Law& law) {
    if (law.text.empty()) return {};
    switch (law.evidence) {
        case Evidence::read:
            return std::string(law.text);
        case Evidence::partly:
            return fmt::format("{} (section seen in part)", law.text);
        case Evidence::memory:
            break;
    }
    return fmt::format("{} (wording not verified)", law.text);
}

const Look* look_there(const Job& job, const TradePoint& point, const Place& place, Stage stage) {
    const Look* found = nullptr;
    for (const Look& look : job.all<Look>())
        if (look.point == name_of(point.id) && look.place == place && look.stage == stage &&
            (found == nullptr || found->at <= look.at))
            found = &look;
    return found;
}

std::string words_of(const Look& look, const TradePoint& point) {
    std::string what(name_of(look.result));
    for (const LookItem& item : look.items) {
        if (item.result == LookResult::good && point.list != ListKind::choice) continue;
        const LookEntry* entry = find_entry(point, item.item);
        what += fmt::format("{}{}", what == name_of(look.result) ? ": " : ", ", entry ? entry->text : item.item);
    }
    return fmt::format("{}. {}, {}", upper_first(what), look.by, clock_words(look.at));
}

void add_looks(const Session& session, PointView& view) {
    const Job& job = session.job();
    view.ask = view.point->ask;
    const Look* there = look_there(job, *view.point, view.place, view.stage);
    if (there != nullptr) {
        view.look = *there;
        view.look_words = words_of(*there, *view.point);
    }
    for (const LookEntry* entry : entries_at(*view.point, layout_of(job), view.place)) {
        EntryChoice choice{std::string(entry->id), std::string(entry->text), entry->grade, std::nullopt};
        if (there != nullptr)
            for (const LookItem& item : there->items)
                if (item.item == entry->id) choice.answered = item.result;
        view.entries.push_back(std::move(choice));
    }
}

// Where a point's other records are made.
void add_leads(PointView& view) {
    const TradePoint& p = *view.point;
    const Place corner = view.place.is_corner() ? Place::corner(view.place.axle, view.place.side) : view.place;
    if (p.torque) view.leads.push_back({"Tighten and record", "", {Screen::torque, corner, {}}});
    if (p.level) view.leads.push_back({"Fluid level", "", {Screen::level, view.place, {}}});
    if (p.bearing) view.leads.push_back({"Set the bearing", "", {Screen::bearing, corner, {}}});
    if (p.maker && !p.readings.empty())
        view.leads.push_back({"The maker's figure", "", {Screen::figure, corner, std::string(p.readings.front())}});
    if (p.timed) view.leads.push_back({"The test by the clock", "", {Screen::breakaway, {}, {}}});
    if (!p.plate) return;
    if (p.id == PointId::air_kind)
        view.leads.push_back({"The chamber's tag", "", {Screen::chamber, corner, {}}});
    else if (p.spot == Spot::wheel)
        view.leads.push_back({"The tire's sidewall", "", {Screen::sidewall, view.place, {}}});
    else
        view.leads.push_back(
            {"Plate and use", "", {Screen::plate, {}, plate_field(p.title, std::max(1, view.place.axle))}});
}

bool has_shot(const Job& job, Slot slot, const Place& place) {
    const auto& all = job.all<Shot>();
    return std::any_of(all.begin(), all.end(),
                       [&](const Shot& s) { return s.slot == slot && at_place(s.place, place); });
}

// An owner is led to nothing but what shows from outside.
bool can_answer(const Session& session, const PointAnswer& answer) {
    return !session.settings().owner || !answer.point || point(*answer.point).reach == Reach::outside;
}

template <class Keep>
std::optional<PointRow> first_open(const Session& session, Keep&& keep) {
    const TowAnswer& all = session.towing();
    for (const std::size_t i : all.open)
        if (all.points[i].point && can_answer(session, all.points[i]) && keep(all.points[i]))
            return row_of(session, all.points[i]);
    return std::nullopt;
}

// In the order of the trailer: its wheels and axles are a corner's.
std::vector<OpenPlace> open_places(const Session& session, const std::vector<PointRow>& open) {
    std::vector<OpenPlace> out;
    const auto count = [&](const Place& place, const std::string& label) {
        OpenPlace p{label, 0, {Screen::points, place, {}}};
        for (const PointRow& r : open) p.open += at_place(r.place, place) ? 1 : 0;
        if (p.open > 0) out.push_back(std::move(p));
    };
    const SideWords words = session.settings().sides;
    if (const Trailer* trailer = session.job().only<Trailer>())
        for (const Place& corner : trailer->corners())
            if (corner.wheel != Wheel::inner) {
                const Place place = Place::corner(corner.axle, corner.side);
                count(place, place_words(place, words));
            }
    for (const Station s : {Station::drawbar, Station::actuator, Station::frame, Station::lights, Station::trailer})
        count(Place::at(s), place_words(Place::at(s), words));
    return out;
}

Reach reach_of(const Session& session, const TradePoint& point) {
    if (session.settings().owner) return Reach::outside;
    return std::max(point.reach, Reach::wheel_on);
}

}  // namespace

std::vector<PointReading> point_readings(const Session& session, const TradePoint& point, const Place& place,
                                         Stage stage) {
    const Job& job = session.job();
    std::vector<PointReading> out;
    for (const std::string_view what : point.readings) {
        const ReadingSpec* spec = reading_spec(what);
        if (spec == nullptr || !is_offered(*spec)) continue;
        PointReading r;
        r.label = reading_title(what, place);
        r.draft = begin_reading(job, what, place, stage);
        const Reading* there = find_reading(job, what, place, stage);
        r.there = there != nullptr;
        r.value = there == nullptr ? "not yet" : reading_words(*there);
        if (there != nullptr) r.judged = judged_reading(session, *there);
        out.push_back(std::move(r));
    }
    return out;
}

PointsView points_view(const Session& session) {
    const TowAnswer& all = session.towing();
    const Route& route = session.route();
    PointsView view;
    view.whole = route.record == "all";
    const Job& job = session.job();
    view.chrome =
        chrome_of(session, view.whole ? "What is looked at" : place_words(route.place, session.settings().sides),
                  trailer_words(job));
    const auto shown = [&](const PointAnswer& a) { return view.whole || belongs(a, route.place); };
    std::size_t looked = 0, of = 0;
    for (const PointAnswer& a : all.points) {
        if (!shown(a)) continue;
        PointRow row = row_of(session, a);
        ++of;
        looked += a.known ? 1 : 0;
        if (!a.known && a.essential && !can_answer(session, a)) {
            view.mechanic.push_back(std::move(row));
            continue;
        }
        if (!a.known) {
            (a.essential ? view.open : view.wanted).push_back(std::move(row));
            continue;
        }
        if (a.grade >= Grade::repair)
            view.against.push_back(std::move(row));
        else
            (a.grade == Grade::watch ? view.watch : view.good).push_back(std::move(row));
    }
    std::stable_sort(view.against.begin(), view.against.end(),
                     [](const PointRow& a, const PointRow& b) { return a.grade > b.grade; });
    if (view.whole) {  // the engine's own order: the most dangerous first
        view.open.clear();
        for (const std::size_t i : all.open)
            if (can_answer(session, all.points[i])) view.open.push_back(row_of(session, all.points[i]));
        looked = all.looked_at;
        of = all.of;
    }
    if (view.whole) view.places = open_places(session, view.open);
    view.tally = fmt::format("{} of {} points looked at", looked, of);
    return view;
}

PointView point_view(const Session& session, Stage stage) {
    const Job& job = session.job();
    const Route& route = session.route();
    const SideWords words = session.settings().sides;
    PointView view;
    view.point = find_point(route.record);
    view.place = route.place;
    view.stage = stage;
    view.drafts = session.drafts();
    if (view.point == nullptr) {
        view.chrome = chrome_of(session, "What is looked at", trailer_words(job));
        return view;
    }
    view.chrome = chrome_of(session, std::string(view.point->title), where_of(*view.point, view.place, words));
    const TowAnswer& all = session.towing();
    if (const PointAnswer* answer = answer_of(all, view.point->id, view.place)) {
        view.says = upper_first(in_words(english(answer->fact), words));
        if (answer->known) view.grade = answer->grade;
    } else {
        view.says = "It does not apply to this trailer.";
    }
    view.law = law_words(law_at(*view.point, layout_of(job)));
    view.reach = reach_of(session, *view.point);
    add_looks(session, view);
    view.readings = point_readings(session, *view.point, view.place, view.stage);
    add_leads(view);
    for (const Slot slot : view.point->slots)
        if (!has_shot(job, slot, view.place)) view.slots.push_back(slot);
    view.next = next_open(session, view.place);
    if (view.next && view.next->point == view.point->id && view.next->place == view.place)
        view.next = first_open(
            session, [&](const PointAnswer& a) { return !(a.point == view.point->id && a.place == view.place); });
    const auto& reading = view.drafts.reading;
    if (reading && reading->place == view.place) view.entry = judged_entry(session, *reading);
    return view;
}

std::optional<PointRow> next_open(const Session& session, const Place& place) {
    auto here = first_open(session, [&](const PointAnswer& a) { return belongs(a, place); });
    return here ? here : first_open(session, [](const PointAnswer&) { return true; });
}

Look look_of(const PointView& view, LookResult result, const std::vector<std::string>& wrong) {
    Look look;
    look.point = name_of(view.point->id);
    look.place = view.place;
    look.stage = view.stage;
    look.result = result;
    look.reach = view.reach;
    const auto is_wrong = [&](const std::string& id) {
        return std::find(wrong.begin(), wrong.end(), id) != wrong.end();
    };
    for (const EntryChoice& entry : view.entries) {
        if (view.point->list == ListKind::ticks && result != LookResult::cannot_tell)
            look.items.push_back({entry.id, is_wrong(entry.id) ? LookResult::bad : LookResult::good});
        else if (is_wrong(entry.id))
            look.items.push_back({entry.id, entry.grade == Grade::serviceable ? LookResult::good : LookResult::bad});
    }
    return look;
}

std::optional<FindingDraft> finding_of(const PointView& view, const Look& look) {
    if (look.result != LookResult::bad) return std::nullopt;
    FindingDraft draft;
    draft.place = view.place;
    draft.component = view.point->title;
    Grade worst = Grade::watch;
    for (const EntryChoice& entry : view.entries)
        for (const LookItem& item : look.items)
            if (item.item == entry.id && item.result == LookResult::bad) {
                draft.defect += (draft.defect.empty() ? "" : "; ") + entry.text;
                worst = std::max(worst, entry.grade);
            }
    if (draft.defect.empty()) draft.defect = "something is wrong";
    draft.grade = worst;
    draft.todo = worst == Grade::do_not_tow ? "do not tow until it is repaired" : "repair or look closer";
    return draft;
}

}  // namespace cotter
