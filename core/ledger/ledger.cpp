// Opening, and what a person decides.
#include "core/ledger/ledger.h"

#include <fmt/format.h>

#include "core/base/hash.h"
#include "core/ledger/filing.h"
#include "core/ledger/parts.h"
#include "core/ledger/schema.h"
#include "core/photo/vault.h"
#include "core/store/sqlite.h"
#include "core/survey/json_visitors.h"

namespace cotter::ledger {

namespace {

constexpr int kPatience = 5'000;  // ms to wait for another seat
constexpr const char* kKeptPhotos = "SELECT value FROM setting WHERE name='photos'";

// Write-ahead log, synced at each commit; several processes may have it open. Behind a door of a test, which has no
// shared memory, one only.
Result<> set_up(Sqlite& db, const std::string& where, bool alone) {
    db.wait_for_others(kPatience);
    if (alone) COTTER_TRY(db.run("PRAGMA locking_mode=EXCLUSIVE"));
    COTTER_ASSIGN(const std::string mode, db.text("PRAGMA journal_mode=WAL"));
    if (mode != "wal") return fail(Errc::io, "this place cannot hold a ledger (no write-ahead log)", where);
    return db.run_script(
        "PRAGMA synchronous=FULL; PRAGMA journal_size_limit=67108864; PRAGMA cell_size_check=ON; PRAGMA "
        "cache_size=-32768; PRAGMA temp_store=MEMORY;");
}

// SQLite may write into what it opens, so a file that is something else is known by its first bytes.
Result<> look_at_file(Files& files, const std::string& where, Open mode) {
    const auto info = files.info(where);
    if (!info && info.error().code == Errc::not_found) {
        if (mode == Open::create) return {};
        return fail(Errc::not_found, "there is no ledger here", where, "cotter receive makes one");
    }
    if (!info) return unexpected(info.error());
    const auto not_ours = [&] { return fail(Errc::not_ours, "this is not a ledger", where, "choose another place"); };
    if (info->kind != FileInfo::Kind::file) return not_ours();
    if (info->size == 0) return {};
    COTTER_ASSIGN(const auto reader, files.open(where));
    Bytes head(16);
    if (info->size < head.size()) return not_ours();
    COTTER_TRY(reader->read_at(0, head));
    if (as_text(head) != std::string_view("SQLite format 3\0", 16)) return not_ours();
    return {};
}

Result<std::unique_ptr<SqlDb>> open_file(Files& files, const std::string& where, Open mode, const std::string& vfs) {
    COTTER_TRY(look_at_file(files, where, mode));
    COTTER_ASSIGN(auto db, Sqlite::open(where, mode == Open::create, vfs, "ledger"));
    COTTER_TRY(set_up(*db, where, !vfs.empty()));
    return sql_over(std::move(db));
}

// What derived rows were derived by: other rules, other rows.
std::string digest_of(const Rules& rules) {
    Hasher hasher;
    hasher.add(as_bytes(std::to_string(kDerivation)));
    for (const Limit& limit : rules.limits) hasher.add(as_bytes(compact_json(to_json_value(limit))));
    if (rules.rechecks != nullptr) hasher.add(as_bytes(compact_json(to_json_value(*rules.rechecks))));
    return hasher.finish_hex();
}

Result<> remember(SqlDb& db, const char* name, const std::string& value) {
    return db.run(
        "INSERT INTO setting(name, value) VALUES($1, $2) ON CONFLICT(name) DO UPDATE SET "
        "value=excluded.value",
        {name, value});
}

Result<std::string> photos_of(SqlDb& db, const std::string& where, const std::string& named) {
    if (!named.empty()) return named;
    COTTER_ASSIGN(const std::string kept, db.text(kKeptPhotos));
    if (!kept.empty()) return kept;
    if (!is_server(where)) return where + ".photos";
    return fail(Errc::refused, "the ledger does not know where its photos lie", shown_place(where),
                "name the shared folder with --photos");
}

}  // namespace

Ledger::Ledger(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
Ledger::~Ledger() = default;

Result<std::unique_ptr<Ledger>> Ledger::open(const cotter::ledger::Ports& ports, const Rules& rules,
                                             const std::string& where, Open mode, const std::string& photos,
                                             const std::string& vfs) {
    COTTER_TRY(check_place(where));
    auto parts =
        std::make_unique<Parts>(Parts{ports, rules, shown_place(where), {}, photos, {}, rules_version(rules), {}});
    if (is_server(where)) {
        COTTER_ASSIGN(parts->db, connect_postgresql(where, "ledger"));
    } else {
        COTTER_ASSIGN(parts->db, open_file(ports.files, where, mode, vfs));
    }
    COTTER_TRY(bring_up_to_date(*parts->db, mode == Open::create, parts->where));
    COTTER_ASSIGN(parts->photos_folder, photos_of(*parts->db, where, photos));
    parts->photos = std::make_unique<PhotoVault>(ports.files, ports.workers, parts->photos_folder);
    std::unique_ptr<Ledger> ledger(new Ledger(std::move(parts)));
    COTTER_TRY(ledger->derive_by_rules());
    return ledger;
}

Result<> Ledger::derive_by_rules() {
    SqlDb& db = *parts_->db;
    const std::string digest = digest_of(parts_->rules);
    COTTER_ASSIGN(const std::string before, db.text("SELECT value FROM setting WHERE name='rules'"));
    if (before == digest) return {};
    COTTER_ASSIGN(auto transaction, SqlTransaction::begin(db));
    const auto derived = derive_all(db, parts_->rules);
    if (!derived && derived.error().code == Errc::refused)
        return fail(Errc::refused,
                    fmt::format("the ledger's lists were made by another version of this program, and cannot be made "
                                "anew from here: {}",
                                derived.error().what),
                    parts_->where, "open it once from a seat that may write, or use that version here too");
    COTTER_TRY(derived);
    COTTER_TRY(remember(db, "rules", digest));
    return transaction.commit();
}

Result<> Ledger::remember_photos() {
    if (parts_->photos_named.empty()) return {};
    COTTER_ASSIGN(const std::string kept, parts_->db->text(kKeptPhotos));
    return kept == parts_->photos_named ? Result<>() : remember(*parts_->db, "photos", parts_->photos_named);
}

Result<> derive_all(SqlDb& db, const Rules& rules) {
    const TrustList nobody;
    Filing filing(db, rules, nobody);
    std::vector<std::string> jobs;
    COTTER_TRY(db.each("SELECT DISTINCT job FROM packet ORDER BY job", {}, [&](const SqlRows& r) -> Result<> {
        jobs.push_back(r.text(0));
        return {};
    }));
    for (const std::string& job : jobs) COTTER_TRY(filing.derive_again(job));
    return filing.finish();
}

Result<> Ledger::accept_key(const std::string& technician, const std::string& signer) {
    SqlDb& db = *parts_->db;
    COTTER_ASSIGN(auto transaction, SqlTransaction::begin(db));
    std::set<std::string> jobs;
    COTTER_TRY(db.each("SELECT DISTINCT job FROM packet WHERE technician_key=$1 AND signer=$2",
                       {name_key(technician), signer}, [&](const SqlRows& r) -> Result<> {
                           jobs.insert(r.text(0));
                           return {};
                       }));
    if (jobs.empty())
        return fail(Errc::not_found, "no packet of this technician was signed with this key",
                    fmt::format("{}, {}", technician, signer));
    COTTER_TRY(
        db.run("INSERT INTO accepted_key(technician_key, signer, technician, at) VALUES($1, $2, $3, $4) ON "
               "CONFLICT DO NOTHING",
               {name_key(technician), signer, technician, parts_->ports.clock.now().text()}));
    const TrustList nobody;
    COTTER_TRY(put_off_answers(db, name_key(technician), signer));  // all of a technician's trailers: not at once
    Filing filing(db, parts_->rules, nobody);
    for (const std::string& job : jobs) COTTER_TRY(filing.look_again(job));
    COTTER_TRY(filing.finish());
    return transaction.commit();
}

Result<> Ledger::choose(const std::string& fingerprint) {
    SqlDb& db = *parts_->db;
    COTTER_ASSIGN(auto transaction, SqlTransaction::begin(db));
    COTTER_ASSIGN(const std::string job, db.text("SELECT job FROM packet WHERE fingerprint=$1", {fingerprint}));
    if (job.empty()) return fail(Errc::not_found, "there is no such packet in the ledger", fingerprint);
    // It was chosen from what was on file by then: what comes later has a word again.
    COTTER_ASSIGN(const auto newest, db.integer("SELECT max(seq) FROM packet"));
    COTTER_TRY(
        db.run("UPDATE packet SET chosen=CASE WHEN fingerprint=$1 THEN CAST($2 AS BIGINT) ELSE 0 END WHERE job=$3 AND "
               "revision=(SELECT revision FROM packet WHERE fingerprint=$1)",
               {fingerprint, newest, job}));
    const TrustList nobody;
    Filing filing(db, parts_->rules, nobody, parts_->ports.clock.now());
    COTTER_TRY(filing.look_again(job));
    COTTER_TRY(filing.finish());
    return transaction.commit();
}

Result<Counts> Ledger::counts() {
    SqlDb& db = *parts_->db;
    Counts out;
    COTTER_ASSIGN(out.packets, db.integer("SELECT count(*) FROM packet"));
    COTTER_ASSIGN(out.jobs, db.integer("SELECT count(*) FROM job"));
    COTTER_ASSIGN(out.trailers, db.integer("SELECT count(*) FROM trailer"));
    COTTER_ASSIGN(out.photos, db.integer("SELECT count(DISTINCT sha256) FROM content"));
    COTTER_ASSIGN(out.receipts, db.integer("SELECT count(*) FROM receipt"));
    COTTER_ASSIGN(out.flagged, db.integer("SELECT count(*) FROM packet WHERE standing>$1",
                                          {std::int64_t{static_cast<int>(KeyStanding::first)}}));
    COTTER_ASSIGN(out.conflicts, db.integer("SELECT count(*) FROM job WHERE conflict=1"));
    return out;
}

PhotoVault& Ledger::photos() {
    return *parts_->photos;
}
SqlDb& Ledger::db() {
    return *parts_->db;
}
const cotter::ledger::Ports& Ledger::ports() const {
    return parts_->ports;
}
const Rules& Ledger::rules() const {
    return parts_->rules;
}
const std::string& Ledger::where() const {
    return parts_->where;
}
const std::string& Ledger::photos_folder() const {
    return parts_->photos_folder;
}

}  // namespace cotter::ledger
