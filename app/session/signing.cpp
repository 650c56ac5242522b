// Signing off: an answer that keeps the trailer where it is, or that nobody can give, is signed only by somebody who
// said that they read it. See session.h.
#include "app/session/session.h"

namespace cotter {

void Session::act(const SignJob& c) {
    const Summary& s = summary();
    if (wants_acknowledgement(s.towing) && c.acknowledged != s.answer)
        return tell("the answer on towing was not acknowledged as it stands now: read it on this page, and confirm it",
                    true);
    SignJob sign = c;
    if (!wants_acknowledgement(s.towing)) sign.acknowledged.clear();
    commit(changes_of(job_, sign, stamp()));
}

}  // namespace cotter
