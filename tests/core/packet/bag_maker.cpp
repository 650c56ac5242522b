// Bags made in memory.
#include "tests/core/packet/bag_maker.h"

#include <algorithm>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "core/packet/bag.h"
#include "tests/support/raw_zip.h"

namespace cotter::test {

namespace {

std::string digest(HashKind kind, const std::string& text) {
    Hasher hasher(kind);
    hasher.add(as_bytes(text));
    return hasher.finish_hex();
}

const Instant kAt = Instant::parse("2026-05-14T16:40:12-05:00").value();

}  // namespace

DeviceKey test_key() {
    return DeviceKey::from_seed(Bytes(32, 7), "test").value();
}

PacketFace test_face() {
    PacketFace face;
    face.name = "2026-05-14_NUR-07_3f9c1a2b_r1";
    face.at = kAt;
    face.job = "3f9c1a2b-0000-4000-8000-000000000001";
    face.software = "Cotter 0.1.0";
    face.more = {{"Contact-Name", "A. Tester"}};
    return face;
}

Bytes our_zip(const PacketFace& face) {
    MemoryFiles files;
    files.put("/out/empty", {});
    const DeviceKey key = test_key();
    auto out = files.create("/out/zip", false).value();
    Sealer sealer(*out, face, key);
    bool good =
        sealer.add(SealedFile::make("photos/axle1-left_cap_before_01.jpg", to_bytes("\xff\xd8 a picture \xff\xd9"))) &&
        sealer.add(
            SealedFile::make("job.json", to_bytes("{\"format\": \"cotter-job\", \"job\": \"" + face.job + "\"}\n"))) &&
        sealer.add(SealedFile::make("readings.csv", to_bytes("place,value\r\naxle1-left,7.10\r\n")));
    good = good && sealer.finish() && out->close();
    REQUIRE(good);
    return files.get("/out/zip");
}

BagTexts our_packet() {
    MemoryFiles files;
    files.put("/zip", our_zip());
    const auto reader = files.open("/zip").value();
    BagTexts texts;
    const ZipIndex index = read_zip_index(*reader, {}).value();
    for (const ZipEntry& entry : index.entries) {
        std::string& text = texts[entry.name.substr(entry.name.find('/') + 1)];
        REQUIRE(read_entry(*reader, entry, [&](ByteView piece) { text += as_text(piece); }));
    }
    return texts;
}

std::string listed(HashKind kind, const std::string& path, const std::string& text) {
    return manifest_txt({{path, digest(kind, text)}});
}

BagTexts plain_bag(const std::string& version, HashKind kind, const BagTexts& payload) {
    BagTexts texts;
    std::string manifest;
    for (const auto& [path, text] : payload) {
        texts["data/" + path] = text;
        manifest += listed(kind, "data/" + path, text);
    }
    texts["bagit.txt"] = fmt::format("BagIt-Version: {}\nTag-File-Character-Encoding: UTF-8\n", version);
    texts[fmt::format("manifest-{}.txt", hash_name(kind))] = manifest;
    return texts;
}

Bytes zipped(const BagTexts& texts) {
    RawZip zip;
    for (const auto& [path, text] : texts) zip.add("bag/" + path, text);
    return zip.bytes();
}

CheckReport check_bytes(ByteView zip, const ZipLimits& limits, const CheckHooks& hooks) {
    MemoryFiles files;
    files.put("/in/packet.zip", zip);
    SerialWorkers workers;
    return check(files, workers, "/in/packet.zip", hooks, limits);
}

CheckReport check_folder(const BagTexts& texts, const CheckHooks& hooks) {
    MemoryFiles files;
    for (const auto& [path, text] : texts) files.put("/bag/" + path, as_bytes(text));
    SerialWorkers workers;
    return check(files, workers, "/bag", hooks);
}

std::string first(const CheckReport& report, Weight weight) {
    const auto it =
        std::find_if(report.reasons.begin(), report.reasons.end(), [&](const Reason& r) { return r.weight == weight; });
    return it == report.reasons.end() ? "" : it->where + (it->where.empty() ? "" : ": ") + it->what;
}

}  // namespace cotter::test
