// See judgement_view.h.
#include "app/views/judgement_view.h"

#include <algorithm>

#include <fmt/format.h>

namespace cotter {

namespace {

// "axle 2" -> 2; 0: the place itself is meant.
int axle_of(const Route& route) {
    return route.record.starts_with("axle ") ? route.record[5] - '0' : 0;
}

// What the route means, without the places that have pages of their own.
Judgement node_of(const Judgement& tree, const Route& route) {
    if (const int axle = axle_of(route); axle > 0) {
        for (const Judgement& part : tree.parts)
            if (part.axle == axle) {
                Judgement out = part;
                std::erase_if(out.parts, [](const Judgement& p) { return p.axle == 0; });
                return out;
            }
        return {};
    }
    const Judgement* found = at_place(tree, route.place);
    if (found == nullptr) return {};
    Judgement out = *found;
    if (found == &tree)
        std::erase_if(out.parts, [&](const Judgement& p) { return p.axle > 0 || !(p.place == tree.place); });
    return out;
}

std::string grade_words(const std::optional<Grade>& grade) {
    return grade ? std::string(name_of(*grade)) : std::string("cannot tell");
}

// Component by component, where the state now is another than the one found.
std::vector<std::string> changed(const Judgement& found, const Judgement& now) {
    std::vector<std::string> out;
    for (const Judgement& part : found.parts) {
        const auto same =
            std::find_if(now.parts.begin(), now.parts.end(), [&](const Judgement& p) { return p.name == part.name; });
        const std::optional<Grade> grade = same == now.parts.end() ? std::nullopt : same->grade;
        if (part.grade != grade)
            out.push_back(fmt::format("{}: {} as found, {} now", upper_first(part.name), grade_words(part.grade),
                                      grade_words(grade)));
    }
    return out;
}

}  // namespace

JudgementView judgement_view(const Session& session) {
    const Route& route = session.route();
    const SideWords words = session.settings().sides;
    const int axle = axle_of(route);
    const Judgement now = node_of(session.summary().now, route);
    JudgementView view;
    view.chrome = chrome_of(session, judged_words(route.place, axle, words), "judged");
    view.key = route.place.text() + route.record;
    view.grade = now.grade;
    view.word = upper_first(grade_words(now.grade));
    view.reasons = reasons_of(now, words);
    view.unknowns = unknowns_of(now, words);
    view.changed = changed(node_of(session.summary().found, route), now);
    view.record = {Screen::corner, axle > 0 ? Place::corner(axle, Side::left) : route.place, {}};
    return view;
}

}  // namespace cotter
