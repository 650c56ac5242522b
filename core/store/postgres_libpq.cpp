// PostgreSQL's side of core/store/sql.h; the one file that knows libpq.
//
// Method: every text of a statement is prepared once on the server and used again. Answers are fetched whole; who wants
// many large rows asks for them in pages. Values travel as texts, blobs as bytes. A writer takes one advisory lock, so
// that seats write one after the other as they do on SQLite. A connection that is found dead outside a transaction is
// made anew; what can only have been read, or not yet begun, is then asked once more. Inside a transaction it fails.
#include "core/store/sql.h"

#include <charconv>
#include <fmt/format.h>
#include <map>
#include <utility>
#include <vector>

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
    void operator()(PQconninfoOption* options) const { PQconninfoFree(options); }
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

// What of an address may never be shown: libpq hands on what it was given.
std::vector<std::string> secrets_in(const PQconninfoOption* options) {
    std::vector<std::string> out;
    for (const PQconninfoOption* o = options; o->keyword != nullptr; ++o) {
        const std::string_view word = o->keyword, value = o->val == nullptr ? "" : o->val;
        const auto colon = word == "user" ? value.find(':') : std::string_view::npos;  // "user%3Apassword@"
        if (colon != std::string_view::npos) out.emplace_back(value.substr(colon + 1));
        if (word == "password" || word == "sslpassword") out.emplace_back(value);
    }
    std::erase(out, "");
    return out;
}

class PostgresDb final : public SqlDb {
public:
    PostgresDb(PGconn* connection, std::string where, std::string called, std::vector<std::string> secrets)
        : connection_(connection), where_(std::move(where)), called_(std::move(called)), secrets_(std::move(secrets)) {}

    Result<> set_up() {
        if (broken()) return refused_connection();
        PQsetNoticeProcessor(
            connection_.get(), [](void*, const char*) {}, nullptr);
        if (PQserverVersion(connection_.get()) < 120000)
            return fail(Errc::refused, "the server is older than PostgreSQL 12", where_, "use a newer one");
        return run_text(kSetUp);
    }

    [[nodiscard]] SqlEngine engine() const override { return SqlEngine::postgresql; }

    Result<> script(const std::string& sql) override {
        COTTER_TRY(see_connection());
        return run_text(sql);
    }

    Result<std::unique_ptr<SqlRows>> query(const std::string& sql, const SqlValues& values) override {
        COTTER_TRY(see_connection());
        auto answer = execute(sql, values);
        if (!answer && lost()) {
            COTTER_TRY(connect_again());
            answer = execute(sql, values);
        }
        if (!answer) return unexpected(answer.error());
        return std::make_unique<Rows>(std::move(*answer));
    }

    Result<std::int64_t> change(const std::string& sql, const SqlValues& values) override {
        COTTER_TRY(see_connection());
        COTTER_ASSIGN(const Answer answer, execute(sql, values));
        const std::string_view count = PQcmdTuples(answer.get());
        std::int64_t out = 0;
        std::from_chars(count.data(), count.data() + count.size(), out);
        return out;
    }

    Result<> begin() override {
        if (std::exchange(in_transaction_, false) && !broken()) COTTER_TRY(run_text("ROLLBACK"));
        COTTER_TRY(see_connection());
        auto begun = run_text("BEGIN");
        if (!begun && lost()) {
            COTTER_TRY(connect_again());
            begun = run_text("BEGIN");
        }
        COTTER_TRY(begun);
        in_transaction_ = true;
        auto mine = run_text(kWriter);
        if (!mine) roll_back();  // or nothing could be read any more
        return mine;
    }
    Result<> commit() override {
        const Answer answer(PQexec(connection_.get(), "COMMIT"));
        COTTER_TRY(good(answer.get()));
        in_transaction_ = false;
        // A transaction that failed before answers COMMIT with ROLLBACK.
        if (std::string_view(PQcmdStatus(answer.get())) != "COMMIT")
            return fail(Errc::io, fmt::format("the {} did not take the changes", called_), where_, "try again");
        return {};
    }
    void roll_back() override {
        if (std::exchange(in_transaction_, false) && !broken()) (void)run_text("ROLLBACK");
    }

private:
    [[nodiscard]] bool broken() const { return PQstatus(connection_.get()) != CONNECTION_OK; }
    // The connection was lost, and nothing with it that was begun.
    [[nodiscard]] bool lost() const { return broken() && !in_transaction_; }
    Result<> see_connection() { return lost() ? connect_again() : Result<>(); }

