// The made-up office is nobody's: its companies say that they are invented, its trailers have an invented maker.
#include "tests/support/office_jobs.h"

#include <doctest/doctest.h>

#include "core/trailer/vin.h"
#include "tests/support/invented.h"

using namespace cotter;
using namespace cotter::test;

TEST_CASE("office jobs: every company is marked as invented, every VIN is right and of the invented maker") {
    const OfficeShape shape{40, 0};
    for (int number = 0; number < 120; ++number) {
        const Job job = office_job(number, shape);
        CAPTURE(number);
        CHECK(job.only<Visit>()->company.ends_with("(invented)"));
        for (const Offer& offer : job.all<Offer>()) CHECK(offer.supplier.ends_with("(invented)"));
        const std::string& vin = job.only<Trailer>()->vin;
        CHECK(check_vin(vin).verdict == VinVerdict::ok);
        CHECK(vin.substr(11, 3) == kInventedMakerOfFew);
        CHECK_FALSE(job.only<Trailer>()->vin_nonstandard);
    }
}
