// The table of readings put together. The ranges are wide: they catch a wrong unit or point, never a worn part.
#include "core/trade/reading_spec.h"

#include <vector>

#include "core/trade/reading_parts.h"

namespace cotter {

std::span<const ReadingSpec> all_readings() {
    static const std::vector<ReadingSpec> all = [] {
        std::vector<ReadingSpec> out;
        for (const auto part : {brake_readings(), corner_readings(), whole_readings()})
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

}  // namespace cotter
