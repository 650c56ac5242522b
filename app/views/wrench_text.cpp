// A wrench and the adapter on it as one text that people can read too. See torque_view.h.
#include <array>

#include <fmt/format.h>

#include "app/views/torque_view.h"

namespace cotter {

namespace {

constexpr std::string_view kMark = ", adapter ";

// "16 in" back into an amount.
std::optional<Amount> length_of(std::string_view text) {
    const auto space = text.rfind(' ');
    if (space == std::string_view::npos) return std::nullopt;
    for (const std::string_view ucum : {"[in_i]", "mm", "cm"}) {
        if (find_unit(ucum)->label != text.substr(space + 1)) continue;
        if (auto amount = make_amount(text.substr(0, space), ucum)) return *amount;
    }
    return std::nullopt;
}

// What stands between two marks; moves `text` behind the second.
std::string_view cut(std::string_view& text, std::string_view until) {
    const auto at = text.find(until);
    if (at == std::string_view::npos) return {};
    const std::string_view out = text.substr(0, at);
    text.remove_prefix(at + until.size());
    return out;
}

}  // namespace

std::string wrench_text(const std::string& id, const std::optional<Adapter>& adapter) {
    if (!adapter) return id;
    return fmt::format("{}{}{} beyond {} at {}°", id, kMark, adapter->extension.text(), adapter->handle.text(),
                       adapter->angle.text());
}

std::string wrench_id(const std::string& text) {
    return text.substr(0, text.find(kMark));
}

std::optional<Adapter> wrench_adapter(const std::string& text) {
    const auto at = text.find(kMark);
    if (at == std::string::npos) return std::nullopt;
    std::string_view rest = std::string_view(text).substr(at + kMark.size());
    const auto extension = length_of(cut(rest, " beyond "));
    const auto handle = length_of(cut(rest, " at "));
    const auto angle = Number::parse(cut(rest, "°"));
    if (!extension || !handle || !angle) return std::nullopt;
    return Adapter{*handle, *extension, *angle};
}

}  // namespace cotter
