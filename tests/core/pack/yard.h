// A job with two small photos in a vault in memory, and all that packing it takes.
#pragma once

#include "core/packet/pack.h"
#include "tests/support/memory_files.h"

namespace cotter::test {

// The fixed device key of these tests.
[[nodiscard]] DeviceKey yard_key();

// The sample job with one tagged shot before and one after, their photos taken into the vault at /book.
[[nodiscard]] Job yard_job(Files& files);

// Packs `job` into /out with everything else fixed.
[[nodiscard]] Result<Packed> pack_in_yard(Files& files, const Job& job, std::span<const PacketFacts> earlier = {},
                                          std::span<const Job> visits = {});

}  // namespace cotter::test
