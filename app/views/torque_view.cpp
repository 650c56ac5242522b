// See torque_view.h.
#include "app/views/torque_view.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "app/views/corner_view.h"
#include "app/views/plan_view.h"
#include "core/work/torque_check.h"

namespace cotter {

namespace {

constexpr std::string_view kNuts = "wheel nuts";

bool same_torque(const Amount& a, const Amount& b) {
    return std::abs(a.si() - b.si()) < 0.01 * std::max(a.si(), b.si());
}

// A record that is no id names the joint of a new one.
std::string_view joint_of(const Route& route) {
    return route.record.empty() || Uuid::parse(route.record) ? kNuts : std::string_view(route.record);
}

const Torque* torque_of(const Job& job, const Route& route) {
    if (const auto uuid = Uuid::parse(route.record))
        if (const Torque* there = job.find(Id<Torque>{*uuid})) return there;
    const Torque* found = nullptr;
    for (const Torque& t : job.all<Torque>())
        if (at_place(t.place, route.place) && t.joint == joint_of(route)) found = &t;
    return found;
}

int studs_at(const Job& job, const Place& place) {
    const Trailer* trailer = job.only<Trailer>();
    if (trailer == nullptr || !place.is_corner() || !trailer->has(place)) return 0;
    return trailer->axles[static_cast<std::size_t>(place.axle - 1)].studs;
}

// What a new one takes over from the like joint before it.
Torque new_torque(const Job& job, const Settings& settings, const Route& route) {
    const Place& place = route.place;
    Torque torque;
    torque.place = place;
    torque.joint = joint_of(route);
    torque.fasteners = torque.joint == kNuts ? studs_at(job, place) : 0;
    for (const Torque& t : job.all<Torque>()) {
        if (t.joint != torque.joint) continue;
        if (torque.fasteners == 0 || studs_at(job, place) == 0) torque.fasteners = t.fasteners;
        if (t.target) torque.target = t.target, torque.target_source = t.target_source;
        if (!t.wrench.empty()) torque.wrench = t.wrench, torque.wrench_calibrated = t.wrench_calibrated;
    }
    if (torque.wrench.empty() && settings.wrenches.size() == 1) {
        torque.wrench = settings.wrenches.front().id;
        torque.wrench_calibrated = settings.wrenches.front().calibrated;
    }
    return torque;
}

bool full(const Torque& t, const Pass& pass) {
    return static_cast<int>(pass.tightened.size()) >= t.fasteners;
}

// Which stage each pass was: the first one with its setting that is still free; npos: a setting of the user's own.
void fill_stages(TorqueView& view, const TorquePlan& plan) {
    const std::vector<Pass>& passes = view.torque.passes;
    for (const TorqueStage& stage : plan.stages)
        view.stages.push_back({stage.setting, (stage.check ? "check " : "") + stage.setting.text(), false, false});
    std::vector<bool> taken(view.stages.size());
    std::size_t last = view.stages.size();
    for (const Pass& pass : passes) {
        // One pass more at a setting is that stage again.
        for (std::size_t i = 0; i < view.stages.size(); ++i)
            if (same_torque(view.stages[i].setting, pass.setting)) last = i;
        for (std::size_t i = 0; i < view.stages.size(); ++i) {
            if (taken[i] || !same_torque(view.stages[i].setting, pass.setting)) continue;
            taken[i] = true;
            last = i;
            view.stages[i].done = full(view.torque, pass);
            break;
        }
    }
    const bool running = !passes.empty() && !full(view.torque, passes.back());
    if (running && last < view.stages.size()) {
        view.stages[last].now = true;
        view.stages[last].done = false;
    }
    const std::size_t from = passes.empty() || last >= view.stages.size() ? 0 : last + 1;
    if (from < view.stages.size()) view.next_stage = from;
}

// A circle without an order of ours is tightened in the same stages, in the order of the maker's chart.
void fill_plan(TorqueView& view) {
    const Torque& t = view.torque;
    if (!t.target) return;
    view.no_order = t.fasteners > 0 && !cross_order(t.fasteners);
    if (const auto plan = plan_torque(view.no_order ? 1 : t.fasteners, *t.target, t.target_source))
        fill_stages(view, *plan);
}

void fill_next(TorqueView& view) {
    const auto order = cross_order(view.torque.fasteners);
    const bool running = !view.torque.passes.empty();
    if (running) view.clicked = view.torque.passes.back().tightened;
    if (!order) return;
    for (const int nut : *order) {
        if (std::find(view.clicked.begin(), view.clicked.end(), nut) != view.clicked.end()) continue;
        view.next = nut;
        return;
    }
}

// The setting of the running pass, or of the one to begin.
std::optional<Amount> setting_now(const TorqueView& view) {
    const Torque& t = view.torque;
    if (!t.passes.empty() && !full(t, t.passes.back())) return t.passes.back().setting;
    if (view.next_stage) return view.stages[*view.next_stage].setting;
    return std::nullopt;
}

void fill_setting(TorqueView& view) {
    const auto wanted = setting_now(view);
    if (!wanted) return;
    view.set_to = wanted->text();
    const auto adapter = wrench_adapter(view.torque.wrench);
    if (!adapter) return;
    if (const auto set = wrench_setting(*wanted, *adapter)) {
        view.set_to = set->text();
        view.corrected = fmt::format("{} at the nut: set the wrench to {}, because the adapter reaches {} beyond it.",
                                     wanted->text(), set->text(), adapter->extension.text());
    }
}

void fill_wrenches(TorqueView& view, const Settings& settings, const Date& day) {
    const std::string chosen = wrench_id(view.torque.wrench);
    for (const Wrench& w : settings.wrenches)
        view.wrenches.push_back(
            {w.id, w.id + (w.calibrated ? ", calibrated " + w.calibrated->text() : ", calibration not known"),
             w.calibrated, w.id == chosen});
    const bool listed = std::any_of(view.wrenches.begin(), view.wrenches.end(), [](const auto& w) { return w.chosen; });
    if (!chosen.empty() && !listed) view.wrenches.push_back({chosen, chosen, view.torque.wrench_calibrated, true});
    if (chosen.empty()) return;
    const WrenchCheck check = check_wrench(view.torque.wrench_calibrated, day);
    if (check.state != WrenchState::in_date) view.wrench_warning = check.words;
}

void fill_remarks(TorqueView& view) {
    const Torque& t = view.torque;
    if (t.passes.empty() || !full(t, t.passes.back())) return;
    const auto remarks = check_torque(t);
    view.done = proves_torque(remarks);
    if (view.next_stage && !view.done) return;  // on the way: what is missing comes yet
    for (const TorqueRemark& r : remarks)
        if (r.difference != TorqueDifference::wrench_not_in_date) view.remarks.push_back(upper_first(r.words));
}

std::string missing(const Torque& t) {
    if (t.fasteners == 0) return "Count the studs";
    if (!t.target) return "Enter the maker's figure";
    if (t.wrench.empty()) return "Choose the wrench";
    return {};
}

}  // namespace

Torque with_pass(Torque torque, const Amount& setting, int nut) {
    torque.taken = Taken::measured;
    torque.reason.clear();
    torque.passes.push_back({setting, {}});
    if (nut > 0) torque.passes.back().tightened.push_back(nut);
    return torque;
}

TorqueView torque_view(const Session& session) {
    const Job& job = session.job();
    const Route& route = session.route();
    TorqueView view;
    const Torque* there = torque_of(job, route);
    view.torque = there != nullptr ? *there : new_torque(job, session.settings(), route);
    view.place = view.torque.place;
    const std::string place = place_words(route.place, session.settings().sides);
    view.chrome = chrome_of(session, upper_first(view.torque.joint), place);
    view.to_do = missing(view.torque);
    view.ready = view.to_do.empty();
    fill_plan(view);
    fill_next(view);
    fill_setting(view);
    fill_wrenches(view, session.settings(), session.now().local_date());
    fill_remarks(view);
    for (const Torque& t : job.all<Torque>())
        if (!t.target_source.empty() &&
            std::find(view.sources.begin(), view.sources.end(), t.target_source) == view.sources.end())
            view.sources.push_back(t.target_source);
    view.next_place = neighbour(job, route.place, 1);
    if (view.next_place) view.next_label = place_words(*view.next_place, session.settings().sides);
    view.drafts = session.drafts();
    view.settings = session.settings();
    return view;
}

}  // namespace cotter
