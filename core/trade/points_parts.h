// The parts of the points table, one a subject, in the order of PointId. For points.cpp; constant data.
#pragma once

#include "core/trade/reading_names.h"
#include "core/trade/rules.h"

namespace cotter {

[[nodiscard]] std::span<const TradePoint> plate_points();
[[nodiscard]] std::span<const TradePoint> wheel_points();
[[nodiscard]] std::span<const TradePoint> hub_points();
[[nodiscard]] std::span<const TradePoint> brake_points();
[[nodiscard]] std::span<const TradePoint> disc_drum_points();
[[nodiscard]] std::span<const TradePoint> air_points();
[[nodiscard]] std::span<const TradePoint> actuation_points();
[[nodiscard]] std::span<const TradePoint> coupling_points();
[[nodiscard]] std::span<const TradePoint> light_points();
[[nodiscard]] std::span<const TradePoint> running_points();

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
