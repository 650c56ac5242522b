// See figure_view.h.
#include "app/views/figure_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/plan_view.h"
#include "core/judge/judge_words.h"
#include "core/trade/reading_spec.h"

namespace cotter {

namespace {

constexpr std::size_t kMostShots = 12, kMostDocuments = 4;

std::string model_of(const Job& job, int axle) {
    const Trailer* trailer = job.only<Trailer>();
    const auto n = static_cast<std::size_t>(axle - 1);
    return trailer != nullptr && axle > 0 && n < trailer->axles.size() ? trailer->axles[n].model : std::string{};
}

const Limit* limit_named(const Session& session, const std::string& id) {
    for (const Limit& l : session.judge().reg().limits)
        if (l.id == id) return &l;
    return nullptr;
}

// What the route asks for, before anything is keyed in.
MakerLimit begun(const Session& session, const Route& route) {
    if (const auto id = Uuid::parse(route.record))
        if (const MakerLimit* there = session.job().find(Id<MakerLimit>{*id})) return *there;
    MakerLimit figure;
    figure.what = route.record;
    const ReadingSpec* spec = reading_spec(figure.what);
    figure.value.unit = spec != nullptr && !spec->units.empty() ? std::string(spec->units[0].ucum) : "mm";
    if (const Limit* limit = limit_named(session, route.record)) {
        figure.what = limit->what;
        figure.bound = limit->bound;
        figure.value.unit = limit->value.unit;
        figure.where = limit->measured;
    }
    figure.axle_model = model_of(session.job(), route.place.axle);
    if (figure.axle_model.empty()) figure.axle = route.place.axle;
    return figure;
}

KeypadSpec keypad_of(const MakerLimit& figure) {
    KeypadSpec spec;
    spec.title = upper_first(figure.what);
    spec.units = {figure.value.unit};
    const auto offer = [&](std::string_view ucum) {
        if (std::find(spec.units.begin(), spec.units.end(), ucum) == spec.units.end()) spec.units.emplace_back(ucum);
    };
    const Unit* unit = find_unit(figure.value.unit);
    const bool length = unit != nullptr && unit->quantity == Quantity::length;
    if (const ReadingSpec* reading = reading_spec(figure.what))
        for (const UnitStep& u : reading->units) offer(u.ucum);
    else if (length)
        for (const std::string_view ucum : {"mm", "[in_i]"}) offer(ucum);
    spec.fractions = length;
    return spec;
}

std::string source_words(const MakerLimit& figure) {
    const std::string text = figure.document.empty() ? words::on_the_casting() : figure.document;
    return figure.page.empty() ? text : fmt::format("{}, page {}", text, figure.page);
}

std::vector<FigureOffer> offers_of(const Session& session, const MakerLimit& wanted) {
    std::vector<FigureOffer> out;
    if (!wanted.id.nil()) return out;
    for (MakerLimit figure : session.judge().remembered(session.job(), wanted.axle_model)) {
        if (figure.what != wanted.what) continue;
        figure.id = {};
        figure.shot.reset();  // it belongs to the other job
        out.push_back({figure, limit_text(limit_of(figure)), source_words(figure)});
    }
    return out;
}

std::vector<std::string> documents_of(const Session& session, const MakerLimit& wanted) {
    std::vector<std::string> out;
    const auto add = [&](const MakerLimit& figure) {
        const bool known = std::find(out.begin(), out.end(), figure.document) != out.end();
        if (!figure.document.empty() && !known && out.size() < kMostDocuments) out.push_back(figure.document);
    };
    for (const MakerLimit& figure : session.job().all<MakerLimit>()) add(figure);
    for (const MakerLimit& figure : session.judge().remembered(session.job(), wanted.axle_model)) add(figure);
    return out;
}

std::vector<FigureShot> shots_of(const Job& job, const Place& place) {
    std::vector<FigureShot> out;
    for (const Shot& shot : job.all<Shot>())
        if (at_place(shot.place, place) && out.size() < kMostShots)
            out.push_back({shot.id, shot.photo.sha256, upper_first(name_of(shot.slot))});
    return out;
}

std::string missing_of(const MakerLimit& figure) {
    if (figure.value.number.value() == 0) return "key in the figure";
    if (figure.origin == FigureOrigin::stamped) return figure.shot ? "" : "choose the photo of the casting";
    if (figure.document.empty()) return "name the document";
    return figure.page.empty() ? "give its page" : "";
}

}  // namespace

FigureView figure_view(const Session& session) {
    const Route& route = session.route();
    const Job& job = session.job();
    FigureView view;
    const MakerLimit start = begun(session, route);
    view.drafts = session.drafts();
    view.figure = start;
    view.model = model_of(job, route.place.axle);
    if (const auto& draft = view.drafts.figure) {
        const bool same = draft->what == start.what && draft->id == start.id;
        const bool here = draft->axle_model.empty() ? draft->axle == 0 || draft->axle == route.place.axle
                                                    : draft->axle_model == view.model;
        if (same && here) view.figure = *draft;
    }
    view.chrome = chrome_of(session, "The maker's figure", upper_first(start.what));
    view.key = route.place.text() + route.record;
    view.there = !start.id.nil();
    if (view.figure.value.number.value() != 0)
        view.value = fmt::format("{} {}", name_of(view.figure.bound), view.figure.value.text());
    if (const Limit* limit = limit_named(session, route.record))
        view.practice = fmt::format("{}: {}", limit_text(*limit), source_text(*limit));
    view.for_whom = route.place.is_corner() ? fmt::format("Axle {} of this trailer", route.place.axle)
                                            : std::string("This trailer");
    view.axle = route.place.axle;
    view.keypad = keypad_of(start);
    view.offers = offers_of(session, start);
    view.documents = documents_of(session, start);
    view.shots = shots_of(job, route.place);
    view.photos = {Screen::intake, route.place, {}};
    view.missing = missing_of(view.figure);
    return view;
}

}  // namespace cotter
