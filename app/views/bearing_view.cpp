// See bearing_view.h.
#include "app/views/bearing_view.h"

#include <algorithm>
#include <cstdlib>

#include <fmt/format.h>

#include "app/views/judged_reading.h"
#include "app/views/plan_view.h"
#include "core/trade/reading_names.h"

namespace cotter {

namespace {

const BearingSetting* setting_at(const Job& job, const Place& place) {
    const BearingSetting* newest = nullptr;
    for (const BearingSetting& s : job.all<BearingSetting>())
        if (at_place(s.place, place) && (newest == nullptr || newest->at <= s.at)) newest = &s;
    return newest;
}

BearingSetting new_setting(const Job& job, const Place& place) {
    BearingSetting out;
    if (!job.all<BearingSetting>().empty()) {
        const BearingSetting& last = job.all<BearingSetting>().back();
        out.style = last.style;
        out.source = last.source;
        out.threads_per_inch = last.threads_per_inch;
        out.lock_positions = last.lock_positions;
        out.play_min = last.play_min;
        out.play_max = last.play_max;
    }
    out.place = place;
    return out;
}

std::string stands_words(int steps) {
    if (steps == 0) return "at its first lock position";
    return fmt::format("{} {} than at first",
                       count_words(static_cast<std::size_t>(std::abs(steps)), "position", "positions"),
                       steps > 0 ? "looser" : "tighter");
}

std::optional<Amount> play_here(const Job& job, const BearingSetting& setting) {
    if (setting.tries.empty() || !setting.tries.back().dial) return std::nullopt;
    return proved_play(job, setting);
}

void fill_play(BearingView& view, const Job& job) {
    const BearingSetting& s = view.setting;
    view.at_step = s.tries.empty() ? 0 : s.tries.back().steps;
    view.stands = stands_words(view.at_step);
    view.play = play_here(job, s);
    view.play_words = "not measured here yet";
    if (!view.play) return;
    const bool low = s.play_min && view.play->si() < s.play_min->si();
    const bool high = s.play_max && view.play->si() > s.play_max->si();
    const bool known = s.play_min || s.play_max;
    view.play_words = view.play->text() + (low     ? ", too tight"
                                           : high  ? ", too loose"
                                           : known ? ", within the maker's range"
                                                   : "; the maker's range is not entered");
}

void fill_options(BearingView& view) {
    auto options = lock_options(view.setting, view.play);
    if (!options)
        view.no_options = upper_first(options.error().what) +
                          (options.error().todo.empty() ? "." : ": " + options.error().todo + ".");
    else
        view.options = std::move(*options);
}

void fill_methods(BearingView& view, const WorkBook& book) {
    for (const BearingMethod& m : book.bearing_methods) {
        if (m.style != view.setting.style) continue;
        MethodView out{m.title, {}, m.source};
        for (std::size_t i = 0; i < m.order.size(); ++i) out.text += fmt::format("{}. {}\n", i + 1, m.order[i]);
        out.text += "Lock: " + m.lock + ".\nProof: " + m.proof + ".\n" + upper_first(m.source) + ".";
        view.methods.push_back(std::move(out));
    }
}

void fill_shots(BearingView& view, const Job& job) {
    for (const Shot& shot : job.all<Shot>()) {
        if (!at_place(shot.place, view.place) || shot.stage != Stage::after) continue;
        const bool chosen = view.setting.lock_shot == shot.id;
        view.shots.push_back({shot.id.text(), shot.photo.sha256, upper_first(name_of(shot.slot)), chosen});
    }
}

// Each position has a reading of its own: what stood at another one is kept beside it.
ReadingDraft dial_draft(const Job& job, const Place& place) {
    ReadingDraft draft = begin_reading(job, what::end_play, place, Stage::after);
    draft.id.clear();
    draft.texts.clear();
    draft.taken = Taken::measured;
    draft.reason.clear();
    return draft;
}

}  // namespace

BearingSetting moved(BearingSetting setting, int steps) {
    const int from = setting.tries.empty() ? 0 : setting.tries.back().steps;
    if (!setting.tries.empty() && !setting.tries.back().dial) setting.tries.pop_back();
    setting.tries.push_back({from + steps, std::nullopt});
    return setting;
}

BearingView bearing_view(const Session& session) {
    const Job& job = session.job();
    const Place at = session.route().place;
    BearingView view;
    view.place = Place::corner(std::max(1, at.axle), at.side);
    view.chrome = chrome_of(session, "Bearing", place_words(view.place, session.settings().sides));
    const BearingSetting* there = setting_at(job, view.place);
    view.setting = there != nullptr ? *there : new_setting(job, view.place);
    fill_play(view, job);
    fill_options(view);
    fill_methods(view, session.work_book());
    fill_shots(view, job);
    view.remarks = check_bearing(job, view.setting);
    view.proved = there != nullptr && proves_bearing(view.remarks);
    if (view.setting.seated) view.doubt = doubt_seating(view.setting.style, *view.setting.seated);
    for (const BearingSetting& s : job.all<BearingSetting>())
        if (!s.source.empty() && std::find(view.sources.begin(), view.sources.end(), s.source) == view.sources.end())
            view.sources.push_back(s.source);
    view.dial = dial_draft(job, view.place);
    view.drafts = session.drafts();
    const auto& begun = view.drafts.reading;
    if (begun && begun->what == what::end_play && begun->place == view.place && begun->stage == Stage::after)
        view.entry = judged_entry(session, *begun);
    return view;
}

}  // namespace cotter
