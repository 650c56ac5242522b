// Zips that nobody vouches for: each kind of lie has its own line.
#include <doctest/doctest.h>

#include <algorithm>

#include "core/packet/little_endian.h"
#include "tests/core/packet/bag_maker.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

std::string refusal(ByteView zip, const ZipLimits& limits = {}) {
    return first_error(check_bytes(zip, limits));
}

std::size_t find_at(const Bytes& bytes, std::string_view needle, std::size_t from = 0) {
    const auto it = std::search(bytes.begin() + static_cast<std::ptrdiff_t>(from), bytes.end(), needle.begin(), needle.end());
    return static_cast<std::size_t>(it - bytes.begin());
}

// Writes a number of `width` bytes at `offset` behind the nth occurrence of a header's signature.
void poke(Bytes& zip, std::string_view signature, std::size_t offset, int width, std::uint64_t value) {
    const std::size_t at = find_at(zip, signature);
    REQUIRE(at < zip.size());
    for (int i = 0; i < width; ++i) zip[at + offset + static_cast<std::size_t>(i)] = static_cast<std::uint8_t>(value >> (8 * i));
}

constexpr std::string_view kLocal = "PK\x03\x04";
constexpr std::string_view kCentral = "PK\x01\x02";

}  // namespace

TEST_CASE("zip: unsafe names are refused with the name") {
    const auto of = [](const char* name) { return refusal(zip_of({{name}})); };
    CHECK(of("../evil") == "../evil: its path would lead out of its folder");
    CHECK(of("bag/../../evil") == "bag/../../evil: its path would lead out of its folder");
    CHECK(of("/etc/passwd") == "/etc/passwd: its path is absolute");
    CHECK(of("bag\\evil") == "bag\\evil: its path has a backslash");
    CHECK(of("C:/evil") == "C:/evil: its name has a ':', which not every system allows");
    CHECK(of("bag//a") == "bag//a: its path has an empty part");
    CHECK(of("bag/aux.txt") == "bag/aux.txt: its name is one that Windows keeps for devices");
    CHECK(of("bag/a\tb") == "bag/a?b: its name has a control character");
    CHECK(of("bag/\xff") == "bag/?: its name is not UTF-8");
    CHECK(of("bag/end.") == "bag/end.: its name ends with a dot or space, which not every system keeps");
}

TEST_CASE("zip: duplicate and colliding names") {
    CHECK(refusal(zip_of({{"bag/a"}, {"bag/a"}})) == "bag/a: the name stands twice in the archive");
    CHECK(refusal(zip_of({{"bag/a"}, {"bag/A"}})) == "bag/a: two names differ in case only");
    CHECK(refusal(zip_of({{"bag/a"}, {"bag/a/b"}})) == "bag/a: it is a file and a folder at once");
    CHECK(refusal(zip_of({{"bag/a"}, {"other/b"}})) == "other/b: the archive does not have exactly one top folder");
}

TEST_CASE("zip: links, encryption, odd methods") {
    Bytes zip = zip_of({{"bag/a"}});
    SUBCASE("a link") {
        poke(zip, kCentral, 38, 4, 0120777u << 16);
        CHECK(refusal(zip) == "bag/a: it is a link or a special file");
    }
    SUBCASE("encrypted") {
        poke(zip, kCentral, 8, 2, 0x0801);
        CHECK(refusal(zip) == "bag/a: it is encrypted");
    }
    SUBCASE("another method") {
        poke(zip, kCentral, 10, 2, 12);
        CHECK(refusal(zip) == "bag/a: it is packed by a method that packets do not use");
    }
}

TEST_CASE("zip: lying headers") {
    Bytes zip = zip_of({{"bag/a", "alpha"}, {"bag/b", "beta"}});
    SUBCASE("the two headers disagree") {
        poke(zip, kLocal, 22, 4, 4);
        CHECK(refusal(zip) == "bag/a: its local header and the directory do not agree");
    }
    SUBCASE("the sizes disagree") {
        poke(zip, kCentral, 24, 4, 500);
        CHECK(refusal(zip) == "bag/a: its two sizes do not agree");
    }
    SUBCASE("data past the end") {
        poke(zip, kCentral, 42, 4, 0xfffff0);
        CHECK(refusal(zip) == "the archive points outside itself");
    }
    SUBCASE("two entries in one place") {
        const std::size_t second = find_at(zip, kCentral, find_at(zip, kCentral) + 4);
        for (int i = 0; i < 4; ++i) zip[second + 42 + static_cast<std::size_t>(i)] = 0;
        CHECK(refusal(zip) == "bag/b: its local header and the directory do not agree");
    }
    SUBCASE("the number of entries") {
        poke(zip, "PK\x05\x06", 8, 4, 0x00030003);
        CHECK(refusal(zip) == "the directory has another number of entries than it says");
    }
}

TEST_CASE("zip: true overlaps are refused") {
    // The first entry is stored and its data holds the whole second one.
    const Bytes inner = zip_of({{"bag/b", "beta"}});
    const std::size_t inner_size = find_at(inner, kCentral);
    const std::string carried(as_text(ByteView(inner).first(inner_size)));
    Bytes zip = zip_of({{"bag/a", carried}, {"bag/b", "beta"}});
    const std::size_t second = find_at(zip, kCentral, find_at(zip, kCentral) + 4);
    const std::uint32_t inside = zip::kLocalSize + 5;
    for (int i = 0; i < 4; ++i) zip[second + 42 + static_cast<std::size_t>(i)] = static_cast<std::uint8_t>(inside >> (8 * i));
    CHECK(refusal(zip) == "bag/b: it overlaps the entry before it");
}

TEST_CASE("zip: bytes that belong to nothing") {
    const Bytes good = zipped(plain_bag("1.0", HashKind::sha256, {{"a", "alpha"}}));
    REQUIRE(check_bytes(good).verdict == Verdict::valid);
    Bytes before = good;
    before.insert(before.begin(), 5, 0);
    CHECK(check_bytes(before).verdict == Verdict::invalid);
    Bytes behind = good;
    behind.push_back(0);
    CHECK(refusal(behind) == "this is not a whole zip archive: its end record is missing");
}

TEST_CASE("zip: truncation at every byte is refused") {
    const Bytes good = zipped(our_packet());
    for (std::size_t cut = 0; cut < good.size(); cut += 1 + cut / 50)
        CHECK(check_bytes(ByteView(good).first(cut)).verdict == Verdict::invalid);
}

TEST_CASE("zip: bombs are refused before anything is unpacked") {
    const Bytes zip = zip_of({{"bag/zeros", std::string(8u << 20, '\0')}}, Packing::deflate);
    CHECK(refusal(zip) == "bag/zeros: it would unpack to far more than it takes: this looks like a trap");
    CHECK(refusal(zip_of({{"bag/a", "12345"}}), ZipLimits{.file_size = 4}) == "bag/a: it is larger than allowed");
    CHECK(refusal(zip_of({{"bag/a"}, {"bag/b"}}), ZipLimits{.entries = 1}) == "the archive has more entries than allowed");
    CHECK(refusal(zip_of({{"bag/a", "123"}, {"bag/b", "123"}}), ZipLimits{.total_size = 5}) ==
          "the archive would unpack to more than allowed");
}

TEST_CASE("zip: a deflated entry that unpacks to more than it declares") {
    Bytes zip = zip_of({{"bag/bagit.txt", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"}}, Packing::deflate);
    poke(zip, kCentral, 24, 4, 10);
    poke(zip, kLocal, 22, 4, 10);
    CHECK(refusal(zip).find("it unpacks to more than it declares") != std::string::npos);
}
