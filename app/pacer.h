// Decides when a frame is drawn, so that a resting screen costs nothing. Pure; one thread, fed by the platform's loop.
#pragma once

#include <optional>

namespace cotter {

// Method: whatever happens (a finger, a key, a worker's result) asks for three frames, because an immediate-mode screen
// needs one to notice, one to answer and one to settle. While something moves by itself (a fling), each frame asks for
// the next. Anything later is a wake time, asked for anew by each frame. When none of these hold, there is no frame.
class Pacer {
public:
    static constexpr int kSettle = 3;              // frames after an event
    static constexpr double kMoveStep = 1.0 / 60;  // seconds between frames while something moves

    void happened() { settle_ = kSettle; }               // input, resize, theme change
    void worker_result() { settle_ = kSettle; }          // a background step published something
    void wake_at(double when_s);                         // the earliest asked for since the last frame counts
    void keep_moving(bool moving) { moving_ = moving; }  // asked anew by each frame

    [[nodiscard]] bool should_draw(double now_s) const;
    // How long the loop may sleep, in seconds: 0 = draw at once, nullopt = until something happens.
    [[nodiscard]] std::optional<double> may_sleep(double now_s) const;
    void drew(double now_s);  // after each frame, with the time at which it began

private:
    int settle_ = kSettle;  // the first frames of all
    bool moving_ = false;
    double last_frame_s_ = -1;
    std::optional<double> wake_s_;
};

}  // namespace cotter
