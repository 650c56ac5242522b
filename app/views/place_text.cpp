// See place_text.h.
#include "app/views/place_text.h"

#include "app/views/chrome.h"

namespace cotter {

namespace {

constexpr std::string_view kAxle = "axle", kAxleFirst = "Axle";

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// The length of a corner's name at the start of `text`, and the corner: a code, or the words "axle 1 left".
struct Named {
    std::size_t length = 0;
    Place place;
};

Named name_at(std::string_view text) {
    if (!text.starts_with(kAxle) && !text.starts_with(kAxleFirst)) return {};
    const bool spaced = text.size() > kAxle.size() && text[kAxle.size()] == ' ';
    std::size_t at = kAxle.size() + (spaced ? 1 : 0);
    if (at + 1 >= text.size() || text[at] < '1' || text[at] > '4' || text[at + 1] != (spaced ? ' ' : '-')) return {};
    const int axle = text[at] - '0';
    at += 2;
    for (const Side side : {Side::left, Side::right}) {
        if (!text.substr(at).starts_with(name_of(side))) continue;
        Named out{at + name_of(side).size(), Place::corner(axle, side)};
        for (const Wheel wheel : {Wheel::inner, Wheel::outer})
            if (const std::string code = "-" + std::string(name_of(wheel));
                !spaced && text.substr(out.length).starts_with(code)) {
                out.length += code.size();
                out.place.wheel = wheel;
            }
        const bool goes_on = out.length < text.size() && is_letter(text[out.length]);
        return goes_on ? Named{} : out;
    }
    return {};
}

}  // namespace

std::string in_words(std::string_view text, SideWords words) {
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const bool inside = i > 0 && is_letter(text[i - 1]);
        const Named named = inside ? Named{} : name_at(text.substr(i));
        if (named.length == 0) {
            out += text[i++];
            continue;
        }
        std::string place = place_words(named.place, words);
        if (i > 0) place[0] = text[i];
        out += place;
        i += named.length;
    }
    return out;
}

}  // namespace cotter
