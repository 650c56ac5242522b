// PostgreSQL's side of core/store/sql.h; the one file that knows libpq.
//
// Method: every text of a statement is prepared once on the server and used again. Answers are fetched whole; who wants
// many large rows asks for them in pages. Values travel as texts, blobs as bytes. A writer takes one advisory lock, so
// that seats write one after the other as they do on SQLite.
#include "core/store/sql.h"

#include <charconv>
#include <fmt/format.h>
#include <map>

#include <libpq-fe.h>

namespace cotter {

namespace {

constexpr const char* kSetUp =
    "SET client_min_messages = warning; SET lock_timeout = '5s'; SET client_encoding = 'UTF8'; "
    "SET bytea_output = 'hex'; SET standard_conforming_strings = on";
constexpr const char* kWriter = "SELECT pg_advisory_xact_lock(4860617573)";  // any number, the same at every seat
constexpr unsigned kBytea = 17;                                              // its type's number in every server

struct Clear {
    void operator()(PGresult* result) const { PQclear(result); }
    void operator()(PGconn* connection) const { PQfinish(connection); }
};
using Answer = std::unique_ptr<PGresult, Clear>;

std::string first_line(const char* text) {
    const std::string_view all = text == nullptr ? "" : text;
    return std::string(all.substr(0, all.find('\n')));
}

class Rows final : public SqlRows {
public:
    explicit Rows(Answer answer) : answer_(std::move(answer)), count_(PQntuples(answer_.get())) {}
    Result<bool> next() override { return ++row_ < count_; }
    [[nodiscard]] std::int64_t integer(int column) const override {
        const std::string_view all = raw(column);
        std::int64_t out = 0;
        std::from_chars(all.data(), all.data() + all.size(), out);
        return out;
    }
    [[nodiscard]] std::string text(int column) const override { return std::string(raw(column)); }
    [[nodiscard]] Bytes bytes(int column) const override {
        const std::string_view all = raw(column);
        return all.starts_with("\\x") ? from_hex(all.substr(2)) : Bytes();
    }
    [[nodiscard]] bool is_null(int column) const override { return PQgetisnull(answer_.get(), row_, column) == 1; }

private:
    [[nodiscard]] std::string_view raw(int column) const {
        return {PQgetvalue(answer_.get(), row_, column),
                static_cast<std::size_t>(PQgetlength(answer_.get(), row_, column))};
    }
    Answer answer_;
    int count_;
    int row_ = -1;
};

// Values in the form that libpq takes them.
class Bound {
public:
    explicit Bound(const SqlValues& values) {
        texts_.reserve(values.size());
        for (const SqlValue& value : values) {
            if (const auto* bytes = std::get_if<Bytes>(&value)) {
                add(reinterpret_cast<const char*>(bytes->data()), static_cast<int>(bytes->size()), 1);
                if (bytes->empty()) pointers.back() = "";
            } else if (const auto* number = std::get_if<std::int64_t>(&value)) {
                add(texts_.emplace_back(std::to_string(*number)).c_str(), 0, 0);
            } else if (const auto* text = std::get_if<std::string>(&value)) {
                has_nul = has_nul || text->find('\0') != std::string::npos;
                add(text->c_str(), 0, 0);
            } else {
                add(nullptr, 0, 0);
            }
        }
    }
    std::vector<const char*> pointers;
    std::vector<int> lengths, formats;
    bool has_nul = false;

private:
    void add(const char* pointer, int length, int format) {
        pointers.push_back(pointer);
        lengths.push_back(length);
        formats.push_back(format);
    }
    std::vector<std::string> texts_;
};

class PostgresDb final : public SqlDb {
public:
    PostgresDb(PGconn* connection, std::string where, std::string called)
        : connection_(connection), where_(std::move(where)), called_(std::move(called)) {}

    Result<> set_up() {
        if (PQstatus(connection_.get()) != CONNECTION_OK) return refused_connection();
        PQsetNoticeProcessor(
            connection_.get(), [](void*, const char*) {}, nullptr);
        if (PQserverVersion(connection_.get()) < 120000)
            return fail(Errc::refused, "the server is older than PostgreSQL 12", where_, "use a newer one");
        return script(kSetUp);
    }

    [[nodiscard]] SqlEngine engine() const override { return SqlEngine::postgresql; }

    Result<> script(const std::string& sql) override {
        const Answer answer(PQexec(connection_.get(), sql.c_str()));
        return good(answer.get());
    }

    Result<std::unique_ptr<SqlRows>> query(const std::string& sql, const SqlValues& values) override {
        COTTER_ASSIGN(Answer answer, execute(sql, values));
        return std::make_unique<Rows>(std::move(answer));
    }

    Result<std::int64_t> change(const std::string& sql, const SqlValues& values) override {
        COTTER_ASSIGN(const Answer answer, execute(sql, values));
        const std::string_view count = PQcmdTuples(answer.get());
        std::int64_t out = 0;
        std::from_chars(count.data(), count.data() + count.size(), out);
        return out;
    }

