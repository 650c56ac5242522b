// A job's records sorted by place, in the order in which the report goes round the trailer. Pure; any thread.
#pragma once

#include <optional>
#include <vector>

#include "core/survey/job.h"

namespace cotter {

// What was recorded at one corner (both its wheels) or station. Points into the job.
struct PlaceRecords {
    Place place;
    std::vector<const Shot*> shots;
    std::vector<const Finding*> findings;
    std::vector<const Reading*> readings;
    std::vector<const Torque*> torques;
    std::vector<const Level*> levels;

    [[nodiscard]] bool empty() const;
    [[nodiscard]] std::optional<Grade> worst() const;
    [[nodiscard]] std::optional<Grade> worst_not_repaired() const;
    [[nodiscard]] std::size_t not_taken() const;  // readings, torques and levels without a value
};

// The trailer as a whole where it has records, every corner of the layout, other corners and stations with records.
[[nodiscard]] std::vector<PlaceRecords> by_place(const Job& job);

}  // namespace cotter
