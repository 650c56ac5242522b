// What was changed after the sign-off: field by field, the old value beside the new one, who and why.
#include <map>

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
        out.emplace_back(path, json.is_string() ? json.get<std::string>() : json.dump());
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
    for (const char* key : {"component", "what", "joint", "fluid", "slot", "unit"})
        if (const std::string* value = called.empty() ? value_at(fields, key) : nullptr) called = "“" + *value + "”";
    const std::string* code = value_at(fields, "place");
    const auto place = code == nullptr ? Result<Place>(fail(Errc::refused, "none")) : Place::parse(*code);
    return joined({joined({capital(name_of(amendment.kind)), called}, " "), place ? place_name(*place) : ""}, ", ");
}

void draw_amendment(Writing& w, const Amendment& amendment, std::size_t number) {
    const Leaves before = leaves_of(amendment.old_value), after = leaves_of(amendment.new_value);
    const char* how = before.empty() ? "added" : after.empty() ? "removed" : "changed";
    w.sheet.heading(fmt::format("{}. {}, {}", number, record_title(amendment, after.empty() ? before : after), how));
    w.sheet.labelled({{"When, who", joined({w.time(amendment.at), amendment.by}, ", ")},
                      {"Reason", amendment.reason},
                      {"Record", amendment.id}});
    Table table({{"Field", 1}, {"Old value", 2}, {"New value", 2}});
    for (const auto& [path, value] : before) {
        const std::string* now = value_at(after, path);
        if (now == nullptr || *now != value) table.add({path, value, now == nullptr ? Cell("–") : Cell::bold(*now)});
    }
    for (const auto& [path, value] : after)
        if (value_at(before, path) == nullptr) table.add({path, "–", Cell::bold(value)});
    table.draw(w.sheet);
}

}  // namespace

void draw_amendments(Writing& w) {
    if (w.job.amendments.empty()) return;
    w.sheet.part("Amendments");
    w.sheet.paragraph("Changed after the sign-off. The other pages show the new values.");
    for (std::size_t i = 0; i < w.job.amendments.size(); ++i) draw_amendment(w, w.job.amendments[i], i + 1);
}

}  // namespace cotter
