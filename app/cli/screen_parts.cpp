// See screen_parts.h.
#include "app/cli/screen_parts.h"

#include <charconv>
#include <cstdio>

#include <fmt/format.h>

namespace cotter::cli {

void add_headless_options(Parser& parser, HeadlessOptions& options) {
    const Option headless = parser.add_flag("--headless", options.headless, "Without a display, driven by --script");
    parser.add_option("--size", options.size, "Width and height in dp, as " + options.size).needs(headless);
    parser.add_option("--scale", options.scale, "Pixels to a dp").needs(headless);
    parser.add_option("--script", options.drive.script, "What to tap, type and look for; see DEVELOPERS.md")
        .needs(headless);
    parser.add_option("--shots", options.drive.shots, "The folder for the script's screenshots").needs(headless);
    parser.add_option("--clock", options.clock, "The moment at which the script begins (RFC 3339)").needs(headless);
    parser.add_flag("--audit", options.drive.audit, "List every target, and what breaks the rules of the screens")
        .needs(headless);
}

Result<Point> size_of(const std::string& text) {
    int width = 0;
    int height = 0;
    const char* end = text.data() + text.size();
    const auto first = std::from_chars(text.data(), end, width);
    if (first.ec == std::errc{} && first.ptr != end && *first.ptr == 'x') {
        const auto second = std::from_chars(first.ptr + 1, end, height);
        if (second.ec == std::errc{} && second.ptr == end)
            return Point{static_cast<float>(width), static_cast<float>(height)};
    }
    return fail(Errc::refused, "no such size", text, "write it as 412x915");
}

Result<Instant> start_of(const HeadlessOptions& options, Clock& clock) {
    if (options.clock.empty()) return clock.now();
    return Instant::parse(options.clock);
}

Result<> play_script(DriverHost& host, Files& files, const DriveSpec& spec) {
    COTTER_ASSIGN(const RunOutcome done, drive(host, files, spec, [](std::string_view line) {
                      fmt::print("{}\n", line);
                      std::fflush(stdout);  // whoever watches the script reads along
                  }));
    fmt::print("{} commands, {} frames, {} shots{}\n", done.commands, done.frames, done.shots,
               spec.audit ? fmt::format(", {} offences", done.offences) : "");
    if (done.offences > 0)
        return fail(Errc::refused, "the audit found offences", std::to_string(done.offences), "see the lines above");
    return {};
}

}  // namespace cotter::cli
