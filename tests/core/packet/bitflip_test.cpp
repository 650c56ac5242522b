// No single bit of a packet can be changed unnoticed: 10,000 at random places, and every bit outside the files' data.
#include <doctest/doctest.h>

#include <random>

#include "tests/core/packet/bag_maker.h"

using namespace cotter;
using namespace cotter::test;

namespace {
struct Tally {
    int refused = 0;
    int harmless = 0;  // reported as changed outside what is signed
    int unnoticed = 0;
};

void flip(Bytes& packet, std::size_t bit, Tally& tally) {
    const auto mask = static_cast<std::uint8_t>(1u << (bit % 8));
    packet[bit / 8] = static_cast<std::uint8_t>(packet[bit / 8] ^ mask);
    const CheckReport report = check_bytes(packet);
    packet[bit / 8] = static_cast<std::uint8_t>(packet[bit / 8] ^ mask);
    if (report.verdict == Verdict::invalid) ++tally.refused;
    else if (!report.reasons.empty()) ++tally.harmless;
    else ++tally.unnoticed;
}
}  // namespace

TEST_CASE("check: 10,000 single-bit flips of a packet are all noticed") {
    Bytes packet = zipped(our_packet());
    REQUIRE(check_bytes(packet).verdict == Verdict::valid);
    REQUIRE(check_bytes(packet).reasons.empty());
    std::mt19937 random(20260514);
    Tally tally;
    for (int i = 0; i < 10'000; ++i) flip(packet, random() % (packet.size() * 8), tally);
    MESSAGE("bit flips refused: ", tally.refused, ", reported as harmless: ", tally.harmless);
    CHECK(tally.unnoticed == 0);
    CHECK(tally.refused + tally.harmless == 10'000);
}
