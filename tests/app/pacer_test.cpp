// The Pacer under a clock of our own: frames are counted, never timed.
#include "app/pacer.h"

#include <doctest/doctest.h>

using namespace cotter;

namespace {

// Runs the loop a platform would run from `from` to `to` and counts the frames.
int frames(Pacer& pacer, double from, double to) {
    int count = 0;
    double now = from;
    while (now <= to) {
        if (pacer.should_draw(now)) {
            pacer.drew(now);
            ++count;
            now += 0.001;  // a frame takes a while
            continue;
        }
        const auto sleep = pacer.may_sleep(now);
        if (!sleep || now + *sleep > to) break;
        now += *sleep;
    }
    return count;
}

}  // namespace

TEST_CASE("a screen at rest draws three frames and then none") {
    Pacer pacer;
    CHECK(frames(pacer, 0, 1000) == 3);
    CHECK_FALSE(pacer.may_sleep(1000).has_value());
    pacer.happened();
    CHECK(frames(pacer, 1000, 2000) == 3);
    pacer.worker_result();
    CHECK(pacer.should_draw(2000));
    CHECK(frames(pacer, 2000, 3000) == 3);
}

TEST_CASE("an event amid the settling starts it anew") {
    Pacer pacer;
    pacer.drew(0);
    pacer.drew(0.01);
    pacer.happened();
    CHECK(frames(pacer, 0.02, 10) == 3);
}

TEST_CASE("a timer wakes the loop once, at its time") {
    Pacer pacer;
    frames(pacer, 0, 1);
    pacer.wake_at(8);
    pacer.wake_at(5);
    pacer.wake_at(6);
    CHECK(*pacer.may_sleep(1) == doctest::Approx(4));
    CHECK_FALSE(pacer.should_draw(4.999));
    CHECK(pacer.should_draw(5));
    CHECK(frames(pacer, 1, 100) == 3);
    CHECK_FALSE(pacer.may_sleep(100).has_value());
}

TEST_CASE("while something moves there is a frame every sixtieth of a second, and none after") {
    Pacer pacer;
    frames(pacer, 0, 1);
    pacer.keep_moving(true);
    const int moving = frames(pacer, 1, 2);
    CHECK(moving >= 55);
    CHECK(moving <= 61);
    pacer.keep_moving(false);
    CHECK(frames(pacer, 2, 1000) == 0);
}
