// See pacer.h.
#include "app/pacer.h"

#include <algorithm>

namespace cotter {

void Pacer::wake_at(double when_s) {
    wake_s_ = wake_s_ ? std::min(*wake_s_, when_s) : when_s;
}

bool Pacer::should_draw(double now_s) const {
    return may_sleep(now_s) == 0.0;
}

std::optional<double> Pacer::may_sleep(double now_s) const {
    if (settle_ > 0) return 0.0;
    std::optional<double> wait;
    if (wake_s_) wait = std::max(0.0, *wake_s_ - now_s);
    if (moving_) {
        const double next = std::max(0.0, last_frame_s_ + kMoveStep - now_s);
        wait = wait ? std::min(*wait, next) : next;
    }
    return wait;
}

void Pacer::drew(double now_s) {
    if (wake_s_ && *wake_s_ <= now_s) settle_ = std::max(settle_, kSettle);
    wake_s_.reset();
    if (settle_ > 0) --settle_;
    last_frame_s_ = now_s;
}

}  // namespace cotter