    Result<> run_text(const std::string& sql) {
        const Answer answer(PQexec(connection_.get(), sql.c_str()));
        return good(answer.get());
    }

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
        if (broken()) return gone();
        return run_text(kSetUp);
    }

    // What libpq says of the connection, without what nobody may read.
    std::string said() const {
        std::string out = first_line(PQerrorMessage(connection_.get()));
        for (const std::string& secret : secrets_) {
            if (out.find(secret) != std::string::npos && secret.size() < 4) return "the reason would show the password";
            for (auto at = out.find(secret); at != std::string::npos; at = out.find(secret, at + 3))
                out.replace(at, secret.size(), "***");
        }
        return out;
    }

    unexpected<Error> gone() {
        return fail(Errc::io, fmt::format("the {}'s server is gone ({})", called_, said()), where_,
                    "see that it runs and can be reached, then do the same again; nothing was half done");
    }

    unexpected<Error> refused_connection() {
        const std::string raw = first_line(PQerrorMessage(connection_.get()));
        if (raw.find("does not exist") != std::string::npos && raw.find("database") != std::string::npos)
            return fail(Errc::not_found, fmt::format("there is no such database ({})", said()), where_,
                        "make it with createdb");
        return fail(Errc::io, fmt::format("the {}'s server cannot be reached ({})", called_, said()), where_,
                    "see that it runs, and that the address and the user are right");
    }

    Result<> good(const PGresult* answer) {
        const ExecStatusType status = PQresultStatus(answer);
        if (status == PGRES_COMMAND_OK || status == PGRES_TUPLES_OK) return {};
        if (broken()) return gone();
        const char* raw = PQresultErrorField(answer, PG_DIAG_SQLSTATE);
        const std::string state = raw == nullptr ? "" : raw;
        const std::string why = first_line(PQresultErrorMessage(answer));
        if (state == "53100")
            return fail(Errc::no_space, "the server's disk is full", where_, "free some space there and try again");
        if (state == "55P03" || state == "40P01" || state == "40001")
            return fail(Errc::busy, fmt::format("the {} is in use by another seat", called_), where_, "try again");
        if (state == "42501")
            return fail(Errc::refused, fmt::format("this seat may only read the {} ({})", called_, why), where_,
                        "ask whoever looks after the server for the right to write");
        if (state.empty() || state.starts_with("57P") || state.starts_with("08")) return gone();
        if (state.starts_with("23") || state.starts_with("22"))
            return fail(Errc::refused, fmt::format("the records contradict each other ({})", why), where_);
        if (state.starts_with("XX"))
            return fail(Errc::damaged, fmt::format("the {} is damaged ({})", called_, why), where_);
        return fail(Errc::io, fmt::format("the {} cannot be read or written ({})", called_, why), where_);
    }

    std::unique_ptr<PGconn, Clear> connection_;
    std::string where_, called_;
    std::vector<std::string> secrets_;
    bool in_transaction_ = false;
    std::map<std::string, std::string> prepared_;  // text of a statement, its name on the server
};

}  // namespace

Result<std::unique_ptr<SqlDb>> connect_postgresql(const std::string& where, const std::string& called) {
    COTTER_TRY(check_place(where));
    // What libpq says of an address that it cannot read may hold all of it.
    const std::unique_ptr<PQconninfoOption, Clear> options(PQconninfoParse(where.c_str(), nullptr));
    if (options == nullptr)
        return fail(
            Errc::refused, fmt::format("the {}'s address cannot be read", called), shown_place(where),
            "write it as postgresql://USER@HOST:PORT/DATABASE, other signs in it as % and two digits (RFC 3986)");
    auto db =
        std::make_unique<PostgresDb>(PQconnectdb(where.c_str()), shown_place(where), called, secrets_in(options.get()));
    COTTER_TRY(db->set_up());
    return db;
}

}  // namespace cotter
