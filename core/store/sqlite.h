// SQLite behind a small wall: connections, statements and transactions that close themselves and speak Result.
// For the book and the ledger; nothing of sqlite3.h shows here. One thread at a time per connection.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <memory>
#include <span>
#include <string>
#include <utility>

#include "core/store/sql_value.h"

struct sqlite3;
struct sqlite3_stmt;

namespace cotter {

// What the errors of a connection speak of: "the ledger is damaged: office.ledger".
struct SqliteName {
    std::string path;
    std::string called = "book";
};

// A prepared statement with its values bound. Must not outlive its connection, which keeps it prepared for the next use
// of the same text.
class Statement {
public:
    // True: there is a row to read; false: done. Errors as Sqlite maps them, see there.
    [[nodiscard]] Result<bool> next();

    // Columns of the row, counted from 0. A NULL reads as 0, "" or no bytes.
    [[nodiscard]] std::int64_t integer(int column) const;
    [[nodiscard]] std::string text(int column) const;
    [[nodiscard]] Bytes bytes(int column) const;
    [[nodiscard]] bool is_null(int column) const;

private:
    friend class Sqlite;
    struct Kept;  // the statements of a connection that nobody uses at the moment
    struct GiveBack {
        Kept* kept = nullptr;
        void operator()(sqlite3_stmt* statement) const;
    };
    Statement(sqlite3_stmt* statement, Kept* kept, const SqliteName* name)
        : statement_(statement, GiveBack{kept}), name_(name) {}
    std::unique_ptr<sqlite3_stmt, GiveBack> statement_;
    const SqliteName* name_;
};

// A connection to one database file. Errors name that file and are mapped:
//   busy      another process holds the database
//   no_space  the disk is full
//   damaged   its bytes are no database any more, or contradict each other
//   refused   a constraint of the tables would be broken, or a value is too big
//   io        all else
class Sqlite {
public:
    // `create`: an absent file is made (empty until something is written). `vfs`: SQLite's name of the door to the
    // disk; the system's own when empty. Fails `io` when the file may only be read.
    [[nodiscard]] static Result<std::unique_ptr<Sqlite>> open(const std::string& path, bool create,
                                                              const std::string& vfs,
                                                              const std::string& called = "book");
    ~Sqlite();

    [[nodiscard]] Result<> run_script(const std::string& sql);  // several statements, no values
    [[nodiscard]] Result<> run(const std::string& sql, std::initializer_list<SqlValue> values = {});
    [[nodiscard]] Result<Statement> query(const std::string& sql, std::initializer_list<SqlValue> values = {});
    [[nodiscard]] Result<Statement> query_with(const std::string& sql, std::span<const SqlValue> values);
    // The first column of the first row; fails `damaged` when there is no row.
    [[nodiscard]] Result<std::int64_t> integer(const std::string& sql, std::initializer_list<SqlValue> values = {});
    [[nodiscard]] Result<std::string> text(const std::string& sql, std::initializer_list<SqlValue> values = {});

    // Whether closing moves the write-ahead log into the main file. Off: closing leaves both as they are.
    void tidy_when_closed(bool on);
    // How long a call waits for another process that holds the database, before it fails `busy`. At first not at all.
    void wait_for_others(int milliseconds);
    [[nodiscard]] bool in_transaction() const;
    [[nodiscard]] std::int64_t last_row() const;      // row id of the last insert
    [[nodiscard]] std::int64_t rows_changed() const;  // by the last statement that changed any

private:
    struct Close {
        void operator()(sqlite3* db) const;
    };
    Sqlite(sqlite3* db, SqliteName name);
    std::unique_ptr<sqlite3, Close> db_;
    SqliteName name_;
    std::unique_ptr<Statement::Kept> kept_;  // let go of before db_
};

// All or nothing: rolled back when destroyed without a commit() that succeeded.
class Transaction {
public:
    [[nodiscard]] static Result<Transaction> begin(Sqlite& db);
    Transaction(Transaction&& other) noexcept : db_(std::exchange(other.db_, nullptr)) {}
    Transaction& operator=(Transaction&&) = delete;
    ~Transaction();

    // Success means that the changes would survive a power cut.
    [[nodiscard]] Result<> commit();

private:
    explicit Transaction(Sqlite& db) : db_(&db) {}
    Sqlite* db_;
};

}  // namespace cotter
