// Photos and findings that change their place, and what is said of it. See session.h.
#include <fmt/format.h>

#include "app/session/session.h"

namespace cotter {

namespace {

std::string findings(std::size_t n) {
    return n == 1 ? "1 finding" : fmt::format("{} findings", n);
}

}  // namespace

void Session::act(const PutShot& c) {
    const FindingsOfMove moved = findings_of_move(job_, c.shot);
    const Shot* before = job_.find(c.shot.id);
    const std::string from = before == nullptr ? std::string() : before->place.text();
    commit(changes_of(job_, c, stamp()));
    if (failed_ || moved.along.size() + moved.staying == 0) return;
    std::string words = "photo moved to " + c.shot.place.text();
    if (!moved.along.empty()) words += ", with " + findings(moved.along.size());
    if (moved.staying > 0)
        words += fmt::format(". {} {} at {}: another photo there shows {} too", findings(moved.staying),
                             moved.staying == 1 ? "stays" : "stay", from, moved.staying == 1 ? "it" : "them");
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
    std::string words = "finding moved to " + to.text();
    if (photos > 0) words += photos == 1 ? "; its photo stays where it is" : "; its photos stay where they are";
    tell(words + ".", false, true);
}

}  // namespace cotter
