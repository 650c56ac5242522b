// Honest zips of other programs and our own: what is read, what is written.
#include <doctest/doctest.h>

#include <algorithm>

#include "core/packet/zip_writer.h"
#include "tests/core/packet/bag_maker.h"
#include "tests/support/raw_zip.h"

using namespace cotter;
using namespace cotter::test;

namespace {

struct Unpacked {
    std::string text;
    std::string error;
};

// Reads the first entry of these bytes, piece by piece and once more into one buffer; both must give the same.
Unpacked unpack(ByteView zip) {
    MemoryFiles files;
    files.put("/zip", zip);
    const auto reader = files.open("/zip").value();
    const auto index = read_zip_index(*reader, {});
    if (!index) return {"", index.error().line()};
    Unpacked out;
    const auto done = read_entry(*reader, index->entries.at(0), [&](ByteView piece) { out.text += as_text(piece); });
    if (!done) out.error = done.error().line();
    Bytes whole(static_cast<std::size_t>(index->entries[0].size));
    std::string again;
    const auto into = read_entry(
        *reader, index->entries[0], [&](ByteView piece) { again += as_text(piece); }, whole);
    CHECK(into.has_value() == done.has_value());
    CHECK(again == out.text);
    if (into) CHECK(as_text(whole) == out.text);
    return out;
}

Bytes written(const std::vector<ZipFile>& all) {
    MemoryFiles files;
    files.put("/out/empty", {});
    auto out = files.create("/out/zip", false).value();
    ZipWriter writer(*out, test_face().at);
    for (const ZipFile& file : all) REQUIRE(writer.add(file));
    REQUIRE(writer.finish());
    REQUIRE(out->close());
    return files.get("/out/zip");
}

}  // namespace

