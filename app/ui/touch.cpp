// See touch.h.
#include "app/ui/touch.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace cotter {

namespace {

Point minus(Point a, Point b) {
    return {a.x - b.x, a.y - b.y};
}

float length(Point p) {
    return std::hypot(p.x, p.y);
}

}  // namespace

Gesture TouchMachine::made(GestureKind kind, double time_s, Point at) const {
    Gesture gesture;
    gesture.kind = kind;
    gesture.time_s = time_s;
    gesture.at = at;
    gesture.start = start_;
    return gesture;
}

void TouchMachine::feed(const FingerEvent& event) {
    tick(event.time_s);
    switch (event.phase) {
        case FingerPhase::down:
            finger_down(event);
            break;
        case FingerPhase::move:
            finger_moved(event);
            break;
        case FingerPhase::up:
            finger_left(event);
            break;
        case FingerPhase::cancel:
            cancel(event.time_s);
            break;
    }
}

void TouchMachine::finger_down(const FingerEvent& event) {
    if (find(event.finger) != nullptr) return;  // a lost 'up': the next one will do
    down_.push_back({event.finger, event.at});
    if (down_.size() == 1) {
        caught_fling_ = state_ == State::flinging;
        if (caught_fling_) emit(made(GestureKind::fling_end, event.time_s, last_));
        state_ = State::pressing;
        start_ = last_ = event.at;
        pressed_s_ = event.time_s;
        trail_.assign(1, {event.time_s, event.at});
        emit(made(GestureKind::press, event.time_s, event.at));
    } else if (down_.size() == 2 && (state_ == State::pressing || state_ == State::dragging)) {
        if (state_ == State::pressing)
            emit(made(GestureKind::release, event.time_s, last_));
        else
            break_drag(event.time_s);
        state_ = State::pinching;
        pinch_spread_ = spread();
        pinch_middle_ = middle();
    }
}

void TouchMachine::finger_moved(const FingerEvent& event) {
    Finger* finger = find(event.finger);
    if (finger == nullptr) return;
    finger->at = event.at;
    if (state_ == State::pressing && length(minus(event.at, start_)) > kSlop) state_ = State::dragging;
    if (state_ == State::dragging) drag_to(event);
    if (state_ == State::pinching) pinch_to(event);
}

void TouchMachine::drag_to(const FingerEvent& event) {
    Gesture drag = made(GestureKind::drag, event.time_s, event.at);
    drag.by = minus(event.at, last_);
    last_ = event.at;
    trail_.push_back({event.time_s, event.at});
    std::erase_if(trail_, [&](const Sample& s) { return s.time_s < event.time_s - 2 * kFlingMemory; });
    emit(drag);
}

void TouchMachine::pinch_to(const FingerEvent& event) {
    if (event.finger != down_[0].id && event.finger != down_[1].id) return;
    Gesture pinch = made(GestureKind::pinch, event.time_s, middle());
    pinch.by = minus(pinch.at, pinch_middle_);
    pinch.factor = spread() / pinch_spread_;
    pinch_middle_ = pinch.at;
    pinch_spread_ = spread();
    emit(pinch);
}

void TouchMachine::finger_left(const FingerEvent& event) {
    Finger* finger = find(event.finger);
    if (finger == nullptr) return;
    if (!(event.at == finger->at)) finger_moved({event.time_s, event.finger, event.at, FingerPhase::move});
    const bool counted = finger - down_.data() < 2;
    down_.erase(down_.begin() + (finger - down_.data()));
    if (state_ == State::pressing) {
        emit(made(caught_fling_ ? GestureKind::release : GestureKind::tap, event.time_s, start_));
        state_ = State::spent;
    } else if (state_ == State::dragging) {
        end_drag(event.time_s);
    } else if (state_ == State::pinching && counted) {
        emit(made(GestureKind::pinch_end, event.time_s, pinch_middle_));
        state_ = State::spent;
    }
    if (down_.empty() && state_ == State::spent) state_ = State::idle;
}

