// What both engines share, and SQLite's side.
#include "core/store/sql.h"

#include "core/store/sqlite.h"

namespace cotter {

namespace {

class SqliteRows final : public SqlRows {
public:
    explicit SqliteRows(Statement statement) : statement_(std::move(statement)) {}
    Result<bool> next() override { return statement_.next(); }
    [[nodiscard]] std::int64_t integer(int column) const override { return statement_.integer(column); }
    [[nodiscard]] std::string text(int column) const override { return statement_.text(column); }
    [[nodiscard]] Bytes bytes(int column) const override { return statement_.bytes(column); }
    [[nodiscard]] bool is_null(int column) const override { return statement_.is_null(column); }

private:
    Statement statement_;
};

class SqliteDb final : public SqlDb {
public:
    explicit SqliteDb(std::unique_ptr<Sqlite> db) : db_(std::move(db)) {}
    [[nodiscard]] SqlEngine engine() const override { return SqlEngine::sqlite; }
    Result<> script(const std::string& sql) override { return db_->run_script(sql); }
    Result<std::unique_ptr<SqlRows>> query(const std::string& sql, const SqlValues& values) override {
        COTTER_ASSIGN(Statement statement, db_->query_with(sql, values));
        return std::make_unique<SqliteRows>(std::move(statement));
    }
    Result<std::int64_t> change(const std::string& sql, const SqlValues& values) override {
        COTTER_ASSIGN(Statement statement, db_->query_with(sql, values));
        for (;;) {
            COTTER_ASSIGN(const bool row, statement.next());
            if (!row) return db_->rows_changed();
        }
    }
    Result<> begin() override {
        if (db_->in_transaction()) COTTER_TRY(db_->run("ROLLBACK"));
        return db_->run("BEGIN IMMEDIATE");
    }
    Result<> commit() override { return db_->run("COMMIT"); }
    void roll_back() override {
        if (db_->in_transaction()) (void)db_->run("ROLLBACK");
    }

private:
    std::unique_ptr<Sqlite> db_;
};

}  // namespace

std::unique_ptr<SqlDb> sql_over(std::unique_ptr<Sqlite> db) {
    return std::make_unique<SqliteDb>(std::move(db));
}

Result<> SqlDb::run(const std::string& sql, const SqlValues& values) {
    COTTER_TRY(change(sql, values));
    return {};
}

Result<> SqlDb::each(const std::string& sql, const SqlValues& values,
                     const std::function<Result<>(const SqlRows&)>& row) {
    COTTER_ASSIGN(const auto rows, query(sql, values));
    for (;;) {
        COTTER_ASSIGN(const bool more, rows->next());
        if (!more) return {};
        COTTER_TRY(row(*rows));
    }
}

Result<std::int64_t> SqlDb::integer(const std::string& sql, const SqlValues& values) {
    COTTER_ASSIGN(const auto rows, query(sql, values));
    COTTER_ASSIGN(const bool row, rows->next());
    return row ? rows->integer(0) : 0;
}

Result<std::string> SqlDb::text(const std::string& sql, const SqlValues& values) {
    COTTER_ASSIGN(const auto rows, query(sql, values));
    COTTER_ASSIGN(const bool row, rows->next());
    return row ? rows->text(0) : std::string();
}

Result<SqlTransaction> SqlTransaction::begin(SqlDb& db) {
    COTTER_TRY(db.begin());
    return SqlTransaction(db);
}

Result<> SqlTransaction::commit() {
    COTTER_TRY(db_->commit());
    db_ = nullptr;
    return {};
}

std::string sql_schema(SqlEngine engine, std::string_view schema) {
    struct Word {
        std::string_view word, sqlite, postgresql;
    };
    constexpr Word words[]{
        {"@text", "TEXT", "TEXT COLLATE \"C\""}, {"@int", "INTEGER", "BIGINT"}, {"@bytes", "BLOB", "BYTEA"}};
    std::string out;
    while (!schema.empty()) {
        const Word* found = nullptr;
        for (const Word& w : words)
            if (schema.starts_with(w.word)) found = &w;
        if (found == nullptr) {
            out += schema.front();
            schema.remove_prefix(1);
            continue;
        }
        out += engine == SqlEngine::sqlite ? found->sqlite : found->postgresql;
        schema.remove_prefix(found->word.size());
    }
    return out;
}

}  // namespace cotter
