// Bags made in memory.
#include "tests/core/packet/bag_maker.h"

#include <algorithm>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "core/packet/bag.h"
#include "core/packet/check_ours.h"
#include "core/packet/job_document.h"
#include "core/packet/signature.h"
#include "tests/core/survey/sample_job.h"

namespace cotter::test {

namespace {
std::string digest(HashKind kind, const std::string& text) {
    Hasher hasher(kind);
    hasher.add(as_bytes(text));
    return hasher.finish_hex();
}

std::string manifest_of(const BagTexts& texts, HashKind kind, bool payload) {
    std::vector<ManifestLine> lines;
    for (const auto& [path, text] : texts)
        if (path.starts_with("data/") == payload) lines.push_back({path, digest(kind, text)});
    return manifest_txt(lines);
}
}  // namespace

BagTexts our_packet() {
    JobDocument document;
    document.job = sample_job();
    BagTexts texts{{"data/job.json", job_document_json(document)}, {"data/readings.csv", "place,value\r\n"}};
    std::size_t bytes = 0;
    for (const auto& [path, text] : texts) bytes += text.size();
    texts["bagit.txt"] = bagit_txt();
    texts["manifest-sha256.txt"] = manifest_of(texts, HashKind::sha256, true);
    texts["bag-info.txt"] = bag_info_txt({{"Bagging-Date", "2026-05-14"},
                                          {"Bag-Software-Agent", "Cotter 0.1.0"},
                                          {"External-Identifier", document.job.id().text()},
                                          {"Payload-Oxum", fmt::format("{}.2", bytes)}});
    const std::string list = manifest_of(texts, HashKind::sha256, false);
    texts["tagmanifest-sha256.txt"] = list;
    const Bytes seed(32, 7);
    texts["tagmanifest-sha256.txt.sig"] = DeviceKey::from_seed(seed, "test")->sign(as_bytes(list), kPacketNamespace);
    return texts;
}

BagTexts plain_bag(const std::string& version, HashKind kind, const BagTexts& payload) {
    BagTexts texts;
    for (const auto& [path, text] : payload) texts["data/" + path] = text;
    texts["bagit.txt"] = fmt::format("BagIt-Version: {}\nTag-File-Character-Encoding: UTF-8\n", version);
    texts[fmt::format("manifest-{}.txt", hash_name(kind))] = manifest_of(texts, kind, true);
    return texts;
}

Bytes zip_of(const std::vector<BagEntry>& entries, Packing packing) {
    MemoryFiles files;
    files.put("/out/empty", {});
    {
        auto out = files.create("/out/zip", false).value();
        ZipWriter writer(*out, moment(60));
        bool good = true;
        for (const BagEntry& e : entries) good = good && writer.add(ZipFile::make(e.name, to_bytes(e.text), packing));
        good = good && writer.finish() && out->close();
        REQUIRE(good);
    }
    return files.get("/out/zip");
}

Bytes zipped(const BagTexts& texts) {
    std::vector<BagEntry> entries;
    for (const auto& [path, text] : texts) entries.push_back({"bag/" + path, text});
    return zip_of(entries, Packing::deflate);
}

CheckReport check_bytes(ByteView zip, const ZipLimits& limits) {
    MemoryFiles files;
    files.put("/in/packet.zip", zip);
    SerialWorkers workers;
    return check(files, workers, "/in/packet.zip", {}, limits);
}

CheckReport check_folder(const BagTexts& texts) {
    MemoryFiles files;
    for (const auto& [path, text] : texts) files.put("/bag/" + path, as_bytes(text));
    SerialWorkers workers;
    return check(files, workers, "/bag", {});
}

std::string first_error(const CheckReport& report) {
    const auto it = std::find_if(report.reasons.begin(), report.reasons.end(),
                                 [](const Reason& r) { return r.weight == Weight::error; });
    return it == report.reasons.end() ? "" : it->where + (it->where.empty() ? "" : ": ") + it->what;
}

}  // namespace cotter::test
