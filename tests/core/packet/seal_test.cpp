// Packets as they are written.
#include <doctest/doctest.h>

#include "tests/core/packet/bag_maker.h"

using namespace cotter;
using namespace cotter::test;

TEST_CASE("seal: the same input gives the same bytes, and another moment others") {
    CHECK(our_zip() == our_zip());
    PacketFace later = test_face();
    later.at.unix_s += 2;
    CHECK(our_zip(later) != our_zip());
}

TEST_CASE("seal: bag-info.txt says what the packet is") {
    CHECK(our_packet()["bag-info.txt"] ==
          "Bagging-Date: 2026-05-14\n"
          "Bag-Software-Agent: Cotter 0.1.0\n"
          "External-Identifier: 3f9c1a2b-0000-4000-8000-000000000001\n"
          "Internal-Sender-Identifier: 2026-05-14_NUR-07_3f9c1a2b_r1\n"
          "Payload-Oxum: 117.3\n"
          "Packing-Time: 2026-05-14T16:40:12-05:00\n"
          "Revision: 1\n"
          "Contact-Name: A. Tester\n");
}

TEST_CASE("seal: a failing disk is an error at every step") {
    const DeviceKey key = test_key();
    const auto seal = [&](MemoryFiles& files) -> Result<> {
        COTTER_ASSIGN(auto out, files.create("/out/zip", false));
        Sealer sealer(*out, test_face(), key);
        COTTER_TRY(sealer.add(SealedFile::make("job.json", to_bytes("{}"))));
        COTTER_TRY(sealer.finish());
        return out->close();
    };
    for (int n = 1;; ++n) {
        MemoryFiles files;
        files.put("/out/empty", {});
        files.fail_call(n, Errc::no_space, MemoryFiles::Mode::once);
        const auto done = seal(files);
        CHECK(done.has_value() != files.failed());
        if (!files.failed()) {
            CHECK(n > 10);
            break;
        }
    }
}

TEST_CASE("seal: a payload file carries digest and checksum of all its bytes, however long") {
    for (const std::size_t size :
         {std::size_t{0}, std::size_t{1}, std::size_t{256} << 10, (std::size_t{256} << 10) + 1}) {
        Bytes bytes(size);
        for (std::size_t i = 0; i < size; ++i) bytes[i] = static_cast<std::uint8_t>(i * 31 >> 3);
        const SealedFile file = SealedFile::make("a.jpg", bytes);
        CHECK(file.sha256 == sha256_hex(bytes));
        const ZipFile plain = ZipFile::make("data/a.jpg", bytes, Packing::store);
        CHECK(file.file.crc == plain.crc);
        CHECK(file.file.packed == plain.packed);
        CHECK(file.file.name == plain.name);
    }
}