    Result<> begin() override {
        if (PQstatus(connection_.get()) != CONNECTION_OK) COTTER_TRY(connect_again());
        if (PQtransactionStatus(connection_.get()) != PQTRANS_IDLE) COTTER_TRY(script("ROLLBACK"));
        COTTER_TRY(script("BEGIN"));
        return script(kWriter);
    }
    Result<> commit() override {
        const Answer answer(PQexec(connection_.get(), "COMMIT"));
        COTTER_TRY(good(answer.get()));
        // A transaction that failed before answers COMMIT with ROLLBACK.
        if (std::string_view(PQcmdStatus(answer.get())) != "COMMIT")
            return fail(Errc::io, fmt::format("the {} did not take the changes", called_), where_, "try again");
        return {};
    }
    void roll_back() override { (void)script("ROLLBACK"); }

private:
    Result<Answer> execute(const std::string& sql, const SqlValues& values) {
        const Bound bound(values);
        if (bound.has_nul)
            return fail(Errc::refused, "a text holds a zero byte, which the server cannot store", where_);
        COTTER_ASSIGN(const std::string name, prepared(sql, values));
        Answer answer(PQexecPrepared(connection_.get(), name.c_str(), static_cast<int>(values.size()),
                                     bound.pointers.data(), bound.lengths.data(), bound.formats.data(), 0));
        COTTER_TRY(good(answer.get()));
        return answer;
    }

    Result<std::string> prepared(const std::string& sql, const SqlValues& values) {
        const auto it = prepared_.find(sql);
        if (it != prepared_.end()) return it->second;
        std::string name = fmt::format("s{}", prepared_.size());
        std::vector<Oid> types(values.size(), 0);
        for (std::size_t i = 0; i < values.size(); ++i)
            if (std::holds_alternative<Bytes>(values[i])) types[i] = kBytea;
        const Answer answer(
            PQprepare(connection_.get(), name.c_str(), sql.c_str(), static_cast<int>(types.size()), types.data()));
        COTTER_TRY(good(answer.get()));
        prepared_.emplace(sql, name);
        return name;
    }

    Result<> connect_again() {
        PQreset(connection_.get());
        prepared_.clear();
        if (PQstatus(connection_.get()) != CONNECTION_OK) return gone();
        return script(kSetUp);
    }

    unexpected<Error> gone() {
        return fail(Errc::io,
                    fmt::format("the {}'s server is gone ({})", called_, first_line(PQerrorMessage(connection_.get()))),
                    where_, "see that it runs and can be reached, then do the same again; nothing was half done");
    }

    unexpected<Error> refused_connection() {
        const std::string why = first_line(PQerrorMessage(connection_.get()));
        if (why.find("does not exist") != std::string::npos && why.find("database") != std::string::npos)
            return fail(Errc::not_found, fmt::format("there is no such database ({})", why), where_,
                        "make it with createdb");
        return fail(Errc::io, fmt::format("the {}'s server cannot be reached ({})", called_, why), where_,
                    "see that it runs, and that the address and the user are right");
    }

    Result<> good(const PGresult* answer) {
        const ExecStatusType status = PQresultStatus(answer);
        if (status == PGRES_COMMAND_OK || status == PGRES_TUPLES_OK) return {};
        if (PQstatus(connection_.get()) != CONNECTION_OK) return gone();
        const char* raw = PQresultErrorField(answer, PG_DIAG_SQLSTATE);
        const std::string state = raw == nullptr ? "" : raw;
        const std::string why = first_line(PQresultErrorMessage(answer));
        if (state == "53100")
            return fail(Errc::no_space, "the server's disk is full", where_, "free some space there and try again");
        if (state == "55P03" || state == "40P01" || state == "40001")
            return fail(Errc::busy, fmt::format("the {} is in use by another seat", called_), where_, "try again");
        if (state.empty() || state.starts_with("57P") || state.starts_with("08")) return gone();
        if (state.starts_with("23") || state.starts_with("22"))
            return fail(Errc::refused, fmt::format("the records contradict each other ({})", why), where_);
        if (state.starts_with("XX"))
            return fail(Errc::damaged, fmt::format("the {} is damaged ({})", called_, why), where_);
        return fail(Errc::io, fmt::format("the {} cannot be read or written ({})", called_, why), where_);
    }

    std::unique_ptr<PGconn, Clear> connection_;
    std::string where_, called_;
    std::map<std::string, std::string> prepared_;  // text of a statement, its name on the server
};

}  // namespace

Result<std::unique_ptr<SqlDb>> connect_postgresql(const std::string& where, const std::string& called) {
    auto db = std::make_unique<PostgresDb>(PQconnectdb(where.c_str()), shown_place(where), called);
    COTTER_TRY(db->set_up());
    return db;
}

}  // namespace cotter
