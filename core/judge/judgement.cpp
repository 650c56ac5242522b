// The tree: trailer, its axles and stations, their corners, their components.
#include "core/judge/judgement.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/judge/judge_words.h"

namespace cotter {

namespace {

Judgement& part_named(Judgement& node, const std::string& name, const Place& place, int axle) {
    for (Judgement& part : node.parts)
        if (part.name == name) return part;
    Judgement part;
    part.name = name;
    part.place = place;
    part.axle = axle;
    node.parts.push_back(std::move(part));
    return node.parts.back();
}

Judgement& corner_node(Judgement& tree, const Place& place) {
    Judgement& axle = part_named(tree, fmt::format("axle {}", place.axle), tree.place, place.axle);
    return part_named(axle, words::place(Place::corner(place.axle, place.side)), Place::corner(place.axle, place.side),
                      0);
}

// Where something hangs: on a component of its corner, station, axle or the trailer.
Judgement& leaf_of(Judgement& tree, const Place& place, int axle, const std::string& component) {
    Judgement* node = &tree;
    if (axle > 0)
        node = &part_named(tree, fmt::format("axle {}", axle), tree.place, axle);
    else if (place.is_corner())
        node = &corner_node(tree, place);
    else if (place.station != Station::trailer)
        node = &part_named(tree, words::place(place), place, 0);
    return part_named(*node, component, node->place, node->axle);
}

void settle(Judgement& node) {
    std::stable_sort(node.reasons.begin(), node.reasons.end(),
                     [](const Ground& a, const Ground& b) { return a.grade > b.grade; });
    std::stable_sort(node.unknowns.begin(), node.unknowns.end(),
                     [](const Unknown& a, const Unknown& b) { return a.essential > b.essential; });
    for (const Ground& r : node.reasons) node.grade = std::max(node.grade.value_or(r.grade), r.grade);
    for (Judgement& part : node.parts) {
        settle(part);
        if (part.grade) node.grade = std::max(node.grade.value_or(*part.grade), *part.grade);
    }
}

}  // namespace

std::size_t Judgement::unknown_count() const {
    std::size_t n = 0;
    walk(*this, [&](const Judgement& node) { n += node.unknowns.size(); });
    return n;
}

Judgement grow_tree(const Job& job, const std::vector<Ground>& reasons, const std::vector<Unknown>& unknowns) {
    Judgement tree;
    tree.name = words::place(Place::at(Station::trailer));
    tree.place = Place::at(Station::trailer);
    if (const Trailer* trailer = job.only<Trailer>())
        for (const Place& corner : trailer->corners())
            (void)corner_node(tree, corner);  // in their order, even when empty
    for (const Ground& r : reasons) leaf_of(tree, r.place, r.axle, r.component).reasons.push_back(r);
    for (const Unknown& u : unknowns) leaf_of(tree, u.place, u.axle, u.component).unknowns.push_back(u);
    settle(tree);
    return tree;
}

}  // namespace cotter
