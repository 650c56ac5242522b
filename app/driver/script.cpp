// See script.h.
#include "app/driver/script.h"

#include <array>
#include <optional>

#include <fmt/format.h>

#include "core/base/decimal.h"

namespace cotter {

namespace {

struct Token {
    std::string text;
    bool quoted = false;
};

// The words of a line; nullopt when a quote is not closed.
std::optional<std::vector<Token>> tokens_of(std::string_view line) {
    std::vector<Token> tokens;
    std::size_t at = 0;
    while (at < line.size()) {
        if (line[at] == ' ' || line[at] == '\t' || line[at] == '\r') {
            ++at;
        } else if (line[at] == '#') {
            break;
        } else if (line[at] == '"') {
            std::string text;
            for (++at; at < line.size() && line[at] != '"'; ++at) {
                if (line[at] == '\\' && at + 1 < line.size()) ++at;
                text += line[at];
            }
            if (at++ >= line.size()) return std::nullopt;
            tokens.push_back({text, true});
        } else {
            const std::size_t end = std::min(line.find_first_of(" \t\r\"", at), line.size());
            tokens.push_back({std::string(line.substr(at, end - at)), false});
            at = end;
        }
    }
    return tokens;
}

std::optional<float> number(std::string_view text) {
    const std::optional<double> value = read_double(text);
    if (!value || *value < -1e6 || *value > 1e6) return std::nullopt;
    return static_cast<float>(*value);
}

// "12,34" or "412x915".
std::optional<Point> pair_of(std::string_view text, char between) {
    const auto at = text.find(between);
    if (at == std::string_view::npos) return std::nullopt;
    const auto x = number(text.substr(0, at));
    const auto y = number(text.substr(at + 1));
    return x && y ? std::optional(Point{*x, *y}) : std::nullopt;
}

class Reader {
public:
    explicit Reader(std::vector<Token> tokens) : tokens_(std::move(tokens)) {}