void TouchMachine::break_drag(double time_s) {
    Gesture end = made(GestureKind::drag_end, time_s, last_);
    end.broken = true;
    emit(end);
}

void TouchMachine::end_drag(double time_s) {
    Gesture end = made(GestureKind::drag_end, time_s, last_);
    end.velocity = velocity_at(time_s);
    const float speed = length(end.velocity);
    if (speed > kFlingMax) end.velocity = {end.velocity.x * kFlingMax / speed, end.velocity.y * kFlingMax / speed};
    if (speed < kFlingStart) end.velocity = {};
    emit(end);
    state_ = speed < kFlingStart ? State::idle : State::flinging;
    fling_velocity_ = end.velocity;
    fling_s_ = time_s;
}

Point TouchMachine::velocity_at(double time_s) const {
    const auto first =
        std::find_if(trail_.begin(), trail_.end(), [&](const Sample& s) { return s.time_s >= time_s - kFlingMemory; });
    if (first == trail_.end()) return {};
    const double span = trail_.back().time_s - first->time_s;
    if (span <= 0.005) return {};  // one sample says nothing about speed
    const Point way = minus(trail_.back().at, first->at);
    return {static_cast<float>(way.x / span), static_cast<float>(way.y / span)};
}

void TouchMachine::tick(double now_s) {
    if (state_ == State::pressing && now_s >= pressed_s_ + kLongPress) {
        emit(made(caught_fling_ ? GestureKind::release : GestureKind::long_press, pressed_s_ + kLongPress, start_));
        state_ = State::spent;
    }
    if (state_ != State::flinging || now_s <= fling_s_) return;
    // The way of an exponential slow-down is exact whatever the frame rate.
    const auto keep = static_cast<float>(std::exp(-(now_s - fling_s_) / kFlingDecay));
    const auto reach = static_cast<float>(kFlingDecay) * (1 - keep);
    Gesture fling = made(GestureKind::fling, now_s, last_);
    fling.by = {fling_velocity_.x * reach, fling_velocity_.y * reach};
    fling_velocity_ = {fling_velocity_.x * keep, fling_velocity_.y * keep};
    fling.velocity = fling_velocity_;
    fling_s_ = now_s;
    emit(fling);
    if (length(fling_velocity_) >= kFlingStop) return;
    emit(made(GestureKind::fling_end, now_s, last_));
    state_ = State::idle;
}

void TouchMachine::cancel(double now_s) {
    switch (state_) {
        case State::pressing:
            emit(made(GestureKind::release, now_s, last_));
            break;
        case State::dragging:
            break_drag(now_s);
            break;
        case State::pinching:
            emit(made(GestureKind::pinch_end, now_s, pinch_middle_));
            break;
        case State::flinging:
            emit(made(GestureKind::fling_end, now_s, last_));
            break;
        case State::idle:
        case State::spent:
            break;
    }
    down_.clear();  // their later moves and ups are strangers and fall away
    state_ = State::idle;
}

std::vector<Gesture> TouchMachine::take() {
    return std::exchange(out_, {});
}

std::optional<double> TouchMachine::wakes_at() const {
    if (state_ == State::pressing) return pressed_s_ + kLongPress;
    return std::nullopt;
}

std::optional<Point> TouchMachine::pressed() const {
    if (state_ != State::pressing || caught_fling_) return std::nullopt;
    return start_;
}

TouchMachine::Finger* TouchMachine::find(std::int64_t id) {
    const auto found = std::find_if(down_.begin(), down_.end(), [&](const Finger& f) { return f.id == id; });
    return found == down_.end() ? nullptr : &*found;
}

Point TouchMachine::middle() const {
    return {(down_[0].at.x + down_[1].at.x) / 2, (down_[0].at.y + down_[1].at.y) / 2};
}

float TouchMachine::spread() const {
    return std::max(1.0F, length(minus(down_[0].at, down_[1].at)));
}

}  // namespace cotter
