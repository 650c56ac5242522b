// Export when the disk fails: the packet is there whole, or not at all; an earlier revision is never touched.
#include <doctest/doctest.h>

#include "core/packet/check.h"
#include "tests/core/pack/yard.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

TEST_SUITE_BEGIN("slow");

TEST_CASE("pack: whatever call of the disk fails, no half packet is left and the old one stays") {
    const Bytes old_packet = to_bytes("the revision before");
    Job job;
    Result<Packed> packed = fail(Errc::io, "not run");
    int faults = 0;
    int survived = 0;
    for_every_failure(
        [&](MemoryFiles& files) {
            files.put("/book/there", {});
            files.put("/out/2026-05-14_NUR-07_00000000_r0.zip", old_packet);
            job = apply(yard_job(files), edit_of({Put{sample_sign_off(), {}}}, 60)).value();
        },
        [&](MemoryFiles& files) {
            packed = pack_in_yard(files, job);
            faults += files.failed();
        },
        [&](MemoryFiles& files) {
            CHECK(files.get("/out/2026-05-14_NUR-07_00000000_r0.zip") == old_packet);
            const std::string path = "/out/2026-05-14_NUR-07_00000000_r1.zip";
            SerialWorkers workers;
            if (packed) REQUIRE(files.has(path));  // success means that it survives a power cut
            if (!files.has(path)) return;
            ++survived;
            CHECK(check(files, workers, path, {}).verdict == Verdict::valid);
        });
    MESSAGE("faults struck while packing: ", faults, "; whole packets found afterwards: ", survived);
    CHECK(faults > 100);
}

TEST_SUITE_END();
