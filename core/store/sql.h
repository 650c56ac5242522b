// One SQL connection whichever engine is behind it: an embedded SQLite file, or a PostgreSQL server. For core/ledger.
//
// Statements are written once, in what both engines understand: $1, $2, … in the order of their first appearance, ON
// CONFLICT, RETURNING, no engine's own functions. Where they differ for good the caller asks engine(). Columns are
// whole numbers, texts (compared byte by byte) and blobs; sql_schema() turns the three type words into the engine's.
//
// Errors name the place and are mapped: busy (another seat holds it), no_space, damaged, refused (a constraint, or a
// value that cannot be stored), not_found (no such database), io (all else; also: the server is gone).
// One thread at a time per connection.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <string_view>

#include "core/store/sql_value.h"

namespace cotter {

enum class SqlEngine { sqlite, postgresql };

// The rows of an answer, one after the other. Must not outlive its connection; no other query of the same text while
// it is read.
class SqlRows {
public:
    virtual ~SqlRows() = default;
    [[nodiscard]] virtual Result<bool> next() = 0;  // false: no more
    // Columns counted from 0; a NULL reads as 0, "" or no bytes.
    [[nodiscard]] virtual std::int64_t integer(int column) const = 0;
    [[nodiscard]] virtual std::string text(int column) const = 0;
    [[nodiscard]] virtual Bytes bytes(int column) const = 0;
    [[nodiscard]] virtual bool is_null(int column) const = 0;
};

class SqlDb {
public:
    virtual ~SqlDb() = default;
    [[nodiscard]] virtual SqlEngine engine() const = 0;
    [[nodiscard]] virtual Result<> script(const std::string& sql) = 0;  // several statements, no values
    [[nodiscard]] virtual Result<std::unique_ptr<SqlRows>> query(const std::string& sql,
                                                                 const SqlValues& values = {}) = 0;
    // Gives the number of rows that were changed.
    [[nodiscard]] virtual Result<std::int64_t> change(const std::string& sql, const SqlValues& values) = 0;

    // From here on nobody else writes; all or nothing. A second begin() ends what was left open without a commit.
    [[nodiscard]] virtual Result<> begin() = 0;
    [[nodiscard]] virtual Result<> commit() = 0;  // success: it would survive a power cut
    virtual void roll_back() = 0;

    // ---- made of these
    [[nodiscard]] Result<> run(const std::string& sql, const SqlValues& values = {});
    // Calls `row` for every row; stops at its first error.
    [[nodiscard]] Result<> each(const std::string& sql, const SqlValues& values,
                                const std::function<Result<>(const SqlRows&)>& row);
    // The first column of the first row; 0 or "" when there is no row.
    [[nodiscard]] Result<std::int64_t> integer(const std::string& sql, const SqlValues& values = {});
    [[nodiscard]] Result<std::string> text(const std::string& sql, const SqlValues& values = {});
};

// Rolled back when destroyed without a commit() that succeeded.
class SqlTransaction {
public:
    [[nodiscard]] static Result<SqlTransaction> begin(SqlDb& db);
    SqlTransaction(SqlTransaction&& other) noexcept : db_(std::exchange(other.db_, nullptr)) {}
    SqlTransaction& operator=(SqlTransaction&&) = delete;
    ~SqlTransaction() {
        if (db_ != nullptr) db_->roll_back();
    }
    [[nodiscard]] Result<> commit();

private:
    explicit SqlTransaction(SqlDb& db) : db_(&db) {}
    SqlDb* db_;
};

// `schema` with the words @text, @int and @bytes as the engine's types.
[[nodiscard]] std::string sql_schema(SqlEngine engine, std::string_view schema);

// A place with "postgresql://" or "postgres://" in front is a server, anything else a file.
[[nodiscard]] bool is_server(std::string_view where);
// Refused: an address of another kind, libpq's own form ("host=… password=…"), and an address with a bare @ or / in its
// password, of which libpq would take a part for host or port and name it in its errors.
[[nodiscard]] Result<> check_place(std::string_view where);
// The place without a password, for messages: whatever form it has, also one that check_place() refuses.
[[nodiscard]] std::string shown_place(std::string_view where);

class Sqlite;
// Over a connection that is set up already. Owns it.
[[nodiscard]] std::unique_ptr<SqlDb> sql_over(std::unique_ptr<Sqlite> db);

// Connects to a server by its address (RFC 3986, as libpq reads it). `called`: what errors call the database. Where the
// program was built without PostgreSQL: `refused`.
[[nodiscard]] Result<std::unique_ptr<SqlDb>> connect_postgresql(const std::string& where, const std::string& called);

}  // namespace cotter
