// RFC 3339 text and civil dates.
#include <doctest/doctest.h>

#include "core/base/time.h"

using namespace cotter;

TEST_CASE("time: RFC 3339 text survives a round trip") {
    for (const char* text : {"2026-05-14T08:12:03-05:00", "1999-12-31T23:59:59+00:00", "2000-02-29T00:00:00+05:45"}) {
        const auto t = Instant::parse(text);
        REQUIRE(t);
        CHECK(t->text() == text);
    }
    CHECK(Instant::parse("2026-05-14T13:12:03.250Z")->unix_s == Instant::parse("2026-05-14T08:12:03-05:00")->unix_s);
}

TEST_CASE("time: the local date is the one at the place") {
    CHECK(Instant::parse("2026-05-14T23:30:00-05:00")->local_date() == Date{2026, 5, 14});
    CHECK(Instant::parse("1969-12-31T23:30:00+01:00")->local_date() == Date{1969, 12, 31});
}

TEST_CASE("time: anything but RFC 3339 is refused in one line") {
    for (const char* text : {"", "2026-05-14", "2026-05-14T08:12:03", "2026-13-01T00:00:00Z", "2026-02-30T00:00:00Z",
                             "2026-05-14T24:00:00Z", "2026-05-14T08:12:03+5:00", "2026-05-14T08:12:03.Z"}) {
        const auto t = Instant::parse(text);
        REQUIRE_FALSE(t);
        CHECK(t.error().code == Errc::refused);
    }
}

TEST_CASE("date: days since 1970 both ways") {
    CHECK(Date{1970, 1, 1}.days() == 0);
    CHECK(Date{2026, 2, 10}.days() - Date{2019, 8, 25}.days() == 2361);
    CHECK(Date::from_days(-1) == Date{1969, 12, 31});
    CHECK_FALSE(Date::parse("2023-02-29"));
}
