// The signs of the grades as outlines: within their field, convex where they are filled, and no two alike.
#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "core/base/sign.h"

using namespace cotter;

namespace {

constexpr Sign kAll[]{Sign::washer, Sign::worn_block, Sign::broken_nut, Sign::apart};

bool holds(const SignPart& part, float x, float y) {
    if (part.radius > 0) return std::hypot(x - part.points[0].x, y - part.points[0].y) <= part.radius;
    for (std::size_t i = 0; i < part.points.size(); ++i) {
        const SignPoint a = part.points[i], b = part.points[(i + 1) % part.points.size()];
        if ((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x) < 0) return false;
    }
    return true;
}

// Where a sign is filled, as a picture of 24 × 24.
std::vector<bool> filled(Sign sign) {
    std::vector<bool> out;
    for (int i = 0; i < 24 * 24; ++i) {
        bool any = false;
        for (const SignPart& part : parts_of(sign))
            any = any ||
                  (part.filled && holds(part, static_cast<float>(i % 24) + 0.5F, static_cast<float>(i / 24) + 0.5F));
        out.push_back(any);
    }
    return out;
}

}  // namespace

TEST_CASE("signs: every point with its line lies in the field") {
    for (const Sign sign : kAll)
        for (const SignPart& part : parts_of(sign)) {
            REQUIRE_FALSE(part.points.empty());
            CHECK((part.points.size() != 1 || part.radius > 0));
            const float room = part.radius + (part.points.size() == 2 ? 0 : part.line / 2);
            for (const SignPoint& p : part.points) {
                CHECK(p.x - room >= 0.4F);
                CHECK(p.x + room <= kSignField - 0.4F);
                CHECK(p.y - room >= 0.4F);
                CHECK(p.y + room <= kSignField - 0.4F);
            }
        }
}

TEST_CASE("signs: what is filled turns one way only") {
    for (const Sign sign : kAll)
        for (const SignPart& part : parts_of(sign)) {
            const std::size_t n = part.points.size();
            if (!part.filled || n < 3) continue;
            for (std::size_t i = 0; i < n; ++i) {
                const SignPoint a = part.points[i], b = part.points[(i + 1) % n], c = part.points[(i + 2) % n];
                CHECK((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) >= 0);
            }
        }
}

TEST_CASE("signs: no two fill the same places") {
    for (const Sign one : kAll)
        for (const Sign other : kAll) {
            if (one == other) continue;
            const auto a = filled(one), b = filled(other);
            int apart = 0;
            for (std::size_t i = 0; i < a.size(); ++i) apart += a[i] != b[i] ? 1 : 0;
            CHECK(apart > 60);
        }
}
