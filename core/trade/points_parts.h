// The parts of the points table, one a subject, in the order of PointId. For points.cpp; constant data.
#pragma once

#include "core/trade/reading_names.h"
#include "core/trade/rules.h"

namespace cotter {

[[nodiscard]] std::span<const Point> plate_points();
[[nodiscard]] std::span<const Point> wheel_points();
[[nodiscard]] std::span<const Point> hub_points();
[[nodiscard]] std::span<const Point> brake_points();
[[nodiscard]] std::span<const Point> disc_drum_points();
[[nodiscard]] std::span<const Point> air_points();
[[nodiscard]] std::span<const Point> actuation_points();
[[nodiscard]] std::span<const Point> coupling_points();
[[nodiscard]] std::span<const Point> light_points();
[[nodiscard]] std::span<const Point> running_points();

namespace rows {

constexpr auto kRead = Evidence::read;
constexpr auto kPartly = Evidence::partly;
constexpr auto kMemory = Evidence::memory;
constexpr auto kStop = Grade::do_not_tow;
constexpr auto kRepair = Grade::repair;
constexpr auto kWatch = Grade::watch;
constexpr auto kGood = Grade::serviceable;
using Names = std::string_view;

}  // namespace rows

}  // namespace cotter
