// The owner's answer: what the engine says, in its words. See work_view.h.
#include <fmt/format.h>

#include "app/views/place_text.h"
#include "app/views/reason_item.h"
#include "app/views/summary_view.h"
#include "app/views/work_view.h"
#include "core/judge/towing_sign.h"

namespace cotter {

namespace {

constexpr std::size_t kMost = 6;  // reasons: the summary has them all

}  // namespace

AdviceView advice_view(const Session& session) {
    const Summary& judged = session.summary();
    const SideWords words = session.settings().sides;
    AdviceView out{judged.towing, sign_of(judged.towing), std::string(towing_word(judged.towing)), {}};
    if (judged.towing == Towing::nothing_against || judged.towing == Towing::from_outside) {
        out.reasons.push_back(in_words(judged.answer, words));
        return out;
    }
    for (const Ground& g : judged.first)
        if (g.grade > Grade::watch && out.reasons.size() < kMost)
            out.reasons.push_back(
                fmt::format("{}: {}: {} ({})", judged_words(g.place, g.axle, words), g.subject, g.says, g.source));
    // What this look could not tell comes first; then what only others can answer, the most dangerous first.
    for (const bool could_not : {true, false})
        for (const Unknown& u : judged.unknowns)
            if (u.essential && (u.because.find("could not tell") != std::string::npos) == could_not &&
                out.reasons.size() < kMost)
                out.reasons.push_back(
                    fmt::format("{}: {}: {}", judged_words(u.place, u.axle, words), u.subject, u.because));
    return out;
}

}  // namespace cotter
