// Photos and findings that change their place, and what is said of it. See session.h.
#include <fmt/format.h>

#include "app/session/session.h"
#include "app/views/chrome.h"

namespace cotter {

void Session::act(const PutShot& c) {
    const FindingsOfMove findings = findings_of_move(job_, c.shot);
    const Shot* before = job_.find(c.shot.id);
    const std::string from = before == nullptr ? std::string() : place_words(before->place, settings_.sides);
    commit(changes_of(job_, c, stamp()));
    if (failed_ || findings.along.size() + findings.staying == 0) return;
    std::string words = fmt::format("The photo is at {} now", place_words(c.shot.place, settings_.sides));
    if (!findings.along.empty())
        words += fmt::format(", with {}", count_words(findings.along.size(), "finding", "findings"));
    if (findings.staying > 0)
        words += fmt::format(". {} {} at {}: another photo there shows {} too",
                             count_words(findings.staying, "finding", "findings"),
                             findings.staying == 1 ? "stays" : "stay", from, findings.staying == 1 ? "it" : "them");
    tell(words + ".", false, true);
}

// A finding that was given another place; its photos stay where they are.
void Session::tell_moved(const Finding& before, const Place& to) {
    if (before.place == to) return;
    std::size_t photos = 0;
    for (const Tag& tag : job_.all<Tag>()) {
        const Shot* shot = tag.finding == before.id ? job_.find(tag.shot) : nullptr;
        photos += shot != nullptr && shot->place != to ? 1 : 0;
    }
    std::string words = fmt::format("The finding is at {} now", place_words(to, settings_.sides));
    if (photos > 0) words += photos == 1 ? "; its photo stays where it is" : "; its photos stay where they are";
    tell(words + ".", false, true);
}

}  // namespace cotter
