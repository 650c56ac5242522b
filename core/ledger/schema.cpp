// Tables, one text a version. Append only.
#include "core/ledger/schema.h"

#include <fmt/format.h>

namespace cotter::ledger {

namespace {

// Method: packet, document, content, accepted_key and receipt are the truth, and they are only ever added to (but for
// `chosen`, a person's word). Everything else is derived from the packets in view, row by row as they come, and can be
// made anew from the documents at any time. `n` numbers a job by the moment it was opened, so that 'newest first' is
// the order of the key everywhere, also in the index of words.
constexpr std::string_view kVersion1 = R"sql(
CREATE TABLE setting(
  name @text PRIMARY KEY NOT NULL,
  value @text NOT NULL
);
CREATE TABLE packet(
  fingerprint @text PRIMARY KEY NOT NULL,
  seq @int NOT NULL,
  job @text NOT NULL,
  revision @int NOT NULL,
  previous @text NOT NULL,
  name @text NOT NULL,
  handed_over @text NOT NULL,
  handed_s @int NOT NULL,
  technician @text NOT NULL,
  technician_key @text NOT NULL,
  signer @text NOT NULL,
  signer_key @text NOT NULL,
  standing @int NOT NULL,
  chosen @int NOT NULL,
  newer @int NOT NULL,
  role @int NOT NULL,
  conflict @int NOT NULL,
  chain_broken @int NOT NULL
);
CREATE UNIQUE INDEX packet_by_seq ON packet(seq);
CREATE INDEX packet_by_job ON packet(job, revision);
CREATE INDEX packet_by_technician ON packet(technician_key, signer, standing);
CREATE TABLE document(
  fingerprint @text PRIMARY KEY NOT NULL,
  size @int NOT NULL,
  body @bytes NOT NULL
);
CREATE TABLE content(
  fingerprint @text NOT NULL,
  path @text NOT NULL,
  sha256 @text NOT NULL,
  bytes @int NOT NULL,
  PRIMARY KEY(fingerprint, path)
);
CREATE TABLE accepted_key(
  technician_key @text NOT NULL,
  signer @text NOT NULL,
  technician @text NOT NULL,
  at @text NOT NULL,
  PRIMARY KEY(technician_key, signer)
);
CREATE TABLE receipt(
  number @int PRIMARY KEY NOT NULL,
  at @text NOT NULL,
  path @text NOT NULL,
  arrival @int NOT NULL,
  why @text NOT NULL,
  fingerprint @text NOT NULL,
  job @text NOT NULL,
  revision @int NOT NULL,
  bytes @int NOT NULL
);

CREATE TABLE job(
  n @int PRIMARY KEY NOT NULL,
  id @text NOT NULL,
  trailer @text NOT NULL,
  fingerprint @text NOT NULL,
  revision @int NOT NULL,
  opened @text NOT NULL,
  opened_day @int NOT NULL,
  handed_over @text NOT NULL,
  unit @text NOT NULL,
  plate @text NOT NULL,
  vin @text NOT NULL,
  unit_key @text NOT NULL,
  plate_key @text NOT NULL,
  vin_key @text NOT NULL,
  place @text NOT NULL,
  customer @text NOT NULL,
  customer_key @text NOT NULL,
  technician @text NOT NULL,
  technician_key @text NOT NULL,
  company @text NOT NULL,
  kind @text NOT NULL,
  maker @text NOT NULL,
  models @text NOT NULL,
  findings @int NOT NULL,
  open_findings @int NOT NULL,
  worst @int NOT NULL,
  flagged @int NOT NULL,
  conflict @int NOT NULL
);
CREATE UNIQUE INDEX job_by_id ON job(id);
CREATE INDEX job_by_trailer ON job(trailer, n);
CREATE INDEX job_by_unit ON job(unit_key, n);
CREATE INDEX job_by_plate ON job(plate_key, n);
CREATE INDEX job_by_vin ON job(vin_key, n);
CREATE INDEX job_by_technician ON job(technician_key, n);
CREATE INDEX job_by_customer ON job(customer_key, n);
CREATE TABLE trailer(
  trailer @text PRIMARY KEY NOT NULL,
  n @int NOT NULL,
  visits @int NOT NULL,
  first_opened @text NOT NULL,
  unit_key @text NOT NULL
);
CREATE INDEX trailer_by_unit ON trailer(unit_key, trailer);
CREATE TABLE finding(
  n @int NOT NULL,
  number @int NOT NULL,
  trailer @text NOT NULL,
  component @text NOT NULL,
  defect @text NOT NULL,
  grade @int NOT NULL,
  axle_model @text NOT NULL,
  PRIMARY KEY(n, number)
);
CREATE INDEX finding_by_model ON finding(axle_model, component, defect);
CREATE TABLE axle_model(
  trailer @text NOT NULL,
  axle_model @text NOT NULL,
  PRIMARY KEY(axle_model, trailer)
);
CREATE INDEX axle_model_by_trailer ON axle_model(trailer);
CREATE TABLE recheck(
  n @int NOT NULL,
  rule @text NOT NULL,
  trailer @text NOT NULL,
  due_day @int NOT NULL,
  each_trip @int NOT NULL,
  newest @int NOT NULL,
  kind @int NOT NULL,
  body @text NOT NULL,
  PRIMARY KEY(n, rule)
);
CREATE INDEX recheck_by_trailer ON recheck(trailer, rule, n);
CREATE INDEX recheck_by_day ON recheck(newest, each_trip, due_day);
CREATE TABLE order_line(
  n @int NOT NULL,
  number @int NOT NULL,
  unit @text NOT NULL,
  supplier @text NOT NULL,
  part_number @text NOT NULL,
  title @text NOT NULL,
  packs @int NOT NULL,
  price @int NOT NULL,
  currency @text NOT NULL,
  PRIMARY KEY(n, number)
);
CREATE TABLE searched(
  n @int PRIMARY KEY NOT NULL,
  fields @text NOT NULL,
  words @text NOT NULL
);
)sql";

// What the answer engine says about towing each trailer (core/ledger/towing.h). A ledger made before has no answers
// yet: rows that do not count, made at the first look.
constexpr std::string_view kVersion2 = R"sql(
CREATE TABLE towing(
  trailer @text PRIMARY KEY NOT NULL,
  n @int NOT NULL,
  outcome @int NOT NULL,
  worst_first @int NOT NULL,
  says @text NOT NULL,
  reason @text NOT NULL,
  looked_at @int NOT NULL,
  of_points @int NOT NULL,
  essential_open @int NOT NULL,
  trip_check_due @int NOT NULL,
  as_of @text NOT NULL,
  as_of_s @int NOT NULL,
  runs_out @text NOT NULL,
  runs_out_s @int NOT NULL,
  rules @text NOT NULL
);
CREATE INDEX towing_by_outcome ON towing(worst_first, n DESC);
CREATE INDEX towing_by_end ON towing(runs_out_s, as_of_s, rules, outcome, trip_check_due, trailer);
INSERT INTO towing(trailer, n, outcome, worst_first, says, reason, looked_at, of_points, essential_open,
  trip_check_due, as_of, as_of_s, runs_out, runs_out_s, rules)
  SELECT trailer, n, 2, 2, '', '', 0, 0, 0, 0, '', 0, '', 0, '' FROM trailer;
)sql";

