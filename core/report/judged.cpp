// What the readings and findings say: 'may it be towed?' on the cover, and the reasons of each place with their
// sources.
#include <algorithm>

#include <fmt/format.h>

#include "core/judge/towing_sign.h"
#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"

namespace cotter {

namespace {

std::string lines(std::initializer_list<std::string> parts) {
    std::string out;
    for (const std::string& part : parts)
        if (!part.empty()) out += (out.empty() ? "" : "\n") + part;
    return out;
}

std::string arithmetic(const Ground& r) {
    std::string out;
    for (const std::string& step : r.steps) out += (out.empty() ? "" : "\n") + step;
    return out;
}

// "Axle 1: pad imbalance" where an axle as a whole is meant.
std::string title(int axle, const std::string& subject) {
    return axle == 0 ? capital(subject) : fmt::format("Axle {}: {}", axle, subject);
}

void add_reasons(Table& table, const Judgement& node) {
    for (const Ground& r : node.reasons) {
        if (r.limit.empty() && r.steps.empty()) continue;  // a person's finding: it has its own block
        table.add({Cell::bold(title(r.axle, r.subject)), lines({r.says, arithmetic(r), r.todo}), Cell::graded(r.grade),
                   r.source});
    }
}

void add_unknowns(std::vector<Labelled>& rows, const Judgement& node) {
    for (const Unknown& u : node.unknowns)
        rows.push_back({title(u.axle, u.subject), joined({"cannot tell: " + u.because, u.todo}, "; ")});
}

// The reasons behind the answer, as many as fit on a first page.
void draw_first_reasons(Writing& w, std::size_t most) {
    Table table({{"Now", 1.3}, {"Where", 1.3}, {"Why", 2.6}, {"Whose limit", 2}});
    const auto& first = w.judged->first;
    if (first.size() < 2) return;  // the answer says it already, with its source
    for (std::size_t i = 0; i < std::min(first.size(), most); ++i) {
        const Ground& r = first[i];
        const std::string where = r.axle == 0 ? place_name(r.place) : fmt::format("Axle {}", r.axle);
        table.add({Cell::graded(r.grade), where, joined({capital(r.subject), r.says}, ": "), r.source});
    }
    table.draw(w.sheet);
    if (first.size() > most)
        w.sheet.paragraph(fmt::format("And {} more, on the pages of their places.", first.size() - most), kSmall);
}

}  // namespace

void draw_towing(Writing& w, std::size_t most_reasons) {
    if (!w.judged) return;
    w.sheet.heading("May it be towed?");
    w.sheet.framed(w.judged->answer, kStrong, sign_of(w.judged->towing));
    draw_first_reasons(w, most_reasons);
    w.sheet.paragraph(w.judged->caveat, kSmall);
    std::size_t essential = 0;
    for (const Unknown& u : w.judged->unknowns) essential += u.essential ? 1 : 0;
    if (!w.judged->unknowns.empty())
        w.sheet.paragraph(
            fmt::format("Not known: {}, {} of them essential. What was not measured never counts as good; "
                        "each place below says what is missing.",
                        count_text(w.judged->unknowns.size(), "thing"), essential),
            kSmall);
}

void draw_judged_at(Writing& w, const Place& place) {
    if (!w.judged) return;
    Table table({{"Judged", 1.2}, {"Reading and arithmetic", 3}, {"Now", 1.55}, {"Source of the limit", 2.2}});
    std::vector<Labelled> unknown;
    const auto add = [&](const Judgement& node) {
        add_reasons(table, node);
        add_unknowns(unknown, node);
    };
    const Judgement& tree = w.judged->now;
    if (place == tree.place) {  // the trailer's own parts, and its axles', but not their corners
        for (const Judgement& part : tree.parts) {
            if (part.place == tree.place && part.axle == 0) add(part);
            if (part.axle != 0)
                for (const Judgement& leaf : part.parts)
                    if (leaf.place == tree.place) add(leaf);
        }
    } else if (const Judgement* node = at_place(tree, place)) {
        walk(*node, add);
    }
    table.draw(w.sheet, "Readings against limits, as it is now");
    if (unknown.empty()) return;
    w.sheet.heading("Not known");
    w.sheet.labelled(unknown, 150);
}

}  // namespace cotter
