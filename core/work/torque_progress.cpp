// Matching passes to stages.
#include "core/work/torque_progress.h"

#include <algorithm>
#include <cmath>

#include "core/work/wrench.h"

namespace cotter {

namespace {

bool same_torque(const Amount& a, const Amount& b) {
    constexpr double kShare = 0.01;
    return std::abs(a.si() - b.si()) < kShare * std::max(a.si(), b.si());
}

bool full(const Torque& t, const Pass& pass) {
    return static_cast<int>(pass.tightened.size()) >= t.fasteners;
}

// The stage that `pass` counts for: the first free one at its torque, else the last one at it, as one pass more is that
// stage again.
std::optional<std::size_t> stage_of(const Pass& pass, const std::vector<StageProgress>& stages,
                                    std::vector<bool>& taken) {
    std::optional<std::size_t> again;
    for (std::size_t i = 0; i < stages.size(); ++i) {
        if (!same_torque(stages[i].stage.at_nut, at_nut(pass))) continue;
        again = i;
        if (taken[i]) continue;
        taken[i] = true;
        return i;
    }
    return again;
}

void match_stages(TorqueProgress& out, const Torque& t) {
    std::vector<bool> taken(out.stages.size());
    std::optional<std::size_t> last;
    for (const Pass& pass : t.passes) {
        if (const auto stage = stage_of(pass, out.stages, taken)) {
            last = stage;
            out.stages[*stage].done = out.stages[*stage].done || full(t, pass);
        }
    }
    if (out.running && last) {
        out.stages[*last].now = true;
        out.stages[*last].done = false;
    }
    const std::size_t next = last ? *last + 1 : 0;
    if (next < out.stages.size()) out.next_stage = next;
}

int next_nut(const std::vector<int>& order, const std::vector<int>& clicked) {
    for (const int nut : order)
        if (std::find(clicked.begin(), clicked.end(), nut) == clicked.end()) return nut;
    return 0;
}

}  // namespace

std::optional<std::size_t> TorqueProgress::stage_now() const {
    if (!running) return next_stage;
    for (std::size_t i = 0; i < stages.size(); ++i)
        if (stages[i].now) return i;
    return std::nullopt;
}

TorqueProgress torque_progress(const Torque& t) {
    TorqueProgress out;
    if (!t.passes.empty()) out.clicked = t.passes.back().tightened;
    out.running = !t.passes.empty() && !full(t, t.passes.back());
    const auto order = cross_order(t.fasteners);
    out.no_order = t.fasteners > 0 && !order;
    if (order) out.next = next_nut(*order, out.clicked);
    if (!t.target) return out;
    const auto plan = plan_torque(out.no_order ? 1 : t.fasteners, *t.target, t.target_source);
    if (!plan) return out;
    for (const TorqueStage& stage : plan->stages) out.stages.push_back({stage, false, false});
    match_stages(out, t);
    return out;
}

Result<Torque> begin_pass(Torque torque, const Amount& at_nut) {
    torque = in_present_form(std::move(torque));
    Pass pass;
    pass.setting = at_nut;
    if (torque.adapter) {
        COTTER_ASSIGN(pass.setting, wrench_setting(at_nut, *torque.adapter));
    }
    pass.at_nut = at_nut;
    torque.taken = Taken::measured;
    torque.reason.clear();
    torque.passes.push_back(std::move(pass));
    return torque;
}

}  // namespace cotter
