// The table of readings put together. The ranges are wide: they catch a wrong unit or point, never a worn part.
#include "core/trade/reading_spec.h"

#include <algorithm>
#include <string>
#include <vector>

#include "core/base/text.h"
#include "core/trade/reading_parts.h"

namespace cotter {

std::span<const ReadingSpec> all_readings() {
    static const std::vector<ReadingSpec> all = [] {
        std::vector<ReadingSpec> out;
        for (const auto part : {wheel_readings(), brake_readings(), system_readings(), whole_readings()})
            out.insert(out.end(), part.begin(), part.end());
        return out;
    }();
    return all;
}

const ReadingSpec* reading_spec(std::string_view name) {
    for (const ReadingSpec& spec : all_readings())
        if (spec.name == name) return &spec;
    const bool hub = name.starts_with(what::hub_temperature) && name.size() > what::hub_temperature.size() &&
                     name[what::hub_temperature.size()] == ' ';
    return hub ? reading_spec(what::hub_temperature) : nullptr;
}

std::string_view component_of(std::string_view name) {
    const ReadingSpec* spec = reading_spec(name);
    return spec == nullptr ? "other" : spec->component;
}

bool ended_by_repair(const ReadingSpec& spec, std::string_view component) {
    const std::string named = ascii_lower(component);
    if (named == "hub cap" || named == "grease cap" || named == "hub oil") return false;  // the bearing stays as it is
    std::string_view words = spec.renewed_by;
    while (!words.empty()) {
        const auto space = std::min(words.find(' '), words.size());
        if (named.find(ascii_lower(words.substr(0, space))) != std::string::npos) return true;
        words.remove_prefix(std::min(space + 1, words.size()));
    }
    return false;
}

}  // namespace cotter
