// Opening a book: whose file is it, how old, and is it free.
#include <algorithm>
#include <fmt/format.h>

#include "core/book/book.h"
#include "core/book/schema.h"

namespace cotter {

namespace {

constexpr std::string_view kMagic{"SQLite format 3\0", 16};  // https://www.sqlite.org/fileformat.html, 1.3
constexpr std::size_t kHeader = 100;
constexpr std::size_t kUserVersionAt = 60;
constexpr std::size_t kApplicationIdAt = 68;

std::int64_t big_endian_32(ByteView bytes, std::size_t at) {
    return std::int64_t{bytes[at]} << 24 | bytes[at + 1] << 16 | bytes[at + 2] << 8 | bytes[at + 3];
}

unexpected<Error> not_a_book(const std::string& path) {
    return fail(Errc::not_ours, "this file is not a book", path, "choose another folder");
}

unexpected<Error> newer_book(const std::string& path, std::int64_t version) {
    return fail(Errc::too_new,
                fmt::format("the book was written by a newer program (version {} of its tables, known here: {})",
                            version, kBookVersion),
                path, "update this program");
}

Result<> check_marks(const std::string& path, std::int64_t application, std::int64_t version) {
    if (application != kBookApplicationId) return not_a_book(path);
    if (version > kBookVersion) return newer_book(path, version);
    if (version < 1)
        return fail(Errc::damaged, "the book does not say its version", path, "put back the last good copy");
    return {};
}

// Looks at the file's first bytes before SQLite does: SQLite may write into what it opens.
// A book whose making was interrupted has no bytes yet, or zeros, or only a header without marks; SQLite puts these
// right from its own journal.
Result<> check_header(Files& files, const std::string& path, std::uint64_t size) {
    if (size == 0) return {};
    COTTER_ASSIGN(const auto reader, files.open(path));
    Bytes head(static_cast<std::size_t>(std::min<std::uint64_t>(size, kHeader)));
    COTTER_TRY(reader->read_at(0, head));
    if (std::all_of(head.begin(), head.end(), [](std::uint8_t byte) { return byte == 0; })) return {};
    if (!as_text(head).starts_with(kMagic)) return not_a_book(path);
    if (head.size() < kHeader) return fail(Errc::damaged, "the book is cut off", path, "put back the last good copy");
    const std::int64_t application = big_endian_32(head, kApplicationIdAt);
    const std::int64_t version = big_endian_32(head, kUserVersionAt);
    if (application == 0 && version == 0) return {};
    return check_marks(path, application, version);
}

// The marks once more through SQLite, which also knows what is still in the write-ahead log. True: nothing is in it.
Result<bool> check_marks_inside(Sqlite& db, const std::string& path) {
    COTTER_ASSIGN(const auto application, db.integer("PRAGMA application_id"));
    COTTER_ASSIGN(const auto version, db.integer("PRAGMA user_version"));
    COTTER_ASSIGN(const auto tables, db.integer("SELECT count(*) FROM sqlite_schema"));
    if (application == 0 && version == 0 && tables == 0) return true;
    COTTER_TRY(check_marks(path, application, version));
    return false;
}

// Write-ahead log, synced at each commit. Extra: the switch to it deletes a rollback journal, and should that deletion
// be lost in a power cut, the journal would come back and undo all that was logged since; so the folder is synced too.
// Exclusive (set before): no shared memory is needed, and no other program can change the book behind its back.
Result<> set_up(Sqlite& db, const std::string& path) {
    COTTER_TRY(db.run("PRAGMA synchronous=EXTRA"));
    COTTER_ASSIGN(const std::string mode, db.text("PRAGMA journal_mode=WAL"));
    if (mode != "wal") return fail(Errc::io, "this place cannot hold a book (no write-ahead log)", path);
    return db.run_script(
        "PRAGMA wal_autocheckpoint=256; PRAGMA journal_size_limit=4194304; PRAGMA cell_size_check=ON;");
}

Result<std::unique_ptr<Sqlite>> open_database(Files& files, const std::string& path, bool create,
                                              const std::string& vfs) {
    const auto info = files.info(path);
    if (!info && info.error().code != Errc::not_found) return unexpected(info.error());
    if (info && info->kind != FileInfo::Kind::file) return not_a_book(path);
    COTTER_TRY(check_header(files, path, info ? info->size : 0));
    COTTER_ASSIGN(auto db, Sqlite::open(path, create, vfs));
    db->tidy_when_closed(false);
    COTTER_TRY(db->run("PRAGMA locking_mode=EXCLUSIVE"));
    COTTER_ASSIGN(const bool empty, check_marks_inside(*db, path));
    if (empty && !create) return fail(Errc::not_found, "there is no book here", path);
    db->tidy_when_closed(true);
    COTTER_TRY(set_up(*db, path));
    COTTER_TRY(bring_up_to_date(*db));
    return db;
}

Result<> make_folder(Files& files, const std::string& folder) {
    if (const auto info = files.info(folder); info && info->kind == FileInfo::Kind::folder) return {};
    COTTER_TRY(files.make_folders(folder));
    return files.sync_folder(parent_folder(folder));
}

Result<std::unique_ptr<FileLock>> lock_folder(Files& files, const std::string& folder) {
    auto lock = files.lock(join_path(folder, "in-use"));
    if (!lock && lock.error().code == Errc::busy)
        return fail(Errc::busy, "the book is in use by another process", folder, "close it there and try again");
    return lock;
}

}  // namespace

Result<std::unique_ptr<Book>> Book::open(Files& files, const std::string& folder, OpenMode mode,
                                         const std::string& vfs) {
    const std::string path = join_path(folder, "book.sqlite");
    const bool create = mode == OpenMode::create;
    if (create) {
        COTTER_TRY(make_folder(files, folder));
    } else if (const auto info = files.info(path); !info) {
        if (info.error().code != Errc::not_found) return unexpected(info.error());
        return fail(Errc::not_found, "there is no book here", folder);
    }
    COTTER_ASSIGN(auto lock, lock_folder(files, folder));
    COTTER_ASSIGN(auto db, open_database(files, path, create, vfs));
    COTTER_TRY(files.sync_folder(folder));  // the file's name; an earlier opening may have failed before this
    return std::unique_ptr<Book>(new Book(std::move(lock), std::move(db)));
}

}  // namespace cotter
