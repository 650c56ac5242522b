// SSH signatures and the device key's file.
#include <doctest/doctest.h>

#include "core/packet/signature.h"
#include "tests/core/packet/bag_maker.h"

using namespace cotter;
using namespace cotter::test;

namespace {
class CountingRandom final : public Random {
public:
    void fill(std::span<std::uint8_t> out) override {
        for (auto& byte : out) byte = next_++;
    }

private:
    std::uint8_t next_ = 0;
};
}  // namespace

TEST_CASE("signature: made by one key, checked, and refused for other bytes or another purpose") {
    const auto key = DeviceKey::from_seed(Bytes(32, 9), "test");
    REQUIRE(key);
    const std::string signature = key->sign(as_bytes("message"), kPacketNamespace);
    CHECK(signature == key->sign(as_bytes("message"), kPacketNamespace));
    const auto by = verify_signature(signature, as_bytes("message"), kPacketNamespace);
    REQUIRE(by);
    CHECK(by->fingerprint == key->fingerprint());
    CHECK(key->public_line() == by->public_key + " test");
    CHECK(verify_signature(signature, as_bytes("massage"), kPacketNamespace).error().code == Errc::refused);
    CHECK(verify_signature(signature, as_bytes("message"), "other").error().what ==
          "the signature was made for another purpose");
}

TEST_CASE("signature: every changed character of the armor is refused") {
    const auto key = DeviceKey::from_seed(Bytes(32, 9), "test");
    const std::string good = key->sign(as_bytes("message"), kPacketNamespace);
    for (std::size_t at = 0; at < good.size(); ++at) {
        std::string bad = good;
        bad[at] = static_cast<char>(bad[at] ^ 1);
        CHECK_FALSE(verify_signature(bad, as_bytes("message"), kPacketNamespace));
        CHECK_FALSE(verify_signature(good.substr(0, at), as_bytes("message"), kPacketNamespace));
    }
}

TEST_CASE("signature: does not depend on the key's comment, and needs a whole seed") {
    const auto one = DeviceKey::from_seed(Bytes(32, 9), "one"), other = DeviceKey::from_seed(Bytes(32, 9), "other");
    CHECK(one->sign(as_bytes("m"), kPacketNamespace) == other->sign(as_bytes("m"), kPacketNamespace));
    CHECK_FALSE(DeviceKey::from_seed(Bytes(31, 9), ""));
}

TEST_CASE("device key: made once, kept, and never replaced when it is broken") {
    MemoryFiles files;
    files.put("/book/empty", {});
    CountingRandom random;
    const auto made = DeviceKey::load_or_make(files, random, "/book/device_key", "tech's phone");
    REQUIRE(made);
    const auto again = DeviceKey::load_or_make(files, random, "/book/device_key", "ignored");
    REQUIRE_MESSAGE(again, (again ? "" : again.error().line()));
    CHECK(again->public_line() == made->public_line());
    CHECK(again->public_line().ends_with(" tech's phone"));
    CHECK(files.get("/book/device_key.pub") == to_bytes(made->public_line() + "\n"));
    REQUIRE(files.remove("/book/device_key.pub"));
    REQUIRE(DeviceKey::load_or_make(files, random, "/book/device_key", "ignored"));
    CHECK(files.get("/book/device_key.pub") == to_bytes(made->public_line() + "\n"));
    files.put("/book/device_key", as_bytes("rubbish"));
    const auto broken = DeviceKey::load_or_make(files, random, "/book/device_key", "");
    REQUIRE_FALSE(broken);
    CHECK(broken.error().code == Errc::damaged);
    CHECK(files.get("/book/device_key") == to_bytes("rubbish"));
}

TEST_CASE("device key: after any failure and power cut there is the whole key or none, and never another one") {
    const auto run = [](MemoryFiles& files) {
        CountingRandom random;
        return DeviceKey::load_or_make(files, random, "/book/keys/device_key", "phone");
    };
    for_every_failure([](MemoryFiles& files) { files.put("/book/empty", {}); },
                      [&](MemoryFiles& files) {
                          const auto key = run(files);
                          CHECK(key.has_value() != files.failed());
                      },
                      [&](MemoryFiles& files) {
                          if (const Bytes there = files.get("/book/keys/device_key"); !there.empty()) {
                              CHECK(run(files).has_value());
                              CHECK(files.get("/book/keys/device_key") == there);
                          }
                          files.put("/book/keys/empty", {});
                          CHECK(run(files).has_value());
                      });
}
