// Records that rest on a shot or reading which is taken away. See changes.h.
#include <algorithm>

#include "app/session/changes.h"

namespace cotter {

namespace {

// Puts `record` again when `change(record)` says that it did something.
template <class R, class Change>
void put_changed(const Job& job, Changes& out, Change&& change) {
    for (R record : job.all<R>())
        if (change(record)) out.emplace_back(Put{std::move(record), {}});
}

}  // namespace

void let_go(const Job& job, const Id<Shot>& shot, Changes& out) {
    const auto without = [&](auto& record) {
        if (record.shot != shot) return false;
        record.shot.reset();
        return true;
    };
    put_changed<Reading>(job, out, without);
    put_changed<Offer>(job, out, without);
    put_changed<Sidewall>(job, out, without);
    put_changed<Chamber>(job, out, without);
    put_changed<Look>(job, out, [&](Look& l) { return std::erase(l.shots, shot) > 0; });
    put_changed<StepMark>(job, out, [&](StepMark& m) { return std::erase(m.shots, shot) > 0; });
    put_changed<BearingSetting>(job, out, [&](BearingSetting& b) {
        if (b.lock_shot != shot) return false;
        b.lock_shot.reset();
        return true;
    });
}

void let_go(const Job& job, const Id<Reading>& reading, Changes& out) {
    put_changed<StepMark>(job, out, [&](StepMark& m) { return std::erase(m.readings, reading) > 0; });
    put_changed<BearingSetting>(job, out, [&](BearingSetting& b) {
        bool changed = false;
        for (BearingTry& one : b.tries)
            if (one.dial == reading) {
                one.dial.reset();
                changed = true;
            }
        return changed;
    });
}

void let_go(const Job& job, const Id<Finding>& finding, Changes& out) {
    put_changed<Look>(job, out, [&](Look& l) {
        if (l.finding != finding) return false;
        l.finding.reset();
        return true;
    });
}

}  // namespace cotter
