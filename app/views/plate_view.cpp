// See plate_view.h.
#include "app/views/plate_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/trade/doubts.h"

namespace cotter {

namespace {

// Words that cannot be recorded as they are stay a draft, with what is wrong about them.
std::string error_of(const FormField& field, const std::string& words) {
    if (words.empty()) return {};
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    if (field.id == "built") {
        const bool year = words.size() >= 4 && std::all_of(words.begin(), words.begin() + 4, digit);
        const bool month = words.size() == 7 && words[4] == '-' && digit(words[5]) && digit(words[6]);
        return year && (words.size() == 4 || month) ? "" : "Year, or year and month: 2019-04";
    }
    const auto upper = [](char c) { return c >= 'A' && c <= 'Z'; };
    if (field.id == "region") {
        const bool country = words.size() >= 2 && upper(words[0]) && upper(words[1]);
        return country && (words.size() == 2 || (words.size() >= 4 && words[2] == '-'))
                   ? ""
                   : "The country's two letters, and the state's after a dash: US-TX";
    }
    return {};
}

FormRow row_of(const PlateData& data, FormField field, const std::vector<PlateDoubt>& doubts, const Drafts& drafts) {
    FormRow row;
    row.value = plate_value(data, field);
    row.not_known = plate_not_known(data, field);
    row.choice = plate_choice(data, field);
    for (const PlateDoubt& doubt : doubts)
        if (doubt.field == field.id) row.doubt = doubt.says;
    const WordsDraft* words = drafts.words();
    if (words != nullptr && words->field == field.id) row.error = error_of(field, words->text);
    row.field = std::move(field);
    return row;
}

}  // namespace

PlateView plate_view(const Session& session) {
    const Job& job = session.job();
    PlateView view;
    view.chrome = chrome_of(session, "Plate and use", trailer_words(job));
    if (const Trailer* trailer = job.only<Trailer>()) view.data.trailer = *trailer;
    if (const Visit* visit = job.only<Visit>()) view.data.visit = *visit;
    view.drafts = session.drafts();
    view.events = job.all<Event>().size();
    const auto doubts = plate_doubts(view.data.trailer, view.data.visit, session.now().local_date());
    std::size_t entered = 0, not_known = 0, all = 0;
    for (PlateSection& section : plate_sections(view.data)) {
        PlateGroup group{section.title, {}, section.axle};
        for (FormField& field : section.fields) {
            if (field.id == session.route().record) view.first = view.groups.size();
            const bool counts = field.not_known_counts;
            group.rows.push_back(row_of(view.data, std::move(field), doubts, view.drafts));
            if (!counts) continue;
            ++all;
            entered += group.rows.back().value.empty() ? 0 : 1;
            not_known += group.rows.back().not_known ? 1 : 0;
        }
        view.groups.push_back(std::move(group));
    }
    view.tally = fmt::format("{} of {} entered", entered, all);
    if (not_known > 0) view.tally += fmt::format(", {} not known", not_known);
    for (const Shot& shot : job.all<Shot>()) {
        if (shot.slot != Slot::data_plate) continue;
        view.plate_shot = shot.photo.sha256;
        view.plate_shot_id = shot.id.text();
    }
    return view;
}

}  // namespace cotter
