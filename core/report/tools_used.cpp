// The limits that the judgements lean on, the tools that the values came from, and the earlier visits looked at.
#include <map>
#include <set>

#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"
#include "core/work/wrench.h"

namespace cotter {

namespace {

std::string firmness(LimitMark mark) {
    switch (mark) {
        case LimitMark::a:
            return "law, stamped or the maker's";
        case LimitMark::b:
            return "physics";
        case LimitMark::c:
            break;
    }
    return "practice: confirm with the maker";
}

void draw_limits(Writing& w) {
    if (!w.judged) return;
    std::set<std::pair<std::string, std::string>> seen;
    Table table({{"Judged", 1.4}, {"Limit", 1.5}, {"Source", 2.8}, {"How firm", 1.3}});
    for (const Judgement* tree : {&w.judged->found, &w.judged->now})
        walk(*tree, [&](const Judgement& node) {
            for (const Ground& r : node.reasons)
                if (!r.limit.empty() && seen.insert({r.subject + r.limit, r.source}).second)
                    table.add({capital(r.subject), r.limit, r.source, firmness(r.mark)});
        });
    table.draw(w.sheet, "Limits");
}

struct Tool {
    std::string facts;  // resolution or calibration
    std::set<std::string> used_for;
};

void draw_tools(Writing& w) {
    std::map<std::pair<std::string, std::string>, Tool> tools;  // by name and facts
    for (const Reading& r : w.job.all<Reading>())
        if (!r.instrument.empty() && r.taken == Taken::measured) {
            const std::string facts = r.resolution ? "reads to " + Amount{*r.resolution, r.unit}.text() : "";
            tools[{r.instrument, facts}].used_for.insert(r.what);
        }
    for (const Torque& recorded : w.job.all<Torque>())
        if (recorded.taken == Taken::measured && !recorded.passes.empty()) {
            const Torque t = in_present_form(recorded);
            const std::string facts =
                t.wrench_calibrated ? "calibrated " + t.wrench_calibrated->text() : "calibration date not recorded";
            tools[{t.wrench.empty() ? "wrench not recorded" : "wrench " + t.wrench, facts}].used_for.insert(t.joint);
        }
    Table table({{"Tool", 1.8}, {"Resolution, calibration", 1.6}, {"Used for", 3.4}});
    for (const auto& [key, tool] : tools) {
        std::string uses;
        for (const std::string& use : tool.used_for) uses += (uses.empty() ? "" : ", ") + use;
        table.add({Cell::bold(key.first), key.second, uses});
    }
    table.draw(w.sheet, "Tools");
}

void draw_earlier(Writing& w) {
    Table table({{"Visit", 1}, {"Technician", 1.6}, {"Job", 2.6}});
    for (const Job& visit : w.in.earlier)
        table.add(
            {visit.only<Visit>()->opened.local_date().text(), visit.only<Visit>()->technician, visit.id().text()});
    if (table.empty()) return;
    table.draw(w.sheet, "Earlier visits that the wear was reckoned from");
    w.sheet.paragraph("Their records are in packets of their own, not in this one.", kSmall);
}

}  // namespace

void draw_limits_and_tools(Writing& w) {
    if (!w.judged && w.job.all<Reading>().empty() && w.job.all<Torque>().empty()) return;
    w.sheet.part("Limits and tools used");
    draw_limits(w);
    draw_tools(w);
    draw_earlier(w);
}

}  // namespace cotter