// The index of words is the one thing that each engine does in its own way; see search.cpp. Beginnings of words that
// FTS5 has no list of are found by reading all words that begin so, to the end: in a full ledger that is a tenth of a
// second for a name that is in every job. Eight letters cover what people type; the lists are a twentieth of the
// ledger.
constexpr const char* kSqliteWords =
    "CREATE VIRTUAL TABLE search USING fts5(words, content='searched', content_rowid='n', columnsize=0, detail=none, "
    "tokenize='ascii', prefix='1 2 3 4 5 6 7 8');"
    "INSERT INTO search(search, rank) VALUES('automerge', 8);";
constexpr const char* kPostgresWords =
    "CREATE TABLE search(n BIGINT PRIMARY KEY NOT NULL, words tsvector NOT NULL);"
    "CREATE INDEX search_by_word ON search USING GIN(words) WITH (fastupdate = off);";

unexpected<Error> not_a_ledger(const std::string& where) {
    return fail(Errc::not_ours, "this is not a ledger", where, "choose another place");
}

Result<std::int64_t> version_in(SqlDb& db) {
    return db.integer("SELECT CAST(value AS BIGINT) FROM setting WHERE name=$1", {"version"});
}

Result<std::int64_t> tables_in(SqlDb& db, const char* named) {
    const bool sqlite = db.engine() == SqlEngine::sqlite;
    return db.integer(
        fmt::format("SELECT count(*) FROM {} WHERE {} LIKE $1", sqlite ? "sqlite_schema" : "pg_catalog.pg_tables",
                    sqlite ? "name" : "schemaname = current_schema() AND tablename"),
        {named});
}