    bool quoted(std::string& out) {
        if (!more() || !tokens_[at_].quoted) return false;
        out = tokens_[at_++].text;
        return true;
    }
    bool word(std::string& out) {
        if (!more() || tokens_[at_].quoted) return false;
        out = tokens_[at_++].text;
        return true;
    }
    bool point(Point& out, char between = ',') {
        const auto pair = more() && !tokens_[at_].quoted ? pair_of(tokens_[at_].text, between) : std::nullopt;
        if (pair) out = *pair, ++at_;
        return pair.has_value();
    }
    bool value(float& out) {
        const auto read = more() && !tokens_[at_].quoted ? number(tokens_[at_].text) : std::nullopt;
        if (read) out = *read, ++at_;
        return read.has_value();
    }
    // A count that may be left out; false only when something else stands there.
    bool maybe_count(int& out) {
        float read = 0;
        if (!more()) return true;
        if (!value(read) || read < 1 || read > 600000) return false;
        out = static_cast<int>(read);
        return true;
    }
    bool place(ScriptCommand& out) { return quoted(out.text) || point(out.from); }
    // A part of the target `label`: 0,0 is its top left, 1,1 its bottom right.
    bool part(const std::string& label, Point& out, bool& parts) {
        const auto in_0_1 = [](float v) { return v >= 0 && v <= 1; };
        const std::size_t before = at_;
        parts = !label.empty() && point(out) && in_0_1(out.x) && in_0_1(out.y);
        if (!parts) at_ = before;
        return parts;
    }
    [[nodiscard]] bool more() const { return at_ < tokens_.size(); }

private:
    std::vector<Token> tokens_;
    std::size_t at_ = 0;
};

bool read_wait(Reader& in, ScriptCommand& out) {
    std::string unit;
    float count = 0;
    if (!in.value(count) || count < 1 || count > 600000 || !in.word(unit)) return false;
    out.count = static_cast<int>(count);
    out.verb = unit == "ms" ? ScriptVerb::wait_ms : ScriptVerb::wait_frames;
    return unit == "ms" || unit == "frames" || unit == "frame";
}

bool read_drag(Reader& in, ScriptCommand& out) {
    out.parts = in.quoted(out.text);
    return (out.parts ? in.part(out.text, out.from, out.parts) && in.part(out.text, out.to, out.parts)
                      : in.point(out.from) && in.point(out.to)) &&
           in.maybe_count(out.count);
}

bool known_key(std::string_view key) {
    constexpr std::array<std::string_view, 14> kKeys{"back", "enter", "tab",     "escape",    "backspace",
                                                     "up",   "down",  "page-up", "page-down", "home",
                                                     "end",  "space", "ctrl-a",  "shift-down"};
    return std::find(kKeys.begin(), kKeys.end(), key) != kKeys.end();
}

// A name that becomes a file: no folders, no surprises.
bool shot_name(std::string_view name) {
    return !name.empty() && name.size() <= 80 && name.front() != '.' &&
           name.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_.") ==
               std::string_view::npos;
}

bool read_arguments(Reader& in, ScriptCommand& out) {
    switch (out.verb) {
        case ScriptVerb::tap:
            return in.place(out) && (in.part(out.text, out.from, out.parts) || in.maybe_count(out.count));
        case ScriptVerb::press_hold:
            return in.place(out) && in.maybe_count(out.count);
        case ScriptVerb::drag:
            return read_drag(in, out);
        case ScriptVerb::pinch:
            return in.point(out.from) && in.value(out.to.x) && in.value(out.to.y);
        case ScriptVerb::key:
            return in.word(out.text) && known_key(out.text);
        case ScriptVerb::shot:
            return (in.word(out.text) || in.quoted(out.text)) && shot_name(out.text);
        case ScriptVerb::rotate:
            return in.point(out.to, 'x');
        case ScriptVerb::wait_ms:
        case ScriptVerb::wait_frames:
            return read_wait(in, out);
        case ScriptVerb::text:
        case ScriptVerb::expect:
        case ScriptVerb::expect_not:
        case ScriptVerb::scroll_to:
        case ScriptVerb::note:
            return in.quoted(out.text);
    }
    return false;
}

struct VerbForm {
    std::string_view name;
    ScriptVerb verb;
    std::string_view form;
};
constexpr std::array kVerbs{
    VerbForm{"tap", ScriptVerb::tap, "tap \"label\" [n], tap \"label\" U,V or tap X,Y"},
    VerbForm{"press-hold", ScriptVerb::press_hold, "press-hold \"label\" [MS] or press-hold X,Y [MS]"},
    VerbForm{"drag", ScriptVerb::drag, "drag X1,Y1 X2,Y2 [MS] or drag \"label\" U1,V1 U2,V2 [MS]"},
    VerbForm{"pinch", ScriptVerb::pinch, "pinch X,Y FROM TO"},
    VerbForm{"text", ScriptVerb::text, "text \"words\""},
    VerbForm{"key", ScriptVerb::key, "key back, enter, tab, escape or backspace"},
    VerbForm{"wait", ScriptVerb::wait_ms, "wait N ms or wait N frames"},
    VerbForm{"shot", ScriptVerb::shot, "shot NAME, of letters, digits, '-', '_' and '.'"},
    VerbForm{"rotate", ScriptVerb::rotate, "rotate WxH"},
    VerbForm{"expect", ScriptVerb::expect, "expect \"text\""},
    VerbForm{"expect-not", ScriptVerb::expect_not, "expect-not \"text\""},
    VerbForm{"scroll-to", ScriptVerb::scroll_to, "scroll-to \"label\""},
    VerbForm{"note", ScriptVerb::note, "note \"words\""}};

Result<ScriptCommand> parse_line(std::vector<Token> tokens, int line) {
    const std::string name = tokens.front().text;
    tokens.erase(tokens.begin());
    const auto form = std::find_if(kVerbs.begin(), kVerbs.end(), [&](const VerbForm& f) { return f.name == name; });
    if (form == kVerbs.end())
        return fail(
            Errc::refused, fmt::format("no command '{}'", name), fmt::format("line {}", line),
            "use tap, press-hold, drag, pinch, text, key, wait, shot, rotate, expect, expect-not, scroll-to or note");
    ScriptCommand command;
    command.line = line;
    command.verb = form->verb;
    Reader reader(std::move(tokens));
    if (!read_arguments(reader, command) || reader.more())
        return fail(Errc::refused, fmt::format("'{}' is not understood", name), fmt::format("line {}", line),
                    fmt::format("write {}", form->form));
    return command;
}

}  // namespace

Result<std::vector<ScriptCommand>> parse_script(std::string_view text) {
    std::vector<ScriptCommand> commands;
    for (int line = 1; !text.empty(); ++line) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        const auto tokens = tokens_of(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
        if (!tokens) return fail(Errc::refused, "a quote is not closed", fmt::format("line {}", line));
        if (tokens->empty()) continue;
        COTTER_ASSIGN(ScriptCommand command, parse_line(*tokens, line));
        commands.push_back(std::move(command));
    }
    return commands;
}

}  // namespace cotter
