// See torque_view.h.
#include "app/views/torque_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/corner_view.h"
#include "app/views/place_text.h"
#include "app/views/plan_view.h"
#include "core/work/torque_check.h"
#include "core/work/torque_like.h"
#include "core/work/wrench.h"

namespace cotter {

namespace {

// A record that is no id names the joint of a new one.
std::string_view joint_of(const Route& route) {
    return route.record.empty() || Uuid::parse(route.record) ? kWheelNuts : std::string_view(route.record);
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

// The wrench used last stays in the hand; what was on it need not: with an adapter it is chosen anew, or taken over
// with the figure.
void take_wrench(Torque& torque, const Job& job, const Settings& settings) {
    const Torque* last = nullptr;
    for (const Torque& t : job.all<Torque>())
        if (!t.wrench.empty() && (last == nullptr || last->at <= t.at)) last = &t;
    if (last != nullptr) {
        const Torque used = in_present_form(*last);
        if (used.adapter) return;
        torque.wrench = used.wrench;
        torque.wrench_calibrated = used.wrench_calibrated;
    } else if (settings.wrenches.size() == 1) {
        torque.wrench = settings.wrenches.front().id;
        torque.wrench_calibrated = settings.wrenches.front().calibrated;
    }
}

Torque new_torque(const Job& job, const Settings& settings, const Route& route) {
    Torque torque;
    torque.place = route.place;
    torque.joint = joint_of(route);
    torque.fasteners = torque.joint == kWheelNuts ? studs_at(job, route.place) : 0;
    take_wrench(torque, job, settings);
    return torque;
}

void fill_offer(TorqueView& view, const Job& job) {
    const Torque* lender = torque_to_lend(job, view.torque);
    if (lender == nullptr) return;
    LentFigure offer;
    offer.torque = with_lent(view.torque, *lender);
    const Torque& t = offer.torque;
    offer.title = in_words(fmt::format("Taken from {}: right?", lender->place.text()), view.settings.sides);
    offer.words = fmt::format(
        "{} for {}, {}.", t.target->text(),
        t.joint == kWheelNuts ? fmt::format("{} nuts", t.fasteners) : fmt::format("{} {}", t.fasteners, t.joint),
        t.target_source);
    if (!t.wrench.empty()) offer.words += fmt::format(" With wrench {}", t.wrench);
    if (!t.wrench.empty()) offer.words += t.adapter ? fmt::format(", adapter {}.", adapter_words(*t.adapter)) : ".";
    offer.accept = fmt::format("Right: {}", t.target->text());
    view.offer = std::move(offer);
}

void fill_progress(TorqueView& view) {
    const TorqueProgress progress = torque_progress(view.torque);
    for (const StageProgress& s : progress.stages)
        view.stages.push_back({s.stage.at_nut, (s.stage.check ? "check " : "") + s.stage.at_nut.text(), s.done, s.now});
    view.next_stage = progress.next_stage;
    view.clicked = progress.clicked;
    view.next = progress.next;
    view.running = progress.running;
    view.no_order = progress.no_order;
    if (const auto now = progress.stage_now())
        view.pass = fmt::format("Pass {} of {}{}", *now + 1, progress.stages.size(),
                                progress.stages[*now].stage.check ? ", to check" : "");
    else if (progress.running)
        view.pass = "A pass beside the plan";
}

void fill_setting(TorqueView& view) {
    Torque torque = view.torque;
    if (!view.running && view.next_stage) {
        auto begun = begin_pass(torque, view.stages[*view.next_stage].at_nut);
        if (!begun) return;
        torque = std::move(*begun);
    } else if (!view.running) {
        return;
    }
    const Pass& pass = torque.passes.back();
    view.set_to = pass.setting;
    if (torque.adapter)
        view.corrected =
            fmt::format("{} at the nut through the adapter: {}", at_nut(pass).text(), adapter_words(*torque.adapter));
}

void fill_wrenches(TorqueView& view, const Date& day) {
    const std::string& chosen = view.torque.wrench;
    for (const Wrench& w : view.settings.wrenches)
        view.wrenches.push_back(
            {w.id, w.id + (w.calibrated ? ", calibrated " + w.calibrated->text() : ", calibration not known"),
             w.calibrated, w.id == chosen});
    const bool listed = std::any_of(view.wrenches.begin(), view.wrenches.end(), [](const auto& w) { return w.chosen; });
    if (!chosen.empty() && !listed) view.wrenches.push_back({chosen, chosen, view.torque.wrench_calibrated, true});
    if (chosen.empty()) return;
    const WrenchCheck check = check_wrench(view.torque.wrench_calibrated, day);
    if (check.state != WrenchState::in_date) view.wrench_warning = check.words;
}

// What differs shows as soon as it does; what is missing only when no pass is left to bring it.
void fill_remarks(TorqueView& view) {
    if (view.torque.passes.empty()) return;
    const auto remarks = check_torque(view.torque);
    view.done = !view.running && proves_torque(remarks);
    const bool on_the_way = view.running || (view.next_stage && !view.done);
    for (const TorqueRemark& r : remarks) {
        const bool stays = r.difference == TorqueDifference::not_across ||
                           r.difference == TorqueDifference::unit_doubt ||
                           r.difference == TorqueDifference::other_at_nut;
        if (r.difference == TorqueDifference::wrench_not_in_date || (on_the_way && !stays)) continue;
        (proves_torque({r}) ? view.remarks : view.against).push_back(upper_first(r.words) + ".");
    }
}

void fill_known(TorqueView& view, const Job& job) {
    view.source = view.torque.target_source;
    if (const auto& from = view.torque.target_from)
        view.source += in_words(fmt::format(", as {}", from->text()), view.settings.sides);
    if (view.torque.unit_confirmed) view.source += "; its unit was asked about and confirmed";
    for (const Torque& t : job.all<Torque>()) {
        if (t.target && t.id != view.torque.id && t.joint == view.torque.joint) view.like = t.target;
        if (!t.target_source.empty() &&
            std::find(view.sources.begin(), view.sources.end(), t.target_source) == view.sources.end())
            view.sources.push_back(t.target_source);
    }
}

std::string missing(const TorqueView& view) {
    const Torque& t = view.torque;
    if (view.offer) return view.offer->accept;
    if (t.fasteners == 0) return "Count the studs";
    if (!t.target) return "Enter the maker's figure";
    if (t.wrench.empty()) return "Choose the wrench";
    return {};
}

}  // namespace

TorqueView torque_view(const Session& session) {
    const Job& job = session.job();
    const Route& route = session.route();
    TorqueView view;
    view.drafts = session.drafts();
    view.settings = session.settings();
    const Torque* there = torque_of(job, route);
    view.torque = there != nullptr ? in_present_form(*there) : new_torque(job, session.settings(), route);
    view.place = view.torque.place;
    const std::string place = place_words(route.place, session.settings().sides);
    view.chrome = chrome_of(session, upper_first(view.torque.joint), place);
    fill_offer(view, job);
    view.to_do = missing(view);
    view.ready = view.to_do.empty();
    fill_progress(view);
    fill_setting(view);
    fill_wrenches(view, session.now().local_date());
    fill_remarks(view);
    fill_known(view, job);
    view.next_place = neighbour(job, route.place, 1);
    if (view.next_place) view.next_label = place_words(*view.next_place, session.settings().sides);
    return view;
}

}  // namespace cotter
