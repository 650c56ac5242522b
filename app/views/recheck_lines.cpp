// See recheck_lines.h.
#include "app/views/recheck_lines.h"

#include <algorithm>
#include <map>

#include "app/views/chrome.h"
#include "app/views/place_text.h"

namespace cotter {

namespace {

// "axle1-left, axle1-right": a comma stands inside the words of a corner, so corners are parted by another sign.
std::string places_in_words(std::string codes, std::size_t corners, SideWords words) {
    if (corners > 1 && codes.starts_with("axle") &&
        static_cast<std::size_t>(std::count(codes.begin(), codes.end(), ',')) + 1 == corners)
        return "All corners";
    for (std::size_t at = 0; (at = codes.find(", ", at)) != std::string::npos; ++at) codes[at] = ';';
    return upper_first(in_words(codes, words));
}

}  // namespace

std::string common_source(const std::vector<RecheckLine>& lines) {
    std::map<std::string, int> counts;
    for (const RecheckLine& line : lines) ++counts[line.source];
    const auto most = std::max_element(counts.begin(), counts.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == counts.end() ? std::string() : most->first;
}

std::vector<RecheckLine> recheck_lines(const Session& session) {
    const SignOff* sign = session.job().only<SignOff>();
    const Date day = (sign != nullptr ? sign->at : session.now()).local_date();
    std::size_t corners = 0;
    if (const Trailer* trailer = session.job().only<Trailer>()) corners = trailer->axles.size() * 2;
    std::vector<RecheckLine> out;
    for (const Recheck& r : rechecks(session.recheck_rules(), session.job(), day))
        out.push_back({r.title, upper_first(r.words), places_in_words(r.places, corners, session.settings().sides),
                       r.law ? "law: " + r.source : r.source});
    return out;
}

}  // namespace cotter
