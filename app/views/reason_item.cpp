// See reason_item.h.
#include "app/views/reason_item.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/chrome.h"
#include "app/views/plate_fields.h"

namespace cotter {

namespace {

// Pages of places know corners and stations; what concerns an axle is shown at its left corner.
Place page_place(const Place& place, int axle) {
    return axle > 0 ? Place::corner(axle, Side::left) : place;
}

}  // namespace

std::string judged_words(const Place& place, int axle, SideWords words) {
    return axle > 0 ? fmt::format("Axle {}", axle) : place_words(place, words);
}

ReasonItem reason_item(const Ground& g, SideWords words) {
    ReasonItem item;
    const Place place = page_place(g.place, g.axle);
    item.key = fmt::format("{} {} {} {} {}", place.text(), g.axle, g.subject, g.limit_id, g.record.text());
    item.grade = g.grade;
    item.place = judged_words(g.place, g.axle, words);
    item.subject = upper_first(g.subject);
    item.says = upper_first(g.says);
    item.reading = g.reading;
    item.limit = g.limit;
    item.source = g.source;
    item.steps = g.steps;
    item.todo = g.todo;
    item.practice = !g.limit_id.empty() && g.mark == LimitMark::c;
    const bool makers = !g.limit_id.empty() && Uuid::parse(g.limit_id).has_value();
    if (item.practice || makers) item.figure = Route{Screen::figure, place, g.limit_id};
    item.record = {Screen::corner, place, {}};
    return item;
}

UnknownItem unknown_item(const Unknown& u, SideWords words) {
    UnknownItem item;
    const Place place = page_place(u.place, u.axle);
    item.key = fmt::format("{} {} {} {} {}", place.text(), u.axle, u.component, u.subject, u.because);
    item.place = judged_words(u.place, u.axle, words);
    item.subject = upper_first(u.subject);
    item.because = u.because;
    item.todo = u.todo;
    item.essential = u.essential;
    if (u.lacks == Lack::makers_figure) item.figure = Route{Screen::figure, place, u.subject};
    if (u.lacks == Lack::placard) item.plate = Route{Screen::plate, {}, plate_field(u.subject, place.axle)};
    item.record = {Screen::corner, place, {}};
    return item;
}

std::vector<ReasonItem> reasons_of(const Judgement& node, SideWords words) {
    std::vector<ReasonItem> out;
    walk(node, [&](const Judgement& n) {
        for (const Ground& g : n.reasons) out.push_back(reason_item(g, words));
    });
    std::stable_sort(out.begin(), out.end(),
                     [](const ReasonItem& a, const ReasonItem& b) { return a.grade > b.grade; });
    return out;
}

std::vector<UnknownItem> unknowns_of(const Judgement& node, SideWords words) {
    std::vector<UnknownItem> out;
    walk(node, [&](const Judgement& n) {
        for (const Unknown& u : n.unknowns) out.push_back(unknown_item(u, words));
    });
    std::stable_sort(out.begin(), out.end(),
                     [](const UnknownItem& a, const UnknownItem& b) { return a.essential > b.essential; });
    return out;
}

}  // namespace cotter
