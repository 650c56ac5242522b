// Order in the archive: bagit.txt, payload, bag-info.txt, the manifests, the signature.
#include "core/packet/seal.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/packet/deflate.h"
#include "core/packet/packet_form.h"

namespace cotter {

using namespace packet_form;

namespace {
constexpr std::size_t kPiece = std::size_t{256} << 10;  // stays in the second-level cache between its two uses

void sort_by_path(std::vector<ManifestLine>& lines) {
    std::sort(lines.begin(), lines.end(), [](const auto& a, const auto& b) { return a.path < b.path; });
}
}  // namespace

SealedFile SealedFile::make(const std::string& path_below_data, Bytes bytes) {
    SealedFile out;
    Hasher hasher;
    for (ByteView rest = bytes; !rest.empty();) {
        const ByteView piece = rest.first(std::min(kPiece, rest.size()));
        hasher.add(piece);
        out.file.crc = crc32_of(piece, out.file.crc);
        rest = rest.subspan(piece.size());
    }
    out.sha256 = hasher.finish_hex();
    out.file.name = "data/" + path_below_data;
    out.file.size = bytes.size();
    out.file.packing = packing_of(path_below_data);
    out.file.packed = out.file.packing == Packing::deflate ? deflate_bytes(bytes) : std::move(bytes);
    return out;
}

Sealer::Sealer(FileWriter& out, PacketFace face, const DeviceKey& key)
    : face_(std::move(face)), key_(key), zip_(out, face_.at) {}

Result<> Sealer::put(std::string_view path, const std::string& text) {
    tags_.push_back({std::string(path), sha256_hex(as_bytes(text))});
    return zip_.add(ZipFile::make(face_.name + "/" + std::string(path), to_bytes(text), packing_of(path)));
}

Result<> Sealer::start() {
    if (std::exchange(started_, true)) return {};
    return put(kDeclaration, bagit_txt());
}

Result<> Sealer::add(SealedFile file) {
    COTTER_TRY(start());
    payload_.push_back({file.file.name, std::move(file.sha256)});
    payload_bytes_ += file.file.size;
    file.file.name = face_.name + "/" + file.file.name;
    return zip_.add(file.file);
}

BagInfo Sealer::info() const {
    BagInfo info;
    const auto say = [&](std::string_view label, std::string value) { info.emplace_back(label, std::move(value)); };
    say(kDateLabel, face_.at.local_date().text());
    say(kAgentLabel, face_.software);
    say(kJobLabel, face_.job);
    say(kNameLabel, face_.name);
    say(kOxumLabel, fmt::format("{}.{}", payload_bytes_, payload_.size()));
    say(kTimeLabel, face_.at.text());
    say(kRevisionLabel, std::to_string(face_.revision));
    if (!face_.previous_tagmanifest_sha256.empty()) say(kPreviousLabel, face_.previous_tagmanifest_sha256);
    info.insert(info.end(), face_.more.begin(), face_.more.end());
    return info;
}

Result<std::string> Sealer::finish() {
    COTTER_TRY(start());
    COTTER_TRY(put(kInfo, bag_info_txt(info())));
    sort_by_path(payload_);
    COTTER_TRY(put(kManifest, manifest_txt(payload_)));
    sort_by_path(tags_);
    const std::string list = manifest_txt(tags_);
    COTTER_TRY(put(kTagManifest, list));
    COTTER_TRY(put(kSignature, key_.sign(as_bytes(list), kPacketNamespace)));
    COTTER_TRY(zip_.finish());
    return sha256_hex(as_bytes(list));
}

}  // namespace cotter
