// The touch machine, finger by finger, under a clock of our own.
#include "app/ui/touch.h"

#include <string>

#include <doctest/doctest.h>

using namespace cotter;

namespace {

constexpr const char* kNames[] = {"press", "tap",       "long",  "drag",      "drag-end",
                                  "fling", "fling-end", "pinch", "pinch-end", "release"};

struct Hand {
    TouchMachine machine;

    void down(double t, float x, float y, int finger = 1) { machine.feed({t, finger, {x, y}, FingerPhase::down}); }
    void move(double t, float x, float y, int finger = 1) { machine.feed({t, finger, {x, y}, FingerPhase::move}); }
    void up(double t, float x, float y, int finger = 1) { machine.feed({t, finger, {x, y}, FingerPhase::up}); }
};

std::string kinds(const std::vector<Gesture>& gestures) {
    std::string out;
    for (const Gesture& g : gestures) out += (out.empty() ? "" : " ") + std::string(kNames[static_cast<int>(g.kind)]);
    return out;
}

}  // namespace

TEST_CASE("a finger that leaves where it came down taps there") {
    Hand hand;
    hand.down(0, 100, 200);
    CHECK(hand.machine.pressed() == Point{100, 200});
    CHECK(*hand.machine.wakes_at() == doctest::Approx(0.5));
    hand.move(0.05, 106, 206);  // rolls within the slop
    hand.up(0.1, 107, 207);
    const auto gestures = hand.machine.take();
    CHECK(kinds(gestures) == "press tap");
    CHECK(gestures[1].at == Point{100, 200});
    CHECK_FALSE(hand.machine.pressed());
    CHECK_FALSE(hand.machine.wakes_at());
    CHECK(hand.machine.take().empty());
}

TEST_CASE("a finger that rests is a long press, and no tap when it leaves") {
    Hand hand;
    hand.down(0, 10, 10);
    hand.machine.tick(0.499);
    CHECK(kinds(hand.machine.take()) == "press");
    hand.machine.tick(0.5);
    CHECK(kinds(hand.machine.take()) == "long");
    hand.move(0.6, 90, 90);
    hand.up(0.7, 90, 90);
    CHECK(hand.machine.take().empty());
    hand.down(1, 10, 10);
    hand.up(1.1, 10, 10);
    CHECK(kinds(hand.machine.take()) == "press tap");
}

TEST_CASE("a long press ripens even when the next thing seen is the finger leaving") {
    Hand hand;
    hand.down(0, 10, 10);
    hand.up(3, 10, 10);
    CHECK(kinds(hand.machine.take()) == "press long");
}

TEST_CASE("a drag brings the whole way, also the slop it began with") {
    Hand hand;
    hand.down(0, 100, 300);
    hand.move(0.02, 100, 291);
    hand.move(0.04, 100, 280);
    hand.move(0.06, 100, 250);
    hand.move(0.40, 100, 250);
    hand.up(0.6, 100, 250);
    const auto gestures = hand.machine.take();
    CHECK(kinds(gestures) == "press drag drag drag drag-end");
    float way = 0;
    for (const Gesture& g : gestures)
        if (g.kind == GestureKind::drag) way += g.by.y;
    CHECK(way == doctest::Approx(-50));
    CHECK(gestures.back().velocity == Point{});  // it had come to rest
    CHECK_FALSE(hand.machine.moving());
}

TEST_CASE("a fling goes on, slows down and ends, as far at any frame rate") {
    float reach[2] = {0, 0};
    for (int run = 0; run < 2; ++run) {
        Hand hand;
        hand.down(0, 100, 500);
        for (int i = 1; i <= 5; ++i) hand.move(i * 0.016, 100, 500 - static_cast<float>(i) * 16);
        hand.up(0.08, 100, 420);
        const auto before = hand.machine.take();
        CHECK(before.back().kind == GestureKind::drag_end);
        CHECK(before.back().velocity.y == doctest::Approx(-1000).epsilon(0.01));
        CHECK(hand.machine.moving());
        const double step = run == 0 ? 1.0 / 60 : 1.0 / 24;
        for (double t = 0.08 + step; hand.machine.moving() && t < 10; t += step) hand.machine.tick(t);
        CHECK_FALSE(hand.machine.moving());
        const auto after = hand.machine.take();
        CHECK(after.back().kind == GestureKind::fling_end);
        for (const Gesture& g : after) reach[run] += g.by.y;
    }
    CHECK(reach[0] < -250);
    CHECK(reach[0] == doctest::Approx(reach[1]).epsilon(0.02));
}

