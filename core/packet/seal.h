// Puts payload files into a packet: bag, signature and archive around them, the same bytes for the same input.
// One thread, but SealedFile::make may run on several at once.
#pragma once

#include <string>
#include <vector>

#include "core/packet/bag.h"
#include "core/packet/signature.h"
#include "core/packet/zip_writer.h"

namespace cotter {

// What bag-info.txt says of a packet.
struct PacketFace {
    std::string name;  // of the packet and of its top folder
    Instant at;        // of the hand-over; the time of every entry
    std::string job;   // UUID
    int revision = 1;
    std::string previous_tagmanifest_sha256;  // of revision − 1; empty for the first
    std::string software;                     // "Cotter 0.1.0"
    BagInfo more;                             // further labels, in this order
};

// A payload file made ready: digest and checksum taken in one pass, packed if it is of a kind that is.
struct SealedFile {
    ZipFile file;  // named "data/…"
    std::string sha256;
    [[nodiscard]] static SealedFile make(const std::string& path_below_data, Bytes bytes);
};

class Sealer {
public:
    // `out` and `key` must outlive it.
    Sealer(FileWriter& out, PacketFace face, const DeviceKey& key);

    // Writes one payload file. In the archive they stand in this order, in the manifest sorted.
    Result<> add(SealedFile file);
    // Writes the tag files, the signature and the directory. Gives the tag manifest's SHA-256: the packet's
    // fingerprint.
    Result<std::string> finish();

private:
    Result<> put(std::string_view path, const std::string& text);
    Result<> start();
    [[nodiscard]] BagInfo info() const;

    PacketFace face_;
    const DeviceKey& key_;
    ZipWriter zip_;
    std::vector<ManifestLine> payload_, tags_;
    std::uint64_t payload_bytes_ = 0;
    bool started_ = false;
};

}  // namespace cotter
