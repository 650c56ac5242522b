// See tag_view.h.
#include "app/views/tag_view.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "app/views/plan_view.h"

namespace cotter {

namespace {

FormRow amount_row(std::string id, std::string label, std::vector<std::string> units,
                   const std::optional<Amount>& amount, bool fractions = false) {
    FormRow row;
    row.field = {std::move(id), std::move(label), FormKind::amount, std::move(units), fractions, {}, {}, false};
    if (amount) row.value = amount->text();
    return row;
}
FormRow index_row(std::string id, std::string label, int index) {
    FormRow row = amount_row(std::move(id), std::move(label), {"1"}, std::nullopt);
    if (index > 0) row.value = std::to_string(index);
    return row;
}
FormRow words_row(std::string id, std::string label, std::string hint, std::string value) {
    FormRow row;
    row.field = {std::move(id), std::move(label), FormKind::words, {}, false, {}, std::move(hint), false};
    row.value = std::move(value);
    return row;
}
// The first enumerator is 'not known', which is no choice.
template <class E>
FormRow choice_row(std::string id, std::string label, E value) {
    FormRow row;
    row.field = {std::move(id), std::move(label), FormKind::choice, {}, false, {}, {}, false};
    const auto all = names(E{});
    for (std::size_t i = 1; i < all.size(); ++i) row.field.choices.push_back(upper_first(all[i]));
    const auto at = static_cast<std::size_t>(value);
    if (at > 0) {
        row.choice = at - 1;
        row.value = row.field.choices[at - 1];
    }
    return row;
}
template <class E>
void choose(E& value, std::size_t choice) {
    value = static_cast<E>(choice + 1);
}

std::string date_code_error(const Drafts& drafts) {
    const WordsDraft* words = drafts.words();
    if (words == nullptr || words->field != "date code" || words->text.empty()) return {};
    const std::string& code = words->text;
    const bool digits = std::all_of(code.begin(), code.end(), [](char c) { return c >= '0' && c <= '9'; });
    return digits && (code.size() == 3 || code.size() == 4) ? "" : "The last four digits: week and year, 0523";
}

std::vector<FormRow> rows_of(const Sidewall& r, bool dual, const Drafts& drafts) {
    std::vector<FormRow> out{words_row("size", "Size", "ST235/80R16", r.size), choice_row("type", "Type", r.type),
                             words_row("load range", "Load range", "E", r.load_range),
                             index_row("index single", "Load index, single", r.index_single)};
    if (dual) out.push_back(index_row("index dual", "Load index, dual", r.index_dual));
    out.push_back(amount_row("max single", "Maximum load, single", {"[lb_av]", "kg"}, r.max_single));
    if (dual) out.push_back(amount_row("max dual", "Maximum load, dual", {"[lb_av]", "kg"}, r.max_dual));
    out.push_back(amount_row("max pressure", "Maximum cold pressure", {"[psi]", "kPa", "bar"}, r.max_pressure));
    out.push_back(words_row("date code", "Date code", "week and year, 0523", r.date_code));
    out.back().error = date_code_error(drafts);
    out.push_back(amount_row("speed limit", "Marked for a limited speed", {"[mi_i]/h", "km/h"}, r.speed_limit));
    FormRow off;
    off.field = {"not for highway", "Marked 'not for highway use'", FormKind::yes, {}, false, {}, {}, false};
    if (r.not_for_highway) off.choice = 0;
    out.push_back(std::move(off));
    return out;
}

std::vector<FormRow> rows_of(const Chamber& r) {
    return {
        choice_row("family", "Held together by", r.family),
        words_row("size", "Type", "30", r.size),
        choice_row("stroke", "Stroke, from tag or port", r.stroke),
        choice_row("spring", "Spring brake", r.spring_brake),
        choice_row("slack", "Slack adjuster", r.slack),
        amount_row("slack length", "Slack adjuster, center to center", {"[in_i]", "mm"}, r.slack_length, true),
        amount_row("rated stroke", "Rated stroke, if marked", {"[in_i]", "mm"}, r.rated_stroke, true),
        amount_row("marked limit", "Stroke limit, if marked", {"[in_i]", "mm"}, r.marked_limit, true),
        amount_row("table limit", "Limit as you read it in 49 CFR 393.47(e)", {"[in_i]", "mm"}, r.table_limit, true)};
}

template <class R>
const R* newest(const Job& job, const Place& place) {
    const R* found = nullptr;
    for (const R& r : job.all<R>())
        if (r.place == place && (found == nullptr || found->at <= r.at)) found = &r;
    return found;
}

template <class R>
void fill(const Session& session, Slot slot, TagView<R>& view) {
    const Job& job = session.job();
    const Place place = session.route().place;
    view.record.place = place;
    if (const R* there = newest<R>(job, place)) view.record = *there;
    if (view.record.id.nil())
        for (const R& other : job.all<R>()) {
            if (other.place == place) continue;
            view.like = other;
            view.like_words = fmt::format("Same as {}", place_words(other.place, session.settings().sides));
        }
    if (view.like) {
        view.like->id = {};
        view.like->place = place;
        view.like->shot.reset();
    }
    for (const Shot& shot : job.all<Shot>())
        if (shot.slot == slot && at_place(shot.place, place)) {
            view.shot = shot.photo.sha256;
            view.shot_id = shot.id.text();
        }
    view.drafts = session.drafts();
}

bool is_dual(const Job& job, const Place& place) {
    const Trailer* trailer = job.only<Trailer>();
    return trailer != nullptr && trailer->has(place) && place.is_corner() &&
           trailer->axles[static_cast<std::size_t>(place.axle) - 1].wheels == Wheels::dual;
}

int whole(const Amount& amount) {
    const double value = amount.number.value();
    return value >= 0 && value <= 1000 ? static_cast<int>(std::lround(value)) : 0;
}

}  // namespace

TagView<Sidewall> sidewall_view(const Session& session) {
    TagView<Sidewall> view;
    const Place place = session.route().place;
    view.chrome = chrome_of(session, "The tire's sidewall", place_words(place, session.settings().sides));
    fill(session, Slot::sidewall, view);
    // The date code is each tire's own.
    if (view.like) view.like->date_code.clear();
    view.rows = rows_of(view.record, is_dual(session.job(), place), view.drafts);
    return view;
}

TagView<Chamber> chamber_view(const Session& session) {
    TagView<Chamber> view;
    view.chrome = chrome_of(session, "The chamber's tag", place_words(session.route().place, session.settings().sides));
    fill(session, Slot::brake, view);
    view.rows = rows_of(view.record);
    return view;
}

Sidewall with_amount(Sidewall r, const std::string& field, const Amount& amount) {
    if (field == "index single") r.index_single = whole(amount);
    if (field == "index dual") r.index_dual = whole(amount);
    if (field == "max single") r.max_single = amount;
    if (field == "max dual") r.max_dual = amount;
    if (field == "max pressure") r.max_pressure = amount;
    if (field == "speed limit") r.speed_limit = amount;
    return r;
}

Sidewall with_choice(Sidewall r, const std::string& field, std::size_t choice) {
    if (field == "type") choose(r.type, choice);
    if (field == "not for highway") r.not_for_highway = !r.not_for_highway;
    return r;
}

Sidewall with_words(Sidewall r, const std::string& field, const std::string& words) {
    if (field == "size") r.size = words;
    if (field == "load range") r.load_range = words;
    if (field == "date code") r.date_code = words;
    return r;
}

Chamber with_amount(Chamber r, const std::string& field, const Amount& amount) {
    if (field == "slack length") r.slack_length = amount;
    if (field == "rated stroke") r.rated_stroke = amount;
    if (field == "marked limit") r.marked_limit = amount;
    if (field == "table limit") r.table_limit = amount;
    return r;
}

Chamber with_choice(Chamber r, const std::string& field, std::size_t choice) {
    if (field == "family") choose(r.family, choice);
    if (field == "stroke") choose(r.stroke, choice);
    if (field == "spring") choose(r.spring_brake, choice);
    if (field == "slack") choose(r.slack, choice);
    return r;
}

Chamber with_words(Chamber r, const std::string& field, const std::string& words) {
    if (field == "size") r.size = words;
    return r;
}

}  // namespace cotter
