// Fuzzes everything that reads a packet from outside: the archive, its bag, its signature. What is promised of packets
// that pass is checked: nothing escapes its folder, no entry gives more bytes than it declared, readings repeat.
#include <cstdlib>

#include "core/packet/bag.h"
#include "core/packet/check.h"
#include "core/packet/path_rules.h"
#include "core/packet/signature.h"
#include "tests/support/memory_files.h"

namespace {

using namespace cotter;

void require(bool promise) {
    if (!promise) std::abort();
}

constexpr ZipLimits kLimits{.entries = 200, .file_size = 1u << 20, .total_size = 4u << 20};

void fuzz_archive(ByteView bytes) {
    MemoryFiles files;
    files.put("/packet.zip", bytes);
    SerialWorkers workers;
    const CheckReport report = check(files, workers, "/packet.zip", {}, kLimits);
    require((report.verdict == Verdict::invalid) <= !report.reasons.empty());
    require(!report.ours || report.verdict == Verdict::invalid || !report.signer_key.empty());
    const auto reader = files.open("/packet.zip").value();
    const auto index = read_zip_index(*reader, kLimits);
    if (!index) return;
    std::uint64_t packed = 0;
    for (const ZipEntry& entry : index->entries) {
        packed += entry.end_at - entry.header_at;
        require(
            unsafe_path(std::string_view(entry.name).substr(0, entry.name.size() - (entry.folder() ? 1 : 0))).empty());
        std::uint64_t given = 0;
        const auto done = read_entry(*reader, entry, [&](ByteView piece) { given += piece.size(); });
        require(given <= entry.size && (!done || given == entry.size));
    }
    require(packed < bytes.size());
}

void fuzz_texts(ByteView bytes) {
    (void)verify_signature(as_text(bytes), as_bytes("message"), kPacketNamespace);
    bool marked = false;
    for (const TagEncoding encoding : {TagEncoding::utf8, TagEncoding::latin1}) {
        const auto text = tag_text(bytes, encoding, marked);
        if (!text) continue;
        (void)parse_bagit_txt(*text);
        (void)parse_bag_info(*text);
        (void)parse_fetch(*text, BagVersion::v1_0);
        const auto manifest =
            parse_manifest(*text, "manifest-md5.txt", *manifest_name("manifest-md5.txt"), BagVersion::v1_0);
        if (!manifest) continue;
        const auto again = parse_manifest(manifest_txt(manifest->lines), "manifest-md5.txt",
                                          *manifest_name("manifest-md5.txt"), BagVersion::v1_0);
        require(again && again->lines.size() == manifest->lines.size());
        for (std::size_t i = 0; i < again->lines.size(); ++i) {
            const std::string& path = manifest->lines[i].path;
            require(path.starts_with('*') ||
                    again->lines[i].path == path);  // a '*' in front is taken for a tool's mark
        }
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const cotter::ByteView bytes(data, size);
    fuzz_archive(bytes);
    fuzz_texts(bytes);
    return 0;
}
