// What was changed after the sign-off: field by field, the old value beside the new one, who and why.
#include <algorithm>

#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"
#include "core/survey/json_visitors.h"

namespace cotter {

namespace {

using Leaves = std::vector<std::pair<std::string, std::string>>;  // path, text

void collect(const Json& json, const std::string& path, Leaves& out) {
    if (json.is_object()) {
        for (const auto& [key, value] : json.items()) collect(value, path.empty() ? key : path + ", " + key, out);
    } else if (json.is_array() && !json.empty() && json.front().is_structured()) {
        for (std::size_t i = 0; i < json.size(); ++i) collect(json[i], fmt::format("{} {}", path, i + 1), out);
    } else {
        out.emplace_back(path, json.is_string() ? json.get<std::string>() : compact_json(json));
    }
}

Leaves leaves_of(const std::string& text) {
    Leaves out;
    if (text.empty()) return out;
    if (const auto json = parse_json(text))
        collect(*json, {}, out);
    else
        out.emplace_back("record", text);
    return out;
}

const std::string* value_at(const Leaves& leaves, const std::string& path) {
    for (const auto& [key, value] : leaves)
        if (key == path) return &value;
    return nullptr;
}

// "reading “pad thickness”, axle1-left": what a person would call the record.
std::string record_title(const Amendment& amendment, const Leaves& fields) {
    std::string called;
    for (const char* key : {"component", "what", "joint", "fluid", "slot", "title", "unit"})
        if (const std::string* value = called.empty() ? value_at(fields, key) : nullptr) called = "“" + *value + "”";
    const std::string* code = value_at(fields, "place");
    const auto place = code == nullptr ? Result<Place>(fail(Errc::refused, "none")) : Place::parse(*code);
    return joined({joined({capital(name_of(amendment.kind)), called}, " "), place ? place_name(*place) : ""}, ", ");
}

void add_amendment(Table& table, const Amendment& amendment) {
    const Leaves before = leaves_of(amendment.old_value), after = leaves_of(amendment.new_value);
    const char* how = before.empty() ? "added" : after.empty() ? "removed" : "changed";
    std::string what = fmt::format("{}, {}", record_title(amendment, after.empty() ? before : after), how);
    const auto add = [&](const std::string& field, const std::string& old_value, Cell now) {
        if (amendment.kind == RecordKind::step_mark && field == "step") return;  // a mark goes by its step's title
        std::string words = field;  // as job.json calls it, without its underlines
        std::replace(words.begin(), words.end(), '_', ' ');
        table.add({Cell::bold(what), std::move(words), old_value, std::move(now)});
        what.clear();  // once a record
    };
    for (const auto& [path, value] : before) {
        const std::string* now = value_at(after, path);
        if (now == nullptr || *now != value) add(path, value, now == nullptr ? Cell("–") : Cell::bold(*now));
    }
    for (const auto& [path, value] : after)
        if (value_at(before, path) == nullptr) add(path, "–", Cell::bold(value));
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
