// Levers, and the adapter in its present and its older form.
#include "core/work/wrench.h"

#include <array>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <string_view>

#include "core/work/amounts.h"

namespace cotter {

namespace {

// L / (L + E·cos angle); everything that makes it meaningless is refused.
Result<double> lever_share(const Adapter& a) {
    COTTER_TRY(need_quantity(a.wrench_length, Quantity::length, "the wrench's length"));
    COTTER_TRY(need_quantity(a.length, Quantity::length, "the adapter's length"));
    COTTER_TRY(need_quantity(a.angle, Quantity::angle, "the adapter's angle"));
    const double wrench = a.wrench_length.si(), adapter = a.length.si(), angle = a.angle.si();
    if (!(wrench > 0))
        return fail(Errc::refused, "the wrench's length is not above zero", a.wrench_length.text(),
                    "measure from the middle of the grip to the middle of the drive");
    if (adapter < 0) return fail(Errc::refused, "the adapter's length is below zero", a.length.text());
    constexpr double kHairsBreadth = 1e-9;  // 180° in radians is not pi to the last digit
    if (!(angle >= 0 && angle <= std::numbers::pi + kHairsBreadth))
        return fail(Errc::refused, "the adapter's angle is not between 0 and 180 degrees", a.angle.text(),
                    "0 is straight ahead, 90 square to the wrench, 180 folded back");
    const double lever = wrench + adapter * std::cos(angle);
    if (!(lever > 0.05 * wrench))
        return fail(Errc::refused, "the adapter is folded back as far as the grip, so the wrench turns nothing",
                    a.length.text(), "use a shorter adapter or set it at 90 degrees");
    return wrench / lever;
}

// ---- the older form ----

constexpr std::string_view kMark = ", adapter ";

// "16 in" as an amount, in the units that adapters were entered in.
std::optional<Amount> length_of(std::string_view text) {
    const auto space = text.rfind(' ');
    if (space == std::string_view::npos) return std::nullopt;
    for (const std::string_view ucum : {"[in_i]", "mm", "cm"}) {
        if (find_unit(ucum)->label != text.substr(space + 1)) continue;
        if (auto amount = make_amount(text.substr(0, space), ucum)) return *amount;
    }
    return std::nullopt;
}

// What stands before `until`; moves `text` behind it. Empty when it is not there.
std::string_view cut(std::string_view& text, std::string_view until) {
    const auto at = text.find(until);
    if (at == std::string_view::npos) return {};
    const std::string_view out = text.substr(0, at);
    text.remove_prefix(at + until.size());
    return out;
}

std::optional<Adapter> adapter_of_words(std::string_view words) {
    const auto length = length_of(cut(words, " beyond "));
    const auto wrench = length_of(cut(words, " at "));
    const auto angle = make_amount(cut(words, "°"), "deg");
    if (!length || !wrench || !angle || !words.empty()) return std::nullopt;
    return Adapter{*length, *wrench, *angle};
}

}  // namespace

Result<Amount> wrench_setting(const Amount& wanted, const Adapter& adapter) {
    COTTER_TRY(need_quantity(wanted, Quantity::torque, "the wanted torque"));
    COTTER_ASSIGN(const double share, lever_share(adapter));
    return amount_of(wanted.number.value() * share, wanted.unit, 1);
}

Result<Amount> torque_at_nut(const Amount& setting, const Adapter& adapter) {
    COTTER_TRY(need_quantity(setting, Quantity::torque, "the wrench setting"));
    COTTER_ASSIGN(const double share, lever_share(adapter));
    return amount_of(setting.number.value() / share, setting.unit, 1);
}

const Amount& at_nut(const Pass& pass) {
    return pass.at_nut ? *pass.at_nut : pass.setting;
}

Torque in_present_form(Torque torque) {
    const auto mark = torque.wrench.find(kMark);
    if (torque.adapter || mark == std::string::npos) return torque;
    const auto adapter = adapter_of_words(std::string_view(torque.wrench).substr(mark + kMark.size()));
    if (!adapter) return torque;
    std::vector<Pass> passes = torque.passes;
    for (Pass& pass : passes) {
        const auto set = wrench_setting(pass.setting, *adapter);
        if (!set) return torque;
        pass.at_nut = pass.setting;
        pass.setting = *set;
    }
    torque.passes = std::move(passes);
    torque.wrench.resize(mark);
    torque.adapter = adapter;
    return torque;
}

Result<Torque> with_adapter(Torque torque, const std::optional<Adapter>& adapter) {
    torque = in_present_form(std::move(torque));
    torque.adapter = adapter;
    if (adapter) COTTER_TRY(lever_share(*adapter));
    for (Pass& pass : torque.passes) {
        pass.at_nut = pass.setting;
        if (!adapter) continue;
        COTTER_ASSIGN(pass.at_nut, torque_at_nut(pass.setting, *adapter));
    }
    return torque;
}

std::string adapter_words(const Adapter& a) {
    const std::string angle = a.angle.unit == "deg" ? a.angle.number.text() + "°" : a.angle.text();
    return fmt::format("{} at {} on a wrench of {}", a.length.text(), angle, a.wrench_length.text());
}

}  // namespace cotter
