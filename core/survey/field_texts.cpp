// From JSON to a flat list, and two of these held against each other.
#include "core/survey/field_texts.h"

#include "core/survey/json_visitors.h"

namespace cotter {

namespace {

void collect(const Json& json, const std::string& path, FieldTexts& out) {
    if (json.is_object()) {
        for (const auto& [key, value] : json.items()) collect(value, path.empty() ? key : path + ", " + key, out);
    } else if (json.is_array() && !json.empty() && json.front().is_structured()) {
        for (std::size_t i = 0; i < json.size(); ++i) collect(json[i], fmt::format("{} {}", path, i + 1), out);
    } else {
        out.emplace_back(path, json.is_string() ? json.get<std::string>() : compact_json(json));
    }
}

}  // namespace

FieldTexts field_texts(std::string_view text) {
    FieldTexts out;
    if (text.empty()) return out;
    if (const auto json = parse_json(text))
        collect(*json, {}, out);
    else
        out.emplace_back("record", text);
    return out;
}

const std::string* text_at(const FieldTexts& fields, std::string_view path) {
    for (const auto& [key, value] : fields)
        if (key == path) return &value;
    return nullptr;
}

std::string called_by(const FieldTexts& fields) {
    for (const char* key : {"component", "what", "joint", "fluid", "slot", "title", "point", "unit"})
        if (const std::string* value = text_at(fields, key)) return *value;
    return {};
}

std::vector<FieldChange> changed_fields(const FieldTexts& before, const FieldTexts& now) {
    std::vector<FieldChange> out;
    for (const auto& [path, value] : before) {
        const std::string* fresh = text_at(now, path);
        if (fresh == nullptr || *fresh != value) out.push_back({path, value, fresh == nullptr ? "" : *fresh});
    }
    for (const auto& [path, value] : now)
        if (text_at(before, path) == nullptr) out.push_back({path, "", value});
    return out;
}

}  // namespace cotter