TEST_CASE("zip: stored and deflated entries come out as they went in") {
    std::string text;
    for (int i = 0; i < 200'000; ++i) text += std::to_string(i * 7919 % 1000);
    RawZip stored, deflated, empty;
    stored.add("bag/a", text);
    deflated.add_deflated("bag/a", text);
    empty.add_deflated("bag/a", "");
    CHECK(unpack(stored.bytes()).text == text);
    CHECK(unpack(deflated.bytes()).text == text);
    CHECK(unpack(empty.bytes()).error.empty());
    for (const Packing packing : {Packing::store, Packing::deflate})
        CHECK(unpack(written({ZipFile::make("bag/a", to_bytes(text), packing)})).text == text);
}

TEST_CASE("zip: what other writers add is read past") {
    SUBCASE("data descriptors in their four forms") {
        for (const bool signature : {true, false})
            for (const int width : {4, 8}) {
                RawZip zip;
                RawEntry& e = zip.add_deflated("bag/a", "alpha");
                e.local.flags = e.central.flags = 8;
                e.descriptor = (signature ? "PK\x07\x08" : "") + le(e.central.crc, 4) + le(e.central.packed, width) +
                               le(e.central.size, width);
                e.local.crc = e.local.packed = e.local.size = 0;
                CHECK(unpack(zip.bytes()).text == "alpha");
            }
    }
    SUBCASE("extra fields, comments, folders, DOS attributes, zip64 throughout") {
        RawZip zip;
        RawEntry& e = zip.add("bag/a", "alpha");
        e.local.extra = le(0x5455, 2) + le(5, 2) + le(1, 1) + le(0, 4) + le(1, 2) + le(16, 2) + le(5, 8) + le(5, 8);
        e.local.packed = e.local.size = 0xffffffffu;
        e.central.extra = le(1, 2) + le(24, 2) + le(5, 8) + le(5, 8) + le(0, 8);
        e.central.packed = e.central.size = 0xffffffffu;
        e.central.offset = 0xffffffffu;
        e.central.comment = "why not";
        e.central.made_by = 0x0014;
        e.central.attributes = 0x20;
        zip.add("bag/folder/", "").central.attributes = 0x41ed0010;
        zip.zip64 = true;
        zip.comment = "made by somebody";
        CHECK(unpack(zip.bytes()).text == "alpha");
        CHECK(unpack(zip.bytes()).error.empty());
    }
}

TEST_CASE("zip: data that is not what its headers say") {
    RawZip zip;
    RawEntry& e = zip.add_deflated("bag/a", std::string(1000, 'a') + "b");
    const std::string packed = e.packed;
    const auto both_packed = [&](std::string bytes) {
        e.local.packed = e.central.packed = static_cast<std::uint32_t>(bytes.size());
        e.packed = std::move(bytes);
        return unpack(zip.bytes()).error;
    };
    CHECK(both_packed(packed.substr(0, packed.size() - 1)) == "its compressed data is cut off: bag/a");
    CHECK(both_packed(packed + "x") == "there are bytes behind the end of its compressed data: bag/a");
    CHECK(both_packed("\xff" + packed) == "its compressed data is broken: bag/a");
    both_packed(packed);
    e.local.crc = e.central.crc ^= 1;
    CHECK(unpack(zip.bytes()).error == "its bytes do not match its checksum in the archive: bag/a");
    e.local.size = e.central.size = 10;
    CHECK(unpack(zip.bytes()).error == "it unpacks to more than it declares: bag/a");
    e.local.size = e.central.size = 2000;
    CHECK(unpack(zip.bytes()).error == "it unpacks to less than it declares: bag/a");
}

TEST_CASE("zip: our writer gives the same bytes for the same entries, and knows them again") {
    const auto files = [] {
        return std::vector<ZipFile>{ZipFile::make("bag/a.jpg", to_bytes("alpha"), Packing::store),
                                    ZipFile::make("bag/b.txt", to_bytes("beta beta beta"), Packing::deflate)};
    };
    const Bytes zip = written(files());
    CHECK(zip == written(files()));
    MemoryFiles disk;
    disk.put("/zip", zip);
    const auto reader = disk.open("/zip").value();
    const ZipIndex index = read_zip_index(*reader, {}).value();
    CHECK_FALSE(not_as_ours(index));
    CHECK(packed_as_ours(*reader, index.entries[1], as_bytes("beta beta beta")).value());
    CHECK_FALSE(packed_as_ours(*reader, index.entries[1], as_bytes("beta beta gamma")).value());
    CHECK(index.entries[0].at == DosTime::of(test_face().at));
}

TEST_CASE("zip: the time is the wall time at the place, in steps of two seconds") {
    const DosTime at = DosTime::of(Instant::parse("2026-05-14T16:40:13-05:00").value());
    CHECK(at.date == ((2026 - 1980) << 9 | 5 << 5 | 14));
    CHECK(at.time == (16 << 11 | 40 << 5 | 6));
    CHECK(DosTime::of(Instant::parse("1979-12-31T23:59:59+00:00").value()) == DosTime{0, 1 << 5 | 1});
}

namespace {

// A file of many gigabytes that exists only as a rule: pieces at known places, zeros between.
class SparseFile final : public FileReader, public FileWriter {
public:
    Result<> write(ByteView bytes) override {
        if (bytes.size() <= 4096) pieces_.emplace_back(size_, Bytes(bytes.begin(), bytes.end()));
        size_ += bytes.size();
        return {};
    }
    Result<> sync() override { return {}; }
    Result<> close() override { return {}; }
    [[nodiscard]] std::uint64_t size() const override { return size_; }
    Result<> read_at(std::uint64_t offset, std::span<std::uint8_t> out) const override {
        if (offset > size_ || out.size() > size_ - offset) return fail(Errc::damaged, "past the end");
        std::fill(out.begin(), out.end(), std::uint8_t{0});
        for (const auto& [at, bytes] : pieces_)
            for (std::size_t i = 0; i < bytes.size(); ++i)
                if (at + i >= offset && at + i < offset + out.size())
                    out[static_cast<std::size_t>(at + i - offset)] = bytes[i];
        return {};
    }

private:
    std::uint64_t size_ = 0;
    std::vector<std::pair<std::uint64_t, Bytes>> pieces_;
};

}  // namespace

TEST_CASE("zip: archives over 4 GiB carry zip64 fields, and are read back") {
    SparseFile file;
    ZipWriter writer(file, test_face().at);
    ZipFile large = ZipFile::make("bag/x.jpg", Bytes(std::size_t{100} << 20), Packing::store);
    constexpr int kCount = 42;
    for (int i = 0; i < kCount; ++i) {
        large.name = "bag/" + std::to_string(i) + ".jpg";
        REQUIRE(writer.add(large));
    }
    REQUIRE(writer.add(ZipFile::make("bag/last.txt", to_bytes("the end"), Packing::deflate)));
    REQUIRE(writer.finish());
    REQUIRE(file.size() > (std::uint64_t{4} << 30));
    const auto index = read_zip_index(file, {});
    REQUIRE_MESSAGE(index, (index ? "" : index.error().line()));
    CHECK(index->entries.size() == kCount + 1);
    CHECK_FALSE(not_as_ours(*index));
    CHECK(index->entries.back().header_at > zip::kIn64);
    std::string text;
    REQUIRE(read_entry(file, index->entries.back(), [&](ByteView piece) { text += as_text(piece); }));
    CHECK(text == "the end");
}
