// See theme.h. tests/app/theme_test.cpp holds every pair to its contrast, for usual and colour-blind eyes.
#include "app/ui/theme.h"

#include "core/base/sign.h"

namespace cotter {

namespace {

// The grades are the same in both looks, so that one learns them once: the colors of their signs, which get darker
// with gravity.
constexpr Paint kServiceable{tint_of(Sign::whole), rgb(0x13201F), rgb(0x13201F)};
constexpr Paint kWatch{tint_of(Sign::chipped), rgb(0x14201F), rgb(0x5C4700)};
constexpr Paint kRepair{tint_of(Sign::sheared), rgb(0x160C05), rgb(0x7A2E00)};
constexpr Paint kDoNotTow{tint_of(Sign::shattered), rgb(0xFFFFFF), tint_of(Sign::shattered)};

constexpr Theme kSun{
    ThemeKind::sun,
    {{
        {rgb(0xF3F0E6), rgb(0x13201F), rgb(0x5B6563)},  // page
        {rgb(0xFFFFFF), rgb(0x13201F), rgb(0x5B6563)},  // plate
        {rgb(0xE2E6DE), rgb(0x13201F), rgb(0x13201F)},  // bar
        {rgb(0x00484C), rgb(0xFFFFFF), rgb(0x00484C)},  // strong
        {rgb(0xFFFFFF), rgb(0x13201F), rgb(0x13201F)},  // quiet
        {rgb(0xCDE7E2), rgb(0x0B1F1E), rgb(0x00484C)},  // chosen
        {rgb(0xE6E4DC), rgb(0x3A4442), rgb(0x6B7573)},  // off
        {rgb(0xFFEFC7), rgb(0x1E1503), rgb(0x6A4A00)},  // caution
        {rgb(0xFFFFFF), rgb(0x7A0A1E), rgb(0x7A0A1E)},  // danger
        kServiceable,
        kWatch,
        kRepair,
        kDoNotTow,
    }},
    rgb(0x333F3D),
    rgb(0xB84A00),
    rgb(0x0A1211),
};

constexpr Theme kLantern{
    ThemeKind::lantern,
    {{
        {rgb(0x0D1415), rgb(0xF4F1E8), rgb(0x84908D)},  // page
        {rgb(0x182224), rgb(0xF4F1E8), rgb(0x84908D)},  // plate
        {rgb(0x1E2B2D), rgb(0xF4F1E8), rgb(0xAEB9B6)},  // bar
        {rgb(0x92E0D6), rgb(0x05201F), rgb(0x92E0D6)},  // strong
        {rgb(0x182224), rgb(0xF4F1E8), rgb(0xF4F1E8)},  // quiet
        {rgb(0x163A3C), rgb(0xFFFFFF), rgb(0x92E0D6)},  // chosen
        {rgb(0x141B1C), rgb(0xB9C2BF), rgb(0x75807D)},  // off
        {rgb(0x382907), rgb(0xFFF0D0), rgb(0xFFCF5C)},  // caution
        {rgb(0x182224), rgb(0xFFB9BF), rgb(0xFFB9BF)},  // danger
        kServiceable,
        kWatch,
        kRepair,
        kDoNotTow,
    }},
    rgb(0xC6CECB),
    rgb(0xFFA04D),
    rgb(0x000000),
};

}  // namespace

const Theme& theme_of(ThemeKind kind) {
    return kind == ThemeKind::sun ? kSun : kLantern;
}

Sizes sizes_of(TypeSize size) {
    constexpr std::array kFactors{1.0F, 1.5F, 2.0F};
    return {kFactors[static_cast<std::size_t>(size)]};
}

}  // namespace cotter
