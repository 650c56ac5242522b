// The one file that knows sqlite3.h.
#include "core/store/sqlite.h"

#include <fmt/format.h>
#include <sqlite3.h>
#include <unordered_map>

namespace cotter {

namespace {

unexpected<Error> failure(int code, const char* message, const SqliteName& name) {
    const std::string& path = name.path;
    const std::string& called = name.called;
    switch (code & 0xff) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return fail(Errc::busy, fmt::format("the {} is in use by another process", called), path,
                        "close it there and try again");
        case SQLITE_FULL:
            return fail(Errc::no_space, "the disk is full", path, "free some space and try again");
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB:
            return fail(Errc::damaged, fmt::format("the {} is damaged ({})", called, message), path,
                        "put back the last good copy");
        case SQLITE_CONSTRAINT:
            return fail(Errc::refused, fmt::format("the records contradict each other ({})", message), path);
        case SQLITE_TOOBIG:
            return fail(Errc::refused, fmt::format("a record is too big for the {}", called), path, "shorten it");
        case SQLITE_READONLY:
        case SQLITE_CANTOPEN:
        case SQLITE_PERM:
            return fail(Errc::io, fmt::format("the {} cannot be written to ({})", called, message), path,
                        "keep it in a place that you may write to");
        default:
            return fail(Errc::io, fmt::format("the {} cannot be read or written ({})", called, message), path);
    }
}

int bind_one(sqlite3_stmt* statement, int at, const SqlValue& value) {
    if (const auto* number = std::get_if<std::int64_t>(&value)) return sqlite3_bind_int64(statement, at, *number);
    if (const auto* text = std::get_if<std::string>(&value))
        return sqlite3_bind_text64(statement, at, text->data(), text->size(), SQLITE_TRANSIENT, SQLITE_UTF8);
    if (const auto* bytes = std::get_if<Bytes>(&value))
        return sqlite3_bind_blob64(statement, at, bytes->data(), bytes->size(), SQLITE_TRANSIENT);
    return sqlite3_bind_null(statement, at);
}

// Broken or hostile files get less room to do harm. Not here: an untrusted schema, for which SQLite 3.40 would refuse
// json_extract() in the tables' own columns.
void be_careful(sqlite3* db) {
    sqlite3_db_config(db, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_FKEY, 1, nullptr);
}

}  // namespace

// Preparing costs more than most of our statements do, and the same few texts come again and again.
struct Statement::Kept {
    std::unordered_multimap<std::string, sqlite3_stmt*> free;

    Kept() = default;
    Kept(const Kept&) = delete;
    Kept& operator=(const Kept&) = delete;
    ~Kept() {
        for (const auto& [sql, statement] : free) sqlite3_finalize(statement);
    }
    sqlite3_stmt* take(const std::string& sql) {
        const auto it = free.find(sql);
        if (it == free.end()) return nullptr;
        sqlite3_stmt* statement = it->second;
        free.erase(it);
        return statement;
    }
    void give(sqlite3_stmt* statement) {
        sqlite3_reset(statement);
        sqlite3_clear_bindings(statement);
        if (free.size() < kMostKept)
            free.emplace(sqlite3_sql(statement), statement);
        else
            sqlite3_finalize(statement);
    }
    static constexpr std::size_t kMostKept = 100;
};

void Statement::GiveBack::operator()(sqlite3_stmt* statement) const {
    kept->give(statement);
}

Result<bool> Statement::next() {
    const int code = sqlite3_step(statement_.get());
    if (code == SQLITE_ROW) return true;
    if (code == SQLITE_DONE) return false;
    sqlite3* db = sqlite3_db_handle(statement_.get());
    return failure(code, sqlite3_errmsg(db), *name_);
}

std::int64_t Statement::integer(int column) const {
    return sqlite3_column_int64(statement_.get(), column);
}

std::string Statement::text(int column) const {
    const unsigned char* begin = sqlite3_column_text(statement_.get(), column);
    if (begin == nullptr) return {};
    return {reinterpret_cast<const char*>(begin),
            static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column))};
}

Bytes Statement::bytes(int column) const {
    const auto* begin = static_cast<const std::uint8_t*>(sqlite3_column_blob(statement_.get(), column));
    if (begin == nullptr) return {};
    return {begin, begin + sqlite3_column_bytes(statement_.get(), column)};
}

bool Statement::is_null(int column) const {
    return sqlite3_column_type(statement_.get(), column) == SQLITE_NULL;
}

