// A record's fields as texts, for tables that lay two versions of a record side by side. Pure; any thread.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace cotter {

// Path and text of each field that holds one value: {"wrench_calibrated", "2026-02-16"}, {"passes 1, setting, value",
// "65"}. In the record's order.
using FieldTexts = std::vector<std::pair<std::string, std::string>>;

// Of a record's JSON; none for an empty text. A text that is no JSON is one field called "record".
[[nodiscard]] FieldTexts field_texts(std::string_view json);
[[nodiscard]] const std::string* text_at(const FieldTexts& fields, std::string_view path);  // nullptr: not there

// What a person would call the record by: its component, joint, fluid or the like. Empty when it has none of these.
[[nodiscard]] std::string called_by(const FieldTexts& fields);

// One field that differs. Empty: it is not there.
struct FieldChange {
    std::string field;  // its path, as job.json calls it
    std::string before, now;
};
[[nodiscard]] std::vector<FieldChange> changed_fields(const FieldTexts& before, const FieldTexts& now);

}  // namespace cotter