// Brings tables of version `from` up, one version after the other.
Result<> add_versions(SqlDb& db, std::int64_t from) {
    constexpr std::string_view kLater[]{kVersion2};
    for (auto version = static_cast<std::size_t>(from); version - 1 < std::size(kLater); ++version)
        COTTER_TRY(db.script(sql_schema(db.engine(), kLater[version - 1])));
    return {};
}

Result<> say_version(SqlDb& db) {
    COTTER_TRY(db.run("UPDATE setting SET value=$1 WHERE name='version'", {std::to_string(kLedgerVersion)}));
    if (db.engine() != SqlEngine::sqlite) return {};
    return db.script(fmt::format("PRAGMA user_version={}", kLedgerVersion));
}

// Another seat may have been first. A seat that may only read waits for one that may write.
Result<> update_tables(SqlDb& db, const std::string& where) {
    COTTER_ASSIGN(auto transaction, SqlTransaction::begin(db));
    COTTER_ASSIGN(const std::int64_t version, version_in(db));
    if (version >= kLedgerVersion) return {};
    Result<> done = add_versions(db, version);
    if (done) done = say_version(db);
    if (!done && done.error().code == Errc::refused)
        return fail(Errc::refused,
                    fmt::format("the ledger is of an older version and cannot be brought up to date from here: {}",
                                done.error().what),
                    where, "open it once from a seat that may write");
    COTTER_TRY(done);
    return transaction.commit();
}

Result<> make_tables(SqlDb& db) {
    COTTER_ASSIGN(auto transaction, SqlTransaction::begin(db));
    COTTER_TRY(db.script(sql_schema(db.engine(), kVersion1)));
    COTTER_TRY(add_versions(db, 1));
    COTTER_TRY(db.script(db.engine() == SqlEngine::sqlite ? kSqliteWords : kPostgresWords));
    COTTER_TRY(db.run("INSERT INTO setting(name, value) VALUES($1, $2)", {"version", std::to_string(kLedgerVersion)}));
    if (db.engine() == SqlEngine::sqlite)
        COTTER_TRY(db.script(
            fmt::format("PRAGMA application_id={}; PRAGMA user_version={}", kLedgerApplicationId, kLedgerVersion)));
    return transaction.commit();
}

}  // namespace

std::vector<KeptTable> kept_tables() {
    return {{"packet",
             "fingerprint, seq, job, revision, previous, name, handed_over, handed_s, technician, technician_key, "
             "signer, signer_key, standing, chosen, newer, role, conflict, chain_broken",
             "tititttittttiiiiii", "seq"},
            {"document", "fingerprint, size, body", "tib", "fingerprint"},
            {"content", "fingerprint, path, sha256, bytes", "ttti", "fingerprint, path"},
            {"accepted_key", "technician_key, signer, technician, at", "tttt", "technician_key, signer"},
            {"receipt", "number, at, path, arrival, why, fingerprint, job, revision, bytes", "ittitttii", "number"}};
}

Result<> bring_up_to_date(SqlDb& db, bool create, const std::string& where) {
    COTTER_ASSIGN(const std::int64_t ours, tables_in(db, "setting"));
    if (ours > 0) {
        COTTER_ASSIGN(const std::int64_t packets, tables_in(db, "packet"));
        if (packets == 0) return not_a_ledger(where);
        COTTER_ASSIGN(const std::int64_t version, version_in(db));
        if (version > kLedgerVersion)
            return fail(Errc::too_new,
                        fmt::format("the ledger was written by a newer program (version {} of its tables, known here: "
                                    "{})",
                                    version, kLedgerVersion),
                        where, "update this program");
        if (version < 1)
            return fail(Errc::damaged, "the ledger does not say its version", where, "put back the last good copy");
        return version == kLedgerVersion ? Result<>() : update_tables(db, where);
    }
    COTTER_ASSIGN(const std::int64_t others, tables_in(db, "%"));
    if (others > 0) return not_a_ledger(where);
    if (!create) return fail(Errc::not_found, "there is no ledger here", where);
    return make_tables(db);
}

}  // namespace cotter::ledger
