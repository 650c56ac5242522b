// Sealing good packets.
#include "tests/support/office_packets.h"

#include <fmt/format.h>

#include "core/base/hash.h"
#include "core/packet/pack.h"
#include "core/packet/seal.h"
#include "core/photo/image.h"
#include "core/report/csv.h"
#include "tests/support/memory_files.h"

namespace cotter::test {

DeviceKey office_key(const std::string& name) {
    Hasher hasher;
    hasher.add(as_bytes("a test key that proves nothing: " + name));
    return *DeviceKey::from_seed(hasher.finish(), name);
}

std::string office_signers() {
    std::string out = "# the office's technicians\n";
    for (int i = 0; i < 6; ++i)
        out += fmt::format("\"{}\" namespaces=\"cotter-packet\" {}\n", office_technician(i),
                           office_key(office_technician(i)).public_line());
    return out;
}

PhotoMaker::PhotoMaker(int kilobytes) {
    Image image = make_image(32 * std::max(1, kilobytes / 10), 240);
    std::uint32_t noise = 1;
    for (std::uint8_t& byte : image.pixels) {
        noise = noise * 1664525u + 1013904223u;
        byte = static_cast<std::uint8_t>(noise >> 24);
    }
    base_ = *encode_jpeg(image, 90);
}

// The same picture with another comment in it (ITU-T T.81, COM), behind the JFIF segment.
Bytes PhotoMaker::photo(int number, int part) const {
    const std::string words = fmt::format("photo {} of job {}", part, number);
    std::size_t at = 2;
    if (base_[2] == 0xFF && base_[3] == 0xE0) at += 2u + static_cast<std::size_t>(base_[4] << 8 | base_[5]);
    Bytes out(base_.begin(), base_.begin() + static_cast<std::ptrdiff_t>(at));
    const std::size_t size = words.size() + 2;
    for (const std::size_t byte : {std::size_t{0xFF}, std::size_t{0xFE}, size >> 8, size & 0xFF})
        out.push_back(static_cast<std::uint8_t>(byte));
    out.insert(out.end(), words.begin(), words.end());
    out.insert(out.end(), base_.begin() + static_cast<std::ptrdiff_t>(at), base_.end());
    return out;
}

PacketParts office_parts(const Job& job, int number, const PhotoMaker& photos) {
    PacketParts parts;
    parts.document.job = job;
    parts.signer = job.only<Visit>()->technician;
    auto& shots = parts.document.job.all<Shot>();
    for (std::size_t i = 0; i < shots.size(); ++i) {
        const Bytes bytes = photos.photo(number, static_cast<int>(i));
        shots[i].photo.sha256 = sha256_hex(bytes);
        shots[i].photo.media_type = "image/jpeg";
        shots[i].photo.bytes = static_cast<std::int64_t>(bytes.size());
        shots[i].photo.width = 32;
        shots[i].photo.height = 240;
    }
    parts.document.photos = name_photos(parts.document.job);
    for (std::size_t i = 0; i < shots.size(); ++i) {
        PacketPhoto& photo = parts.document.photos[i];
        photo.sha256 = shots[i].photo.sha256;
        parts.photos[photo.file] = photos.photo(number, static_cast<int>(i));
    }
    return parts;
}

PacketParts revised(PacketParts parts, const std::string& previous) {
    ++parts.revision;
    ++parts.document.revision;
    parts.document.previous_tagmanifest_sha256 = previous;
    return parts;
}

SealedPacket seal(const PacketParts& parts) {
    const Job& job = parts.document.job;
    PacketFace face{packet_name(job, parts.revision),
                    packet_time(job),
                    job.id().text(),
                    parts.revision,
                    parts.document.previous_tagmanifest_sha256,
                    "Cotter 0.1.0",
                    {{"Contact-Name", job.only<Visit>()->technician}}};
    MemoryFiles files;
    files.put("/out/there", {});
    const DeviceKey key = office_key(parts.signer);
    const auto out = sure(files.create("/out/zip", false));
    Sealer sealer(*out, face, key);
    std::string json = job_document_json(parts.document);
    if (parts.change_json) parts.change_json(json);
    for (const auto& [path, bytes] : parts.photos) sure(sealer.add(SealedFile::make(path, bytes)));
    sure(sealer.add(SealedFile::make("job.json", to_bytes(json))));
    sure(sealer.add(SealedFile::make("readings.csv", to_bytes(readings_csv(job)))));
    if (!parts.more_file.empty()) sure(sealer.add(SealedFile::make(parts.more_file, to_bytes("more"))));
    SealedPacket packet{face.name, {}, sure(sealer.finish())};
    sure(out->close());
    packet.zip = files.get("/out/zip");
    return packet;
}

SealedPacket office_packet(int number, const OfficeShape& shape, const PhotoMaker& photos) {
    return seal(office_parts(office_job(number, shape), number, photos));
}

}  // namespace cotter::test
