// UUID text.
#include <doctest/doctest.h>

#include "core/base/bytes.h"
#include "core/base/hash.h"
#include "core/base/id.h"
#include "core/base/money.h"

using namespace cotter;

TEST_CASE("id: text both ways, malformed refused") {
    const auto id = Uuid::parse("3F9C1A2B-0000-4000-8000-0123456789ab");
    REQUIRE(id);
    CHECK(id->text() == "3f9c1a2b-0000-4000-8000-0123456789ab");
    for (const char* bad : {"", "3f9c1a2b", "3f9c1a2b-0000-4000-8000-0123456789a",
                            "3f9c1a2b-0000-4000-8000-0123456789ag", "3f9c1a2b00000-4000-8000-0123456789ab"})
        CHECK_FALSE(Uuid::parse(bad));
}

TEST_CASE("hash: the published vectors of 'abc'") {
    const auto of = [](HashKind kind) {
        Hasher h(kind);
        h.add(as_bytes("a"));
        h.add(as_bytes("bc"));
        return h.finish_hex();
    };
    CHECK(of(HashKind::md5) == "900150983cd24fb0d6963f7d28e17f72");
    CHECK(of(HashKind::sha1) == "a9993e364706816aba3e25717850c26c9cd0d89d");
    CHECK(of(HashKind::sha256) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(of(HashKind::sha512).starts_with("ddaf35a193617abacc417349ae204131"));
}

TEST_CASE("money: cents as integers, mixing currencies refused") {
    CHECK(Money::parse("149", "USD")->minor == 14900);
    CHECK(Money::parse("69.5", "USD")->minor == 6950);
    CHECK(Money{-5, "USD"}.text() == "-0.05 USD");
    CHECK_FALSE(Money::parse("1.005", "USD"));
    CHECK_FALSE(Money::parse("99999999999999999999", "USD"));
    CHECK_FALSE(add(Money{1, "USD"}, Money{1, "CAD"}));
    CHECK_FALSE(add(Money{INT64_MAX, "USD"}, Money{1, "USD"}));
}
