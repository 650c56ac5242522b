// Intake in two steps: everything that can be computed (hash beside decoding), then everything that is written.
#include "core/photo/vault.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/base/hash.h"
#include "core/photo/jpeg_parts.h"

namespace cotter {

namespace {

constexpr const char* kOriginals = "photos";
constexpr const char* kPreviews = "previews";
constexpr const char* kThumbs = "thumbs";
constexpr int kPreviewQuality = 85;    // no visible loss on a phone; about 500 KB
constexpr int kThumbnailQuality = 80;  // about 12 KB

Result<> check_hash(const std::string& sha256) {
    const bool hex = sha256.find_first_not_of("0123456789abcdef") == std::string::npos;
    if (hex && sha256.size() == 64) return {};
    return fail(Errc::refused, "this is not the name of a stored photo", sha256.substr(0, 80));
}

std::string path_in_vault(const char* kind, const std::string& sha256, Media media) {
    return std::string(kind) + "/" + sha256.substr(0, 2) + "/" + sha256 + "." + std::string(media_extension(media));
}

}  // namespace

PhotoVault::PhotoVault(Files& files, Workers& workers, std::string folder)
    : files_(files), workers_(workers), folder_(std::move(folder)) {}

std::string PhotoVault::path_of(const char* kind, const std::string& sha256, Media media) const {
    return join_path(folder_, path_in_vault(kind, sha256, media));
}

Result<PhotoVault::Copies> PhotoVault::make_copies(ByteView bytes, const PhotoInfo& info) {
    COTTER_ASSIGN(Image image, decode_upright(bytes, info, kPreviewSide));
    Copies out;
    out.quality = measure_quality(image);
    COTTER_ASSIGN(out.preview, encode_jpeg(image, kPreviewQuality));
    COTTER_ASSIGN(out.thumbnail, encode_jpeg(shrink(std::move(image), kThumbnailSide), kThumbnailQuality));
    return out;
}

// The folder for `path`, with the names of its parents on the disk, up to and including the vault's own folder. They
// are brought there even when the folder exists: it may have been made a moment ago by an intake that then failed.
Result<> PhotoVault::make_room(const std::string& path) {
    const std::string shelf = parent_folder(path), kind = parent_folder(shelf);
    COTTER_TRY(files_.make_folders(shelf));
    COTTER_TRY(files_.sync_folder(kind));
    COTTER_TRY(files_.sync_folder(folder_));
    return files_.sync_folder(parent_folder(folder_));
}

// True when it was there already, whole; a damaged one is healed by the bytes at hand.
Result<bool> PhotoVault::keep_original(const std::string& path, const std::string& sha256, ByteView bytes) {
    COTTER_TRY(make_room(path));
    const auto there = files_.info(path);
    if (there && there->size == bytes.size()) {
        const auto old = read_file(files_, path, kMostPhotoBytes);
        if (old && sha256_hex(*old) == sha256) {
            COTTER_TRY(files_.sync_folder(parent_folder(path)));
            return true;
        }
    }
    COTTER_TRY(replace_file(files_, path, bytes));
    return false;
}

Result<> PhotoVault::keep_copy(const std::string& path, ByteView bytes) {
    COTTER_TRY(files_.make_folders(parent_folder(path)));
    return replace_file(files_, path, bytes);
}

Result<Stored> PhotoVault::take_in(ByteView bytes) {
    Stored stored;
    COTTER_ASSIGN(stored.info, probe(bytes));
    stored.size = bytes.size();
    std::optional<Result<Copies>> copies;
    workers_.run(2, [&](std::size_t piece) {
        if (piece == 0)
            copies = make_copies(bytes, stored.info);
        else
            stored.sha256 = sha256_hex(bytes);
    });
    if (!*copies) return unexpected(std::move(*copies).error());
    stored.quality = (*copies)->quality;

    const std::string& sha = stored.sha256;
    stored.path = path_in_vault(kOriginals, sha, stored.info.media);
    Result<bool> kept = false;
    const std::lock_guard guard(writing_);
    workers_.run(3, [&](std::size_t piece) {
        if (piece == 0) kept = keep_original(join_path(folder_, stored.path), sha, bytes);
        if (piece == 1) (void)keep_copy(path_of(kPreviews, sha, Media::jpeg), (*copies)->preview);
        if (piece == 2) (void)keep_copy(path_of(kThumbs, sha, Media::jpeg), (*copies)->thumbnail);
    });
    COTTER_ASSIGN(stored.was_there, std::move(kept));
    return stored;
}

Result<Bytes> PhotoVault::original(const std::string& sha256) {
    COTTER_TRY(check_hash(sha256));
    for (const Media media : {Media::jpeg, Media::png}) {
        const std::string path = path_of(kOriginals, sha256, media);
        auto bytes = read_file(files_, path, kMostPhotoBytes);
        if (!bytes && bytes.error().code == Errc::not_found) continue;
        if (bytes && sha256_hex(*bytes) != sha256)
            return fail(Errc::damaged, "the stored photo has changed on the disk", path,
                        "take it in again, or bring it back from a packet or backup");
        return bytes;
    }
    return fail(Errc::not_found, "there is no stored photo of this name", sha256);
}

Result<Bytes> PhotoVault::copy(const char* kind, const std::string& sha256) {
    COTTER_TRY(check_hash(sha256));
    const std::string path = path_of(kind, sha256, Media::jpeg);
    if (auto kept = read_file(files_, path, kMostPhotoBytes); kept && jpeg_parts(*kept)) return kept;
    COTTER_ASSIGN(const Bytes bytes, original(sha256));
    COTTER_ASSIGN(const PhotoInfo info, probe(bytes));
    COTTER_ASSIGN(Copies copies, make_copies(bytes, info));
    const std::lock_guard guard(writing_);
    (void)keep_copy(path_of(kPreviews, sha256, Media::jpeg), copies.preview);  // where the disk is full, the next call
    (void)keep_copy(path_of(kThumbs, sha256, Media::jpeg), copies.thumbnail);  // makes them once more
    return kind == kThumbs ? std::move(copies.thumbnail) : std::move(copies.preview);
}

Result<Bytes> PhotoVault::preview(const std::string& sha256) {
    return copy(kPreviews, sha256);
}
Result<Bytes> PhotoVault::thumbnail(const std::string& sha256) {
    return copy(kThumbs, sha256);
}

Result<> PhotoVault::sweep() {
    const std::lock_guard guard(writing_);
    for (const char* kind : {kOriginals, kPreviews, kThumbs}) {
        const std::string kind_folder = join_path(folder_, kind);
        const auto shelves = files_.list(kind_folder);
        if (!shelves && shelves.error().code == Errc::not_found) continue;
        if (!shelves) return unexpected(shelves.error());
        for (const std::string& shelf : *shelves) COTTER_TRY(sweep_folder(join_path(kind_folder, shelf)));
    }
    return {};
}

Result<> PhotoVault::sweep_folder(const std::string& folder) {
    COTTER_ASSIGN(const auto names, files_.list(folder));
    for (const std::string& name : names)
        if (name.ends_with(".part")) COTTER_TRY(files_.remove(join_path(folder, name)));
    return {};
}

}  // namespace cotter
