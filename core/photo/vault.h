// The vault keeps each photo's original bytes under their SHA-256, with a preview and a thumbnail that can be made
// again.
//
// On disk, under the vault's folder (xx = the first two digits of the hash):
//   photos/xx/<sha256>.jpg|png   the original, byte for byte; written once, never changed
//   previews/xx/<sha256>.jpg     upright, at most 2,048 px
//   thumbs/xx/<sha256>.jpg       upright, at most 256 px
// Any thread; two threads may take in the same photo at once. One process at a time (whoever opens the book locks it).
#pragma once

#include <mutex>
#include <string>

#include "core/base/files.h"
#include "core/base/ports.h"
#include "core/photo/image.h"
#include "core/photo/quality.h"

namespace cotter {

inline constexpr int kPreviewSide = 2'048;
inline constexpr int kThumbnailSide = 256;

// A photo that is on the disk.
struct Stored {
    std::string sha256;  // lower-case hex, of the original's bytes
    std::uint64_t size = 0;
    std::string path;  // of the original, under the vault's folder: "photos/ab/ab….jpg"
    PhotoInfo info;
    Quality quality;
    bool was_there = false;  // the same photo had been taken in before
};

class PhotoVault {
public:
    // `files` and `workers` must outlive the vault. The folder is made at the first intake; the
    // folder that holds it must be on the disk already.
    PhotoVault(Files& files, Workers& workers, std::string folder);

    // Success means that the original would survive a power cut. Fails as probe() and decode_upright() do for photos
    // that cannot be used, before anything is written; and as Files does when the original cannot be written, leaving
    // no part of it. Preview and thumbnail are written too; where that fails they are made again when asked for.
    [[nodiscard]] Result<Stored> take_in(ByteView bytes);

    // The bytes as taken in. Fails `not_found` when there is none of that hash, `damaged` when they no longer have it,
    // and `refused` when `sha256` is no hash.
    [[nodiscard]] Result<Bytes> original(const std::string& sha256);

    // As JPEG; made again from the original when missing or broken off.
    [[nodiscard]] Result<Bytes> preview(const std::string& sha256);
    [[nodiscard]] Result<Bytes> thumbnail(const std::string& sha256);

    // Removes the unfinished files that a power cut left behind. At opening, before any intake.
    [[nodiscard]] Result<> sweep();

private:
    struct Copies {
        Bytes preview, thumbnail;
        Quality quality;
    };
    static Result<Copies> make_copies(ByteView bytes, const PhotoInfo& info);
    [[nodiscard]] std::string path_of(const char* kind, const std::string& sha256, Media media) const;
    Result<> make_room(const std::string& path);
    Result<bool> keep_original(const std::string& path, const std::string& sha256, ByteView bytes);
    Result<> keep_copy(const std::string& path, ByteView bytes);
    Result<Bytes> copy(const char* kind, const std::string& sha256);
    Result<> sweep_folder(const std::string& folder);

    Files& files_;
    Workers& workers_;
    std::string folder_;
    std::mutex writing_;  // two intakes of one photo would share its temporary file
};

}  // namespace cotter