void Sqlite::Close::operator()(sqlite3* db) const {
    sqlite3_close_v2(db);
}

Sqlite::Sqlite(sqlite3* db, SqliteName name)
    : db_(db), name_(std::move(name)), kept_(std::make_unique<Statement::Kept>()) {}
Sqlite::~Sqlite() = default;

Result<std::unique_ptr<Sqlite>> Sqlite::open(const std::string& path, bool create, const std::string& vfs,
                                             const std::string& called) {
    sqlite3* raw = nullptr;
    const int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_EXRESCODE | (create ? SQLITE_OPEN_CREATE : 0);
    const int code = sqlite3_open_v2(path.c_str(), &raw, flags, vfs.empty() ? nullptr : vfs.c_str());
    std::unique_ptr<Sqlite> db(new Sqlite(raw, {path, called}));
    if (code != SQLITE_OK) return failure(code, raw == nullptr ? "no memory" : sqlite3_errmsg(raw), db->name_);
    if (sqlite3_db_readonly(raw, "main") == 1) return failure(SQLITE_READONLY, "it may only be read", db->name_);
    be_careful(raw);
    return db;
}

Result<> Sqlite::run_script(const std::string& sql) {
    const int code = sqlite3_exec(db_.get(), sql.c_str(), nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) return failure(code, sqlite3_errmsg(db_.get()), name_);
    return {};
}

Result<> Sqlite::run(const std::string& sql, std::initializer_list<SqlValue> values) {
    COTTER_ASSIGN(Statement statement, query(sql, values));
    for (;;) {
        COTTER_ASSIGN(const bool row, statement.next());
        if (!row) return {};
    }
}

Result<Statement> Sqlite::query(const std::string& sql, std::initializer_list<SqlValue> values) {
    return query_with(sql, std::span(values.begin(), values.size()));
}

Result<Statement> Sqlite::query_with(const std::string& sql, std::span<const SqlValue> values) {
    sqlite3_stmt* raw = kept_->take(sql);
    int code = SQLITE_OK;
    if (raw == nullptr) code = sqlite3_prepare_v2(db_.get(), sql.data(), static_cast<int>(sql.size()), &raw, nullptr);
    Statement statement(raw, kept_.get(), &name_);
    int at = 0;
    for (const SqlValue& value : values)
        if (code == SQLITE_OK) code = bind_one(raw, ++at, value);
    if (code != SQLITE_OK) return failure(code, sqlite3_errmsg(db_.get()), name_);
    return statement;
}

Result<std::int64_t> Sqlite::integer(const std::string& sql, std::initializer_list<SqlValue> values) {
    COTTER_ASSIGN(Statement statement, query(sql, values));
    COTTER_ASSIGN(const bool row, statement.next());
    if (!row) return failure(SQLITE_CORRUPT, "an answer is missing", name_);
    return statement.integer(0);
}

Result<std::string> Sqlite::text(const std::string& sql, std::initializer_list<SqlValue> values) {
    COTTER_ASSIGN(Statement statement, query(sql, values));
    COTTER_ASSIGN(const bool row, statement.next());
    if (!row) return failure(SQLITE_CORRUPT, "an answer is missing", name_);
    return statement.text(0);
}

void Sqlite::tidy_when_closed(bool on) {
    sqlite3_db_config(db_.get(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, on ? 0 : 1, nullptr);
}

void Sqlite::wait_for_others(int milliseconds) {
    sqlite3_busy_timeout(db_.get(), milliseconds);
}

bool Sqlite::in_transaction() const {
    return sqlite3_get_autocommit(db_.get()) == 0;
}

std::int64_t Sqlite::last_row() const {
    return sqlite3_last_insert_rowid(db_.get());
}

std::int64_t Sqlite::rows_changed() const {
    return sqlite3_changes64(db_.get());
}

Result<Transaction> Transaction::begin(Sqlite& db) {
    if (db.in_transaction()) COTTER_TRY(db.run("ROLLBACK"));  // an earlier rollback that the disk refused
    COTTER_TRY(db.run("BEGIN IMMEDIATE"));
    return Transaction(db);
}

Transaction::~Transaction() {
    if (db_ != nullptr && db_->in_transaction()) (void)db_->run("ROLLBACK");
}

Result<> Transaction::commit() {
    COTTER_TRY(db_->run("COMMIT"));
    db_ = nullptr;
    return {};
}

}  // namespace cotter
