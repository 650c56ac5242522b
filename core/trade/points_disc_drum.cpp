// Disc, drum, electric and overrun brakes.
#include <array>

#include "core/trade/points_parts.h"

namespace cotter {

namespace {

using namespace rows;
using enum PointId;

constexpr std::array<Names, 2> kPad{what::pad_thickness, what::pad_when_new};
constexpr std::array<Names, 4> kRotor{what::rotor_thickness, what::rotor_cut, what::rotor_machine_to,
                                      what::rotor_variation};
constexpr std::array<Names, 1> kRunout{what::rotor_runout};
constexpr std::array<Names, 1> kShoe{what::lining_thickness};
constexpr std::array<Names, 2> kDrum{what::drum_diameter, what::drum_out_of_round};
constexpr std::array<Names, 2> kAmps{what::magnet_current, what::magnet_volts};
constexpr std::array<Names, 1> kOhms{what::magnet_resistance};

constexpr std::array kPadShot{Slot::lining, Slot::caliper, Slot::guide_pin};
constexpr std::array kRotorShot{Slot::rotor_face, Slot::rotor_edge};
constexpr std::array kShoeShot{Slot::lining};
constexpr std::array kDrumShot{Slot::brake};
constexpr std::array kHose{Slot::hose_line};
constexpr std::array kWire{Slot::wiring};

constexpr Law kThickness{"49 CFR 393.47(d)(2)", kRead};
constexpr Law kPractice{"common practice", kMemory};
constexpr Law kLoose{"49 CFR part 396, Appendix A, 1a(6)(a)", kRead};
constexpr Law kSoaked{"49 CFR part 396, Appendix A, 1a(6)(b)", kRead};
constexpr Law kCrack{"49 CFR part 396, Appendix A, 1c", kPartly};
constexpr Law kHoses{"49 CFR part 396, Appendix A, 1d, 1e", kPartly};
constexpr Law kFluid{"49 CFR part 396, Appendix A, 1j", kMemory};

constexpr std::array kPadList{
    LookEntry{"loose", "Friction material loose on its plate", kStop, kLoose},
    LookEntry{"soaked", "Oil, grease or brake fluid in the pad", kStop, kSoaked},
};
constexpr std::array kRotorList{
    LookEntry{"crack", "A crack that reaches the edge", kStop, kCrack},
    LookEntry{"piece", "A piece is missing, or about to fall off", kStop, kCrack},
    LookEntry{"checks", "Short heat checks", kWatch, kPractice},
};
constexpr std::array kShoeList{
    LookEntry{"loose", "Lining loose on its shoe", kStop, kLoose},
    LookEntry{"soaked", "Oil, grease or brake fluid in the lining", kStop, kSoaked},
    LookEntry{"taper", "Worn more at one edge", kWatch, kPractice},
};
constexpr std::array kDrumList{
    LookEntry{"crack", "A crack through the drum", kStop, kCrack},
    LookEntry{"piece", "A piece is missing, or about to fall off", kStop, kCrack},
    LookEntry{"checks", "Short heat checks", kWatch, kPractice},
};
constexpr std::array kCornerList{
    LookEntry{"leak", "Caliper, cylinder, hose or fitting leaks", kStop, kFluid},
    LookEntry{"bulge", "The hose swells under pressure", kStop, kHoses},
    LookEntry{"fabric", "The hose is rubbed or cut to the fabric", kStop, kHoses},
    LookEntry{"line", "The line is cracked, crimped or heat-damaged", kStop, kHoses},
    LookEntry{"seized", "The piston or a slide is seized", kRepair, kPractice},
};
constexpr std::array kMagnetList{
    LookEntry{"open", "Open circuit", kStop},
    LookEntry{"short", "Short circuit", kRepair},
    LookEntry{"worn", "The face is worn to the indicator, or unevenly", kRepair},
    LookEntry{"lead", "The lead is chafed or its splice is not sealed", kRepair},
};
constexpr std::array kOverrunList{
    LookEntry{"lever-none", "This wheel does not brake by the hand lever", kStop},
    LookEntry{"push-none", "This wheel does not brake when the coupling is pushed", kStop},
    LookEntry{"frayed", "A cable is frayed, or a rod is bent or off", kRepair},
    LookEntry{"lever-end", "The hand lever goes to its end", kRepair},
    LookEntry{"compensator", "The compensator bar stands crooked", kRepair},
    LookEntry{"reverse", "The brakes do not let go when it is backed up", kRepair},
};
constexpr std::array kAdjustList{
    LookEntry{"manual", "Manual adjuster", kGood},
    LookEntry{"automatic", "Self-adjusting", kGood},
    LookEntry{"seized", "The adjuster is seized", kRepair},
};

constexpr std::array kRows{
    TradePoint{.id = disc_pad,
               .title = "Pad thickness",
               .spot = Spot::corner,
               .applies = applies::hydraulic_disc,
               .reach = Reach::wheel_on,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = kThickness,
               .ask = "Is a pad loose on its plate, or oil or fluid in it?",
               .list = ListKind::faults,
               .entries = kPadList,
               .readings = kPad,
               .slots = kPadShot},
    TradePoint{.id = disc_rotor,
               .title = "Rotor",
               .spot = Spot::corner,
               .applies = applies::any_disc,
               .reach = Reach::wheel_off,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.47(g)", kMemory},
               .maker = true,
               .ask = "Is the rotor cracked, or is a piece of it missing?",
               .list = ListKind::faults,
               .entries = kRotorList,
               .readings = kRotor,
               .slots = kRotorShot},
    TradePoint{.id = disc_runout,
               .title = "Rotor runout",
               .spot = Spot::corner,
               .applies = applies::any_disc,
               .reach = Reach::wheel_off,
               .importance = Importance::wanted,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .maker = true,
               .readings = kRunout},
    TradePoint{.id = drum_shoe,
               .title = "Shoe lining thickness",
               .spot = Spot::corner,
               .applies = applies::shoe_brake,
               .reach = Reach::wheel_off,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = kThickness,
               .ask = "Is a lining loose on its shoe, or oil, grease or fluid in it?",
               .list = ListKind::faults,
               .entries = kShoeList,
               .readings = kShoe,
               .slots = kShoeShot},
    TradePoint{.id = drum_drum,
               .title = "Drum",
               .spot = Spot::corner,
               .applies = applies::any_drum,
               .reach = Reach::wheel_off,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.47(g)", kMemory},
               .maker = true,
               .ask = "Is the drum cracked, or is a piece of it missing?",
               .list = ListKind::faults,
               .entries = kDrumList,
               .readings = kDrum,
               .slots = kDrumShot},
    TradePoint{.id = hyd_corner,
               .title = "Caliper or cylinder, hose and line",
               .spot = Spot::corner,
               .applies = applies::hydraulic_brake,
               .reach = Reach::wheel_on,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.45", kMemory},
               .ask = "Is anything wet, seized, swollen or rubbed through?",
               .list = ListKind::faults,
               .entries = kCornerList,
               .slots = kHose},
    TradePoint{.id = elec_amps,
               .title = "Magnet current at full demand",
               .spot = Spot::corner,
               .applies = applies::electric_brake,
               .reach = Reach::wheel_on,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = {"49 CFR part 396, Appendix A, 1i(1)", kMemory},
               .readings = kAmps},
    TradePoint{.id = elec_mag,
               .title = "Magnet resistance, face and lead",
               .spot = Spot::corner,
               .applies = applies::electric_brake,
               .reach = Reach::wheel_off,
               .importance = Importance::wanted,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .maker = true,
               .ask = "Is the magnet worn, open or shorted, or its lead damaged?",
               .list = ListKind::faults,
               .entries = kMagnetList,
               .readings = kOhms,
               .slots = kWire},
    TradePoint{.id = ovr_line,
               .title = "Overrun rods and cables",
               .spot = Spot::corner,
               .applies = applies::overrun_brake,
               .reach = Reach::wheel_on,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .ask = "By hand lever and by push: does this wheel fail to brake, or is a rod or cable damaged?",
               .list = ListKind::faults,
               .entries = kOverrunList},
    TradePoint{.id = brk_adjust,
               .title = "Brake adjuster",
               .spot = Spot::corner,
               .applies = applies::any_drum,
               .reach = Reach::wheel_off,
               .importance = Importance::wanted,
               .keeps = Keeps::quarter,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.53(b)", kRead},
               .maker = true,
               .ask = "What kind of adjuster is it?",
               .list = ListKind::choice,
               .entries = kAdjustList},
};

}  // namespace

std::span<const TradePoint> disc_drum_points() {
    return kRows;
}

}  // namespace cotter
