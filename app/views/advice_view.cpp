// The owner's answer: what was looked at, and what the readings say. See work_view.h.
#include <algorithm>

#include <fmt/format.h>

#include "app/views/place_text.h"
#include "app/views/reason_item.h"
#include "app/views/work_view.h"

namespace cotter {

namespace {

// Findings are in the advice already; a reading beyond its limit is not.
bool is_finding(const Job& job, const Ground& ground) {
    return job.find(Id<Finding>{ground.record}) != nullptr;
}

// A judged reading outweighs a kinder word from what was only looked at.
void weigh_readings(const Session& session, AdviceView& out) {
    const Summary& judged = session.summary();
    if (judged.towing != Towing::no && judged.towing != Towing::after_repair) return;
    const TowWord word = judged.towing == Towing::no ? TowWord::do_not_tow : TowWord::show_to_shop;
    std::vector<std::string> reasons;
    for (const Ground& ground : judged.first)
        if (!is_finding(session.job(), ground))
            reasons.push_back(fmt::format("{}: {}: {} ({})",
                                          judged_words(ground.place, ground.axle, session.settings().sides),
                                          ground.subject, ground.says, ground.source));
    if (reasons.empty()) return;
    if (word > out.word) {
        out.word = word;
        out.reasons.insert(out.reasons.begin(), reasons.begin(), reasons.end());
    } else {
        out.reasons.insert(out.reasons.end(), reasons.begin(), reasons.end());
    }
}

// Who looks from outside sees one side only; 'show it to a shop' says whether that is for a repair or for a look.
Sign sign_of(TowWord word, const Session& session) {
    if (word == TowWord::do_not_tow) return Sign::shattered_on_road;
    if (word == TowWord::tow) return Sign::shaded_on_road;
    const auto findings = session.job().all<Finding>();
    const bool repair = session.summary().towing == Towing::after_repair ||
                        std::any_of(findings.begin(), findings.end(), [](const Finding& f) {
                            return f.grade == Grade::repair && f.outcome != Outcome::repaired;
                        });
    return repair ? Sign::sheared_on_road : Sign::fading_on_road;
}

std::string_view title_of(TowWord word) {
    switch (word) {
        case TowWord::tow:
            return "Nothing found in what was looked at";
        case TowWord::show_to_shop:
            return "Have a mechanic look at it before you tow";
        case TowWord::do_not_tow:
            break;
    }
    return "Do not tow";
}

}  // namespace

AdviceView advice_view(const Session& session) {
    const TowAdvice advice = tow_advice(session.work_book(), session.job());
    AdviceView out;
    out.word = advice.word;
    for (const std::string& reason : advice.reasons)
        out.reasons.push_back(upper_first(in_words(reason, session.settings().sides)));
    const bool all_well = out.word == TowWord::tow;
    weigh_readings(session, out);
    // "All points were looked at and nothing was found" is no reason for another word.
    if (all_well && out.word != TowWord::tow) out.reasons.pop_back();
    out.title = title_of(out.word);
    out.sign = sign_of(out.word, session);
    return out;
}

}  // namespace cotter
