// Whole-file reading and the replace-or-nothing write, over any Files.
#include "core/base/files.h"

namespace cotter {

Result<Bytes> read_file(Files& files, const std::string& path, std::uint64_t max_bytes) {
    COTTER_ASSIGN(auto reader, files.open(path));
    if (reader->size() > max_bytes)
        return fail(Errc::refused, "the file is larger than the " + std::to_string(max_bytes) + " bytes allowed", path);
    Bytes bytes(static_cast<std::size_t>(reader->size()));
    COTTER_TRY(reader->read_at(0, bytes));
    return bytes;
}

namespace {
Result<> write_synced(Files& files, const std::string& path, ByteView bytes, bool secret) {
    COTTER_ASSIGN(auto writer, files.create(path, secret));
    COTTER_TRY(writer->write(bytes));
    COTTER_TRY(writer->sync());
    return writer->close();
}
}  // namespace

Result<> replace_file(Files& files, const std::string& path, ByteView bytes, bool secret) {
    const std::string part = path + ".part";
    auto done = write_synced(files, part, bytes, secret);
    if (done) done = files.rename(part, path);
    if (!done) {
        (void)files.remove(part);  // best effort: a part file never counts as the file
        return done;
    }
    return files.sync_folder(parent_folder(path));
}

}  // namespace cotter
