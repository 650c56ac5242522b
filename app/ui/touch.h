// Fingers to gestures: tap, long press, drag with fling, pinch. A pure state machine, no ImGui, no clock; one thread.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace cotter {

struct Point {  // dp from the top left of the screen
    float x = 0, y = 0;
    bool operator==(const Point&) const = default;
};

enum class FingerPhase { down, move, up, cancel };

struct FingerEvent {
    double time_s = 0;  // monotonic seconds
    std::int64_t finger = 0;
    Point at;
    FingerPhase phase = FingerPhase::down;
};

enum class GestureKind {
    press,       // a finger rests; nothing decided yet. Always followed by exactly one of the next three or release
    tap,         // it left again without moving
    long_press,  // it rested kLongPress
    drag,        // it moves: `by` since the last event; the first one carries the whole way from `start`
    drag_end,    // it left; `velocity` says whether a fling follows
    fling,       // the content goes on by `by` after the finger left
    fling_end,
    pinch,  // two fingers: `factor` since the last event about `at`, which moved by `by`
    pinch_end,
    release,  // the press came to nothing (cancelled, turned, taken over, a finger that stopped a fling)
};

struct Gesture {
    GestureKind kind = GestureKind::press;
    double time_s = 0;
    Point at;     // now (pinch: the middle)
    Point start;  // where the first finger came down
    Point by;
    Point velocity;  // dp a second
    float factor = 1;
    bool broken = false;  // drag_end: by the screen that turned or a second finger; nothing is to come of the drag
    bool mouse = false;   // made by a mouse button: for pictures, never for scrolling
};

// Method: `idle` -> `pressing` -> (tap | long press | dragging | pinching) -> `spent` until the last finger has left.
// Only two fingers count. Whatever was decided stays decided: a drag never turns into a tap, a pinch never into a drag.
class TouchMachine {
public:
    static constexpr float kSlop = 12;            // dp a gloved finger may roll before it counts as moving
    static constexpr double kLongPress = 0.5;     // s
    static constexpr double kFlingMemory = 0.08;  // s of movement that the velocity is taken from
    static constexpr float kFlingStart = 120;     // dp/s below which nothing flings
    static constexpr float kFlingStop = 20;       // dp/s where it ends
    static constexpr float kFlingMax = 5000;      // dp/s
    static constexpr double kFlingDecay = 0.325;  // s in which the speed falls to 1/e

    // Events must come in order of time.
    void feed(const FingerEvent& event);
    // Lets time pass: long presses ripen, flings go on.
    void tick(double now_s);
    // The screen was turned, resized or covered: every gesture ends now without effect.
    void cancel(double now_s);

    // The gestures since the last call, in order.
    [[nodiscard]] std::vector<Gesture> take();

    [[nodiscard]] bool moving() const { return state_ == State::flinging; }
    [[nodiscard]] std::optional<double> wakes_at() const;  // when tick() has something to do
    [[nodiscard]] std::optional<Point> pressed() const;    // where an undecided finger rests
    [[nodiscard]] int fingers() const { return static_cast<int>(down_.size()); }

private:
    enum class State { idle, pressing, dragging, pinching, flinging, spent };
    struct Finger {
        std::int64_t id;
        Point at;
    };
    struct Sample {
        double time_s;
        Point at;
    };

    void finger_down(const FingerEvent& event);
    void finger_moved(const FingerEvent& event);
    void finger_left(const FingerEvent& event);
    void drag_to(const FingerEvent& event);
    void pinch_to(const FingerEvent& event);
    void end_drag(double time_s);
    void break_drag(double time_s);
    void emit(Gesture gesture) { out_.push_back(gesture); }
    [[nodiscard]] Gesture made(GestureKind kind, double time_s, Point at) const;
    [[nodiscard]] Finger* find(std::int64_t id);
    [[nodiscard]] Point velocity_at(double time_s) const;
    [[nodiscard]] Point middle() const;
    [[nodiscard]] float spread() const;

    State state_ = State::idle;
    std::vector<Finger> down_;
    std::vector<Sample> trail_;  // of a drag, for its velocity
    Point start_, last_;
    double pressed_s_ = 0;
    Point fling_velocity_;
    double fling_s_ = 0;
    float pinch_spread_ = 1;
    Point pinch_middle_;
    bool caught_fling_ = false;  // this press stopped a fling: it is no tap
    std::vector<Gesture> out_;
};

}  // namespace cotter
