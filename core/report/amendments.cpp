// What was changed after the sign-off: field by field, the old value beside the new one, who and why.
#include <algorithm>

#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"
#include "core/survey/field_texts.h"

namespace cotter {

namespace {

// "reading “pad thickness”, axle1-left": what a person would call the record.
std::string record_title(const Amendment& amendment, const FieldTexts& fields) {
    const std::string called = called_by(fields);
    const std::string* code = text_at(fields, "place");
    const auto place = code == nullptr ? Result<Place>(fail(Errc::refused, "none")) : Place::parse(*code);
    const std::string name = called.empty() ? "" : "“" + called + "”";
    return joined({joined({capital(name_of(amendment.kind)), name}, " "), place ? place_name(*place) : ""}, ", ");
}

void add_amendment(Table& table, const Amendment& amendment) {
    const FieldTexts before = field_texts(amendment.old_value), after = field_texts(amendment.new_value);
    const char* how = before.empty() ? "added" : after.empty() ? "removed" : "changed";
    std::string what = fmt::format("{}, {}", record_title(amendment, after.empty() ? before : after), how);
    for (const FieldChange& change : changed_fields(before, after)) {
        // A mark goes by its step's title.
        if (amendment.kind == RecordKind::step_mark && change.field == "step") continue;
        std::string words = change.field;  // as job.json calls it, without its underlines
        std::replace(words.begin(), words.end(), '_', ' ');
        const auto shown = [](const std::string& text, const std::string* there) {
            return there == nullptr ? std::string("–") : text;
        };
        const std::string* now = text_at(after, change.field);
        table.add({Cell::bold(what), std::move(words), shown(change.before, text_at(before, change.field)),
                   now == nullptr ? Cell("–") : Cell::bold(*now)});
        what.clear();  // once a record
    }
}

// Made by one person at one moment for one reason: together.
bool together(const Amendment& a, const Amendment& b) {
    return a.at == b.at && a.by == b.by && a.reason == b.reason;
}

}  // namespace

void draw_amendments(Writing& w) {
    const auto& all = w.job.amendments;
    if (all.empty()) return;
    w.sheet.part("Amendments");
    w.sheet.paragraph("Changed after the sign-off. The other pages show the new values; job.json names each record.");
    for (std::size_t from = 0; from < all.size();) {
        Table table({{"Record", 2}, {"Field", 1.2}, {"Old value", 1.6}, {"New value", 1.6}});
        std::size_t to = from;
        for (; to < all.size() && together(all[from], all[to]); ++to) add_amendment(table, all[to]);
        w.sheet.heading(joined({w.time(all[from].at), all[from].by}, ", "), 60);
        w.sheet.labelled({{"Reason", all[from].reason}});
        table.draw(w.sheet);
        from = to;
    }
}

}  // namespace cotter
