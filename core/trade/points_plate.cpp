// Plate and layout: what the trailer is. These decide which other points apply.
#include <array>

#include "core/trade/points_parts.h"

namespace cotter {

namespace {

using namespace rows;
using enum PointId;

constexpr std::array kPlate{Slot::data_plate};
constexpr std::array kWhole{Slot::whole};
constexpr std::array kWheel{Slot::wheel_on, Slot::nuts};
constexpr std::array kCoupler{Slot::coupler};

constexpr Law kLabel{"49 CFR 567.4", kPartly};

constexpr std::array kRows{
    TradePoint{.id = plate_id,
               .title = "VIN, unit, license plate, maker, model",
               .applies = applies::always,
               .importance = Importance::wanted,
               .keeps = Keeps::plate,
               .law = {"49 CFR 565.15", kRead},
               .slots = kPlate,
               .plate = true},
    TradePoint{.id = plate_built,
               .title = "Build month and model year",
               .applies = applies::always,
               .importance = Importance::wanted,
               .keeps = Keeps::plate,
               .law = kLabel,
               .slots = kPlate,
               .plate = true},
    TradePoint{.id = plate_gvwr,
               .title = "GVWR",
               .applies = applies::always,
               .keeps = Keeps::plate,
               .law = kLabel,
               .slots = kPlate,
               .plate = true},
    TradePoint{.id = plate_gawr,
               .title = "GAWR",
               .spot = Spot::axle,
               .applies = applies::always,
               .keeps = Keeps::plate,
               .law = kLabel,
               .plate = true},
    TradePoint{.id = plate_axle,
               .title = "Axle tag: maker and model",
               .spot = Spot::axle,
               .applies = applies::always,
               .reach = Reach::wheel_on,
               .importance = Importance::wanted,
               .keeps = Keeps::plate,
               .plate = true},
    TradePoint{.id = plate_tire,
               .title = "Tire size and cold pressure on the placard",
               .spot = Spot::axle,
               .applies = applies::always,
               .keeps = Keeps::plate,
               .danger = Danger::tires,
               .law = {"49 CFR 571.110 S4.3.5", kPartly},
               .plate = true},
    TradePoint{.id = plate_axles,
               .title = "Wheels, brake, hub, fastening and suspension of each axle",
               .spot = Spot::axle,
               .applies = applies::always,
               .keeps = Keeps::plate,
               .danger = Danger::brakes,
               .slots = kWheel,
               .plate = true},
    TradePoint{.id = plate_act,
               .title = "How the brakes are applied",
               .applies = applies::always,
               .keeps = Keeps::plate,
               .danger = Danger::brakes,
               .slots = kWhole,
               .plate = true},
    TradePoint{.id = plate_cpl,
               .title = "Coupler kind",
               .spot = Spot::drawbar,
               .applies = applies::always,
               .keeps = Keeps::plate,
               .danger = Danger::coupling,
               .slots = kCoupler,
               .plate = true},
    TradePoint{.id = use_duty,
               .title = "What it is used for, and where",
               .applies = applies::always,
               .importance = Importance::wanted,
               .keeps = Keeps::visit,
               .law = {"49 CFR 390.5", kRead},
               .slots = kWhole,
               .plate = true},
    TradePoint{.id = use_tow,
               .title = "The tow vehicle's ratings",
               .applies = applies::always,
               .importance = Importance::wanted,
               .essential_when = applies::surge,
               .keeps = Keeps::trip,
               .danger = Danger::coupling,
               .law = {"49 CFR 393.48(d)", kRead},
               .plate = true},
};

}  // namespace

std::span<const TradePoint> plate_points() {
    return kRows;
}

}  // namespace cotter
