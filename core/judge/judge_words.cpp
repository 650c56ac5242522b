// Texts.
#include "core/judge/judge_words.h"

#include <fmt/format.h>

namespace cotter::words {

std::string source(SourceKind kind, const std::string& text) {
    switch (kind) {
        case SourceKind::law:
            return "law: " + text;
        case SourceKind::state_law:
            return "a state's rule: " + text;
        case SourceKind::stamped:
            return "stamped on the part: " + text;
        case SourceKind::maker:
            return "maker: " + text;
        case SourceKind::physics:
            return "by definition: " + text;
        case SourceKind::shop:
            return fmt::format("shop: {}; {}", text, kConfirm);
        case SourceKind::practice:
            break;
    }
    return fmt::format("common practice: {}; {}", text, kConfirm);
}

std::string person(const std::string& name) {
    return "seen and graded by " + (name.empty() ? std::string("the technician") : name);
}

std::string on_the_casting() {
    return "the casting, see its photo";
}

std::string place(const Place& p) {
    if (!p.is_corner()) return p.station == Station::trailer ? "the trailer" : std::string(name_of(p.station));
    const std::string corner = fmt::format("axle {} {}", p.axle, name_of(p.side));
    return p.wheel == Wheel::only ? corner : fmt::format("{}, {} wheel", corner, name_of(p.wheel));
}

std::string against(Stand stand, const std::string& reading, const Limit& limit) {
    const std::string figure = fmt::format("{} {}", name_of(limit.bound), limit.value.text());
    if (stand == Stand::beyond && limit.mark == LimitMark::c) return fmt::format("{}; usual is {}", reading, figure);
    if (stand == Stand::beyond) return fmt::format("{}, but it must be {}", reading, figure);
    if (stand == Stand::close) return fmt::format("{}, {} wanted: within one step of the instrument", reading, figure);
    return fmt::format("{}, {} wanted", reading, figure);
}

std::string not_taken(Taken taken, const std::string& reason) {
    return fmt::format("{}: {}", name_of(taken), reason);
}

std::string not_measured() {
    return "not measured";
}

std::string after_repair(std::string_view component) {
    return fmt::format("a part of the {} was repaired or replaced and not measured again", component);
}

std::string number(double value, int digits) {
    std::string text = fmt::format("{:.{}f}", value, digits);
    if (text.find_first_not_of("-0.") == std::string::npos && text.front() == '-') text.erase(0, 1);
    return text;
}

std::string pounds(double kg) {
    return number(kg / kPound, 0) + " lb";
}

}  // namespace cotter::words
