// See hand_over_view.h.
#include "app/views/hand_over_view.h"

#include <algorithm>
#include <cctype>

#include <fmt/format.h>

#include "app/views/only_here.h"
#include "app/views/plan_view.h"
#include "app/views/summary_view.h"
#include "core/quote/answer.h"
#include "core/work/work_log.h"

namespace cotter {

namespace {

void trailer_gaps(const Job& job, std::vector<Gap>& out) {
    const Trailer* trailer = job.only<Trailer>();
    const auto lacks = [&](const char* key, const char* text) {
        out.push_back({key, "Trailer", text, {}, {Screen::identify, {}, {}}});
    };
    if (trailer == nullptr || trailer->axles.empty()) return lacks("axles", "its axles are not known");
    if (trailer->unit.empty() && trailer->plate.empty() && trailer->vin.empty()) lacks("name", "no unit, plate or VIN");
    const auto& shots = job.all<Shot>();
    if (std::none_of(shots.begin(), shots.end(), [](const Shot& s) { return s.slot == Slot::data_plate; }))
        lacks("data plate", "no photo of the data plate");
}

bool is_unnamed(const Job& job) {
    const Visit* visit = job.only<Visit>();
    return visit != nullptr && visit->technician == kUnnamed;
}

void place_gaps(const Job& job, SideWords words, std::vector<Gap>& out) {
    const Trailer* trailer = job.only<Trailer>();
    if (trailer == nullptr) return;
    for (const Place& corner : trailer->corners()) {
        const PlanSpot spot = plan_spot(job, corner, words);
        if (spot.progress == PlanState::complete) continue;
        out.push_back({corner.text(),
                       spot.label,
                       spot.progress == PlanState::untouched ? "nothing recorded" : spot.missing,
                       {},
                       {Screen::corner, corner, {}}});
    }
}

// What keeps the trailer where it is, as long as nothing was done about it.
void danger_gaps(const Job& job, SideWords words, std::vector<Gap>& out) {
    for (const Finding& f : job.all<Finding>()) {
        if (f.grade != Grade::do_not_tow || f.outcome == Outcome::repaired) continue;
        const std::string state =
            f.outcome == Outcome::open ? "nothing said about it yet" : std::string(name_of(f.outcome));
        out.push_back({f.id.text(),
                       fmt::format("{}: {}", upper_first(f.component), f.defect),
                       fmt::format("{}, {}", place_words(f.place, words), state),
                       f.grade,
                       {Screen::corner, f.place, {}}});
    }
}

// Without these nobody can say whether it may be towed: 'not measured' is no 'nothing is missing'.
void unknown_gaps(const Summary& summary, SideWords words, std::vector<Gap>& out) {
    const std::size_t first = out.size();
    for (const Unknown& u : summary.unknowns) {
        if (!u.essential) continue;
        const UnknownItem item = unknown_item(u, words);
        const std::string lacks = fmt::format("{}: {}", item.subject, u.because);
        const auto there = std::find_if(out.begin() + static_cast<std::ptrdiff_t>(first), out.end(),
                                        [&](const Gap& gap) { return gap.what == item.place; });
        if (there != out.end())
            there->lacks += "\n" + lacks;
        else
            out.push_back({"unknown " + item.key, item.place, lacks, {}, item.record});
    }
}

// What no gap is made of, but nobody looked at: 'nothing is missing' would claim too much.
std::string not_covered(const Session& session) {
    std::string out;
    const auto add = [&](std::string words) {
        words.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(words.front())));
        out += (out.empty() ? "" : ", ") + words;
    };
    for (const Station s : {Station::drawbar, Station::actuator, Station::frame, Station::lights}) {
        const PlanSpot spot = plan_spot(session.job(), Place::at(s), session.settings().sides);
        if (spot.progress == PlanState::untouched) add(spot.label);
    }
    const std::size_t unknown = session.summary().unknowns.size();
    if (unknown > 0) add(count_words(unknown, "thing not known", "things not known"));
    return out;
}

std::vector<std::string> told_in_report(const Job& job) {
    std::vector<std::string> out;
    for (const DeclinedLine& line : declined_lines(job)) out.push_back(declined_text(line));
    const std::size_t passed = work_log(job).overrides.size();
    if (passed > 0)
        out.push_back(fmt::format("{} SKIPPED, not verified, each with its reason.",
                                  count_words(passed, "step was", "steps were")));
    return out;
}

}  // namespace

HandOverView hand_over_view(const Session& session) {
    const Job& job = session.job();
    HandOverView view;
    view.chrome = chrome_of(session, "Hand over", trailer_words(job));
    view.towing = towing_question(session.summary());
    view.answer = session.summary().towing;
    if (wants_acknowledgement(view.answer)) view.acknowledge = session.summary().answer;
    const SideWords words = session.settings().sides;
    view.unnamed = is_unnamed(job);
    if (view.unnamed)
        view.gaps.push_back(
            {"technician", "Technician", "no name: the packet would say 'unnamed'", {}, {Screen::settings, {}, {}}});
    danger_gaps(job, words, view.gaps);
    trailer_gaps(job, view.gaps);
    place_gaps(job, words, view.gaps);
    unknown_gaps(session.summary(), words, view.gaps);
    view.not_covered = not_covered(session);
    view.rechecks = recheck_lines(session);
    view.told = told_in_report(job);
    view.technician = session.settings().technician;
    if (const SignOff* sign = job.only<SignOff>()) {
        view.signed_off = true;
        view.signed_by = fmt::format("{}, {} {}", sign->by, day_words(sign->at), clock_words(sign->at));
    }
    if (session.work()) {
        view.doing = session.work()->doing;
        view.detail = session.work()->detail;
    }
    if (session.packed()) {
        view.packet_path = session.packed()->path;
        view.packet_line = fmt::format("Revision {}", session.packed()->facts.revision);
    }
    for (const PacketMade& p : session.packets())
        view.packets.push_back(fmt::format("{}, made {} {}", p.name, day_words(p.made_at), clock_words(p.made_at)));
    view.folder = session.packet_folder();
    view.hands_out = session.device().picks();
    view.only_here = only_here_words(session, job.id());
    return view;
}

}  // namespace cotter
