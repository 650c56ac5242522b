// The outlines. A hexagon's corners are cosines and sines of 60 degrees.
#include "core/base/sign.h"

#include <array>

namespace cotter {

namespace {

using P = SignPoint;

constexpr float kEdge = 2;

constexpr std::array kMiddle{P{12, 12}};
constexpr std::array kPin{P{1.5F, 12}, P{22.5F, 12}};
constexpr std::array kWasher{SignPart{kMiddle, true, kEdge, 7.5F}, SignPart{kPin, false, 4.4F, 0}};

constexpr std::array kWorn{P{4, 12}, P{20, 12}, P{20, 21}, P{4, 21}};
constexpr std::array kBlock{P{4, 3}, P{20, 3}, P{20, 21}, P{4, 21}};
constexpr std::array kLevel{P{4, 12}, P{20, 12}};
constexpr std::array kWornBlock{SignPart{kWorn, true, 0, 0}, SignPart{kBlock, false, kEdge, 0},
                                SignPart{kLevel, false, kEdge, 0}};

// Without its upper right piece, down to the middle. The fill is in two halves that overlap, so that no seam shows.
constexpr std::array kNut{P{22.5F, 12},      P{17.25F, 21.0933F}, P{6.75F, 21.0933F}, P{1.5F, 12},
                          P{6.75F, 2.9067F}, P{17.25F, 2.9067F},  P{12, 12}};
constexpr std::array kLowerHalf{kNut[0], kNut[1], kNut[2], kNut[3]};
constexpr std::array kLeftHalf{kNut[2], kNut[3], kNut[4], kNut[5]};
constexpr std::array kBrokenNut{SignPart{kLowerHalf, true, 0, 0}, SignPart{kLeftHalf, true, 0, 0},
                                SignPart{kNut, false, kEdge, 0}};

constexpr std::array kLeft{P{1.5F, 3}, P{10.5F, 12}, P{1.5F, 21}};
constexpr std::array kRight{P{22.5F, 21}, P{13.5F, 12}, P{22.5F, 3}};
constexpr std::array kApart{SignPart{kLeft, true, kEdge, 0}, SignPart{kRight, true, kEdge, 0}};

}  // namespace

std::span<const SignPart> parts_of(Sign sign) {
    switch (sign) {
        case Sign::washer:
            return kWasher;
        case Sign::worn_block:
            return kWornBlock;
        case Sign::broken_nut:
            return kBrokenNut;
        case Sign::apart:
            break;
    }
    return kApart;
}

}  // namespace cotter