TEST_CASE("a finger laid on a fling stops it and taps nothing") {
    Hand hand;
    hand.down(0, 100, 500);
    for (int i = 1; i <= 5; ++i) hand.move(i * 0.016, 100, 500 - static_cast<float>(i) * 16);
    hand.up(0.08, 100, 420);
    hand.machine.tick(0.1);
    static_cast<void>(hand.machine.take());
    hand.down(0.2, 100, 300);
    CHECK_FALSE(hand.machine.moving());
    CHECK_FALSE(hand.machine.pressed());
    hand.up(0.25, 100, 300);
    CHECK(kinds(hand.machine.take()) == "fling fling-end press release");
}

TEST_CASE("two fingers pinch about their middle; whatever remains of them does nothing") {
    Hand hand;
    hand.down(0, 100, 100, 1);
    hand.down(0.01, 200, 100, 2);
    hand.move(0.02, 50, 100, 1);
    hand.move(0.03, 250, 120, 2);
    const auto gestures = hand.machine.take();
    CHECK(kinds(gestures) == "press release pinch pinch");
    CHECK(gestures[2].factor == doctest::Approx(1.5));
    CHECK(gestures[2].at == Point{125, 100});
    CHECK(gestures[2].by == Point{-25, 0});
    CHECK(gestures[3].at == Point{150, 110});
    hand.up(0.1, 50, 100, 1);
    hand.move(0.2, 10, 10, 2);
    hand.up(0.3, 10, 10, 2);
    CHECK(kinds(hand.machine.take()) == "pinch-end");
    CHECK(hand.machine.fingers() == 0);
}

TEST_CASE("a second finger ends a drag; a third one changes nothing") {
    Hand hand;
    hand.down(0, 100, 100, 1);
    hand.move(0.01, 150, 100, 1);
    hand.down(0.02, 250, 100, 2);
    hand.down(0.03, 400, 400, 3);
    hand.move(0.04, 500, 500, 3);
    hand.up(0.05, 500, 500, 3);
    hand.move(0.06, 350, 100, 2);
    const auto gestures = hand.machine.take();
    CHECK(kinds(gestures) == "press drag drag-end pinch");
    CHECK(gestures[3].factor == doctest::Approx(2));
}

TEST_CASE("turning the device amid a gesture ends it without effect") {
    Hand hand;
    hand.down(0, 100, 100);
    hand.machine.cancel(0.1);
    hand.up(0.2, 100, 100);
    CHECK(kinds(hand.machine.take()) == "press release");
    hand.down(1, 100, 100);
    hand.move(1.1, 200, 100);
    hand.machine.cancel(1.2);
    hand.move(1.3, 300, 100);
    hand.up(1.4, 300, 100);
    const auto dragged = hand.machine.take();
    CHECK(kinds(dragged) == "press drag drag-end");
    CHECK(dragged.back().velocity == Point{});
    hand.down(2, 0, 0, 1);
    hand.down(2, 90, 0, 2);
    hand.machine.cancel(2.1);
    hand.move(2.2, 300, 0, 2);
    CHECK(kinds(hand.machine.take()) == "press release pinch-end");
    hand.down(3, 5, 5);
    hand.up(3.1, 5, 5);
    CHECK(kinds(hand.machine.take()) == "press tap");
}

TEST_CASE("the system taking the touch away cancels it") {
    Hand hand;
    hand.down(0, 100, 100);
    hand.machine.feed({0.1, 1, {100, 100}, FingerPhase::cancel});
    CHECK(kinds(hand.machine.take()) == "press release");
}
