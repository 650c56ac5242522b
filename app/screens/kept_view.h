// What a page is drawn from, kept from frame to frame while nothing has changed: most frames are those of a finger that
// scrolls. For draw_screens; one thread.
#pragma once

#include <any>
#include <cstdint>
#include <type_traits>
#include <typeinfo>

#include "app/session/session.h"

namespace cotter {

class KeptView {
public:
    // As make(session) gives it now. It is called again when the session was changed, when its clock has moved on (by
    // whole seconds, as records have them), and when something else was asked for: `asked` is what it depends on
    // beside the session. Valid until the next call.
    template <class Make>
    const auto& of(const Session& session, Make&& make, int asked = 0) {
        using View = std::decay_t<decltype(make(session))>;
        const State state{session.revision(), session.now(), asked};
        if (!view_.has_value() || view_.type() != typeid(View) || !(state == state_)) {
            view_.emplace<View>(make(session));
            state_ = state;
        }
        return *std::any_cast<View>(&view_);
    }

private:
    struct State {
        std::uint64_t revision = 0;
        Instant now;
        int asked = 0;
        bool operator==(const State&) const = default;
    };

    std::any view_;
    State state_;
};

}  // namespace cotter
