// No single bit of a packet can be changed unnoticed: 10,000 at random places, and every bit outside the files' data.
#include <doctest/doctest.h>

#include <random>

#include "core/base/text.h"
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
    if (report.verdict == Verdict::invalid && !report.reasons.empty())
        ++tally.refused;
    else if (!report.reasons.empty())
        ++tally.harmless;
    else
        ++tally.unnoticed;
}

// Where each entry's data lies; all other bytes are headers.
std::vector<bool> is_data(const Bytes& packet) {
    MemoryFiles files;
    files.put("/zip", packet);
    const auto reader = files.open("/zip").value();
    std::vector<bool> data(packet.size());
    const ZipIndex index = read_zip_index(*reader, {}).value();
    for (const ZipEntry& entry : index.entries)
        for (std::uint64_t at = entry.data_at; at < entry.data_at + entry.packed; ++at)
            data[static_cast<std::size_t>(at)] = true;
    return data;
}

}  // namespace

TEST_CASE("check: 10,000 single-bit flips of a packet are all noticed") {
    Bytes packet = our_zip();
    REQUIRE(check_bytes(packet).verdict == Verdict::valid);
    REQUIRE(check_bytes(packet).reasons.empty());
    std::mt19937 random(20260514);
    Tally tally;
    for (int i = 0; i < 10'000; ++i) flip(packet, random() % (packet.size() * 8), tally);
    MESSAGE("bit flips refused: ", tally.refused, ", reported as harmless: ", tally.harmless);
    CHECK(tally.unnoticed == 0);
    CHECK(tally.refused + tally.harmless == 10'000);
    CHECK(tally.harmless < 100);  // only within compressed data, where a few bits mean nothing
}

TEST_CASE("check: every single bit of the archive's headers is refused when flipped") {
    Bytes packet = our_zip();
    const std::vector<bool> data = is_data(packet);
    Tally tally;
    int headers = 0;
    for (std::size_t bit = 0; bit < packet.size() * 8; ++bit) {
        if (data[bit / 8]) continue;
        ++headers;
        flip(packet, bit, tally);
    }
    CHECK(headers > 8 * 1'000);
    CHECK(tally.refused == headers);
}
