// The work log: what was done step by step, what was skipped without proof and why, cautions read, and second looks at
// torques, bearings and levels. Only for jobs whose work was led by procedures.
#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"
#include "core/work/work_log.h"

namespace cotter {

namespace {

void draw_overrides(Writing& w, const WorkLog& log) {
    Table table({{"Step", 1.6}, {"Place", 0.9}, {"Reason", 2.6}, {"When, who", 1.2}});
    for (const LoggedOverride& o : log.overrides)
        table.add({Cell::bold(o.step), place_name(o.place), o.reason, w.when_who(o.at, o.by)});
    table.draw(w.sheet, "SKIPPED, not verified");
}

void draw_runs(Writing& w, const WorkLog& log) {
    Table table({{"Procedure", 0.9}, {"Place", 0.9}, {"Steps done, in order", 4}, {"From, to, who", 1.2}});
    for (const LoggedRun& run : log.runs) {
        const std::string skipped = run.skipped.empty() ? "" : "Not needed: " + run.skipped;
        table.add({capital(run.procedure), place_name(run.place), joined({run.steps, skipped}, "\n"),
                   joined({w.time(run.first), w.time(run.last), run.by}, "\n")});
    }
    table.draw(w.sheet, "Steps");
}

void draw_checks(Writing& w, const WorkLog& log) {
    Table table({{"What", 1.6}, {"Place", 0.9}, {"Proved", 0.6}, {"Against its plan", 3}});
    for (const LoggedCheck& check : log.checks)
        table.add({capital(check.what), place_name(check.place), check.proved ? Cell("yes") : Cell::bold("no"),
                   without_codes(check.remarks)});
    table.draw(w.sheet, "Torques, bearings and levels, looked at again");
}

void draw_read_cautions(Writing& w, const WorkLog& log) {
    Table table({{"Caution", 1.6}, {"Read before", 3.6}, {"First, who", 1.2}});
    for (const LoggedCaution& c : log.cautions) table.add({c.title, without_codes(c.where), w.when_who(c.first, c.by)});
    table.draw(w.sheet, "Cautions read");
}

}  // namespace

void draw_work_log(Writing& w) {
    const WorkLog log = work_log(w.job);
    if (log.runs.empty() && log.cautions.empty()) return;
    w.sheet.part("Work log");
    w.sheet.paragraph("The work was led step by step. A step that was skipped without its proof names who decided so and why.");
    draw_overrides(w, log);
    draw_runs(w, log);
    draw_checks(w, log);
    draw_read_cautions(w, log);
}

}  // namespace cotter
