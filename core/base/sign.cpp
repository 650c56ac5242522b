// The drawings. Shapes that do not curve inwards are put together from pieces that overlap, so that no seam shows.
#include "core/base/sign.h"

#include <array>

namespace cotter {

namespace sign_shapes {

using P = SignPoint;
using enum SignInk;

// Moves and stretches a drawing at compile time, for its twin on the road.
template <std::size_t N>
constexpr std::array<P, N> moved(std::array<P, N> points, float wide, float high, float right, float down) {
    for (P& p : points) p = {p.x * wide + right, p.y * high + down};
    return points;
}

template <std::size_t N>
constexpr std::array<P, N> raised(const std::array<P, N>& points) {
    return moved(points, 1, 1, 0, -1);
}

// A plate with two corners cut off, as the plates on our screens have them.
constexpr std::array kPlate{P{1.2F, 7.5F},   P{18.8F, 7.5F}, P{22.8F, 11.5F},
                            P{22.8F, 16.5F}, P{5.2F, 16.5F}, P{1.2F, 12.5F}};
constexpr std::array kCore{P{4.2F, 10.3F},  P{17.6F, 10.3F}, P{19.9F, 12.6F},
                           P{19.9F, 13.7F}, P{6.4F, 13.7F},  P{4.2F, 11.5F}};
constexpr std::array kWhole{SignPart{tint, kCore}, SignPart{line, kPlate, 1.6F}};

constexpr std::array kChip{P{2.2F, 4.6F},  P{5.6F, 4.6F},   P{9.4F, 12}, P{13.2F, 4.6F}, P{18, 4.6F},
                           P{21.8F, 8.4F}, P{21.8F, 19.4F}, P{6, 19.4F}, P{2.2F, 15.6F}};
constexpr std::array kChipFill{P{2.2F, 12}, P{21.8F, 12}, P{21.8F, 19.4F}, P{6, 19.4F}, P{2.2F, 15.6F}};
constexpr std::array kChipped{SignPart{tint, kChipFill}, SignPart{line, kChip, 2}};

// Two halves of a plate, the right one lower; the crack has a step in it.
constexpr std::array kLeft{P{2, 2.4F},     P{11.4F, 2.4F}, P{9.4F, 8.4F}, P{11.2F, 10},
                           P{7.8F, 16.8F}, P{4.8F, 16.8F}, P{2, 14}};
constexpr std::array kLeftTop{kLeft[0], kLeft[1], kLeft[2], P{8.9F, 9.6F}, P{2, 14}};
constexpr std::array kLeftFoot{P{2, 8.4F}, kLeft[2], kLeft[3], kLeft[4], kLeft[5], kLeft[6]};
constexpr std::array kRight{P{16, 7},        P{19.2F, 7},     P{22, 9.8F},    P{22, 21.6F},
                            P{12.6F, 21.6F}, P{15.4F, 15.2F}, P{13.6F, 13.6F}};
constexpr std::array kRightTop{kRight[0], kRight[1], kRight[2], P{22, 15.2F}, kRight[5], kRight[6]};
constexpr std::array kRightFoot{kRight[2], kRight[3], kRight[4], kRight[5], P{16.2F, 13.4F}};
constexpr std::array kSheared{SignPart{tint, kLeftTop},   SignPart{tint, kLeftFoot},   SignPart{tint, kRightTop},
                              SignPart{tint, kRightFoot}, SignPart{line, kLeft, 2.3F}, SignPart{line, kRight, 2.3F}};

// A slab with three unequal points above and below, and a small one like it within, in its colour.
struct Slab {
    std::array<P, 8> body;
    std::array<std::array<P, 4>, 6> points;
};
constexpr Slab kSlab{{P{0.6F, 7.6F}, P{7.8F, 6}, P{15.6F, 5.8F}, P{23.4F, 8}, P{23.4F, 16.4F}, P{16.2F, 18},
                      P{8.4F, 18.2F}, P{0.6F, 16}},
                     {{{P{0.6F, 7.6F}, P{3.6F, 1.4F}, P{7.8F, 6}, P{4.2F, 12}},
                       {P{7.8F, 6}, P{12.2F, 0.6F}, P{15.6F, 5.8F}, P{12, 12}},
                       {P{15.6F, 5.8F}, P{20.8F, 1.2F}, P{23.4F, 8}, P{20, 12}},
                       {P{23.4F, 16.4F}, P{20.2F, 22.4F}, P{16.2F, 18}, P{20, 12}},
                       {P{16.2F, 18}, P{11.8F, 23.4F}, P{8.4F, 18.2F}, P{12, 12}},
                       {P{8.4F, 18.2F}, P{3.4F, 22.8F}, P{0.6F, 16}, P{4.2F, 12}}}}};

constexpr Slab moved(Slab slab, float wide, float high, float right, float down) {
    slab.body = moved(slab.body, wide, high, right, down);
    for (auto& point : slab.points) point = moved(point, wide, high, right, down);
    return slab;
}

constexpr std::array<SignPart, 14> shattered(const Slab& slab, const Slab& core) {
    const auto& a = slab.points;
    const auto& b = core.points;
    return {
        SignPart{ink, slab.body}, {ink, a[0]},  {ink, a[1]},  {ink, a[2]},  {ink, a[3]},  {ink, a[4]},  {ink, a[5]},
        {tint, core.body},        {tint, b[0]}, {tint, b[1]}, {tint, b[2]}, {tint, b[3]}, {tint, b[4]}, {tint, b[5]}};
}

constexpr Slab kSlabCore = moved(kSlab, 0.5F, 0.46F, 6, 6.5F);
constexpr auto kShattered = shattered(kSlab, kSlabCore);

constexpr std::array kRoad{P{0.8F, 22.2F}, P{23.2F, 22.2F}};

constexpr auto kRoadPlate = raised(kPlate);
constexpr auto kRoadCore = raised(kCore);
constexpr std::array kWholeOnRoad{SignPart{tint, kRoadCore}, SignPart{line, kRoadPlate, 1.5F},
                                  SignPart{line, kRoad, 1.5F}};

constexpr std::array kSeen{P{3.4F, 3}, P{17, 3}, P{20.6F, 6.6F}, P{20.6F, 17.8F}, P{7, 17.8F}, P{3.4F, 14.2F}};
constexpr std::array kShadow{P{16.6F, 3}, P{17, 3}, P{20.6F, 6.6F}, P{20.6F, 17.8F}, P{13.8F, 17.8F}};
constexpr std::array kShaded{SignPart{ink, kShadow}, SignPart{line, kSeen, 1.7F}, SignPart{line, kRoad, 1.7F}};

constexpr std::array<P, 4> bit(float x, float y, float side) {
    return {P{x, y}, P{x + side, y}, P{x + side, y + side}, P{x, y + side}};
}
constexpr std::array kHalf{P{1.6F, 2.5F}, P{10.6F, 2.5F}, P{10.6F, 17.8F}, P{5, 17.8F}, P{1.6F, 14.4F}};
constexpr std::array kBits{bit(13, 2.5F, 3.2F), bit(13, 8.5F, 3.2F), bit(13, 14.6F, 3.2F), bit(19, 5.6F, 2.8F),
                           bit(19, 11.9F, 2.8F)};
constexpr std::array kRoadNear{P{0.8F, 22.2F}, P{7.4F, 22.2F}};
constexpr std::array kRoadOn{P{11, 22.2F}, P{14.8F, 22.2F}};
constexpr std::array kRoadOff{P{18.8F, 22.2F}, P{21.6F, 22.2F}};
constexpr std::array kFading{SignPart{ink, kHalf},         SignPart{ink, kBits[0]},    SignPart{ink, kBits[1]},
                             SignPart{ink, kBits[2]},      SignPart{ink, kBits[3]},    SignPart{ink, kBits[4]},
                             SignPart{line, kRoadNear, 2}, SignPart{line, kRoadOn, 2}, SignPart{line, kRoadOff, 2}};

template <std::size_t N>
constexpr std::array<P, N> half_on_road(const std::array<P, N>& points) {
    return moved(points, 0.86F, 0.86F, 1.7F, -0.7F);
}
constexpr auto kRoadLeft = half_on_road(kLeft);
constexpr auto kRoadLeftTop = half_on_road(kLeftTop);
constexpr auto kRoadLeftFoot = half_on_road(kLeftFoot);
constexpr auto kRoadRight = half_on_road(kRight);
constexpr auto kRoadRightTop = half_on_road(kRightTop);
constexpr auto kRoadRightFoot = half_on_road(kRightFoot);
constexpr std::array kShearedOnRoad{SignPart{tint, kRoadLeftTop},    SignPart{tint, kRoadLeftFoot},
                                    SignPart{tint, kRoadRightTop},   SignPart{tint, kRoadRightFoot},
                                    SignPart{line, kRoadLeft, 2.1F}, SignPart{line, kRoadRight, 2.1F},
                                    SignPart{line, kRoad, 2.2F}};

constexpr Slab kRoadSlab = moved(kSlab, 1, 0.86F, 0, 0);
constexpr Slab kRoadSlabCore = moved(kSlabCore, 1, 0.86F, 0, 0);
constexpr std::array kBarred{SignPart{line, kRoad, 2.8F}};

template <std::size_t A, std::size_t B>
constexpr std::array<SignPart, A + B> with(const std::array<SignPart, A>& a, const std::array<SignPart, B>& b) {
    std::array<SignPart, A + B> out{};
    for (std::size_t i = 0; i < A; ++i) out[i] = a[i];
    for (std::size_t i = 0; i < B; ++i) out[A + i] = b[i];
    return out;
}
constexpr auto kShatteredOnRoad = with(shattered(kRoadSlab, kRoadSlabCore), kBarred);

}  // namespace sign_shapes

std::span<const SignPart> parts_of(Sign sign) {
    using namespace sign_shapes;
    switch (sign) {
        case Sign::whole:
            return kWhole;
        case Sign::chipped:
            return kChipped;
        case Sign::sheared:
            return kSheared;
        case Sign::whole_on_road:
            return kWholeOnRoad;
        case Sign::shaded_on_road:
            return kShaded;
        case Sign::fading_on_road:
            return kFading;
        case Sign::sheared_on_road:
            return kShearedOnRoad;
        case Sign::shattered_on_road:
            return kShatteredOnRoad;
        case Sign::shattered:
            break;
    }
    return kShattered;
}

}  // namespace cotter
