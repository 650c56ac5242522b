// The office's ledger: every packet that was taken in, every trailer, its history. For the desk and the command line.
//
// Lives in one of two engines behind one interface (core/store/sql.h): a SQLite file, or a PostgreSQL database for
// several seats. Photos and reports lie beside it in a content-addressed vault, each once. Answers are worked out from
// the packets' own records; nothing here is ever judged in advance but what lists need at once, and that is derived
// anew whenever the register's rules differ from those it was derived by.
//
// What may be towed is asked of core's one answer engine, and kept for as long as its answer counts (TowLine). An
// answer that has run out, or that other rules made, is never shown: lists have nothing in its place until
// renew_answers() has made it anew. Whoever asks for a list at once calls that first; a desk lets it run beside the
// screen.
//
// One thread at a time per Ledger; several Ledgers, in several processes or on several machines, may be open on one
// store. All calls may fail `busy` (locked by another seat), `io` (also: the server is gone), `no_space`, `damaged`.
#pragma once

#include <functional>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "core/base/files.h"
#include "core/base/ports.h"
#include "core/judge/limit.h"
#include "core/ledger/answers.h"
#include "core/packet/job_document.h"
#include "core/work/recheck.h"

namespace cotter {
class SqlDb;
class PhotoVault;
}  // namespace cotter

namespace cotter::ledger {

// What judging and due dates go by. Must outlive the ledger.
struct Rules {
    std::span<const Limit> limits;
    const RecheckRules* rechecks = nullptr;
};

struct Ports {
    Files& files;
    Workers& workers;
    Clock& clock;
};

enum class Open {
    create,    // a missing file (or empty database) is made into a ledger
    existing,  // a missing ledger is `not_found`
};

// What is on file, counted.
struct Counts {
    std::int64_t packets = 0, jobs = 0, trailers = 0, photos = 0, receipts = 0, flagged = 0, conflicts = 0;
};

class Ledger {
public:
    // `where`: a file's path, or "postgresql://…". `photos`: the vault's folder for as long as this is open, best from
    // the root; empty: what the ledger remembers, at first "<file>.photos" (PostgreSQL has no such place: `refused`
    // until one is named). `vfs`: for tests, see
    // core/store/sqlite.h. Fails `too_new`, `not_ours`, `not_found`, `busy`, `damaged`.
    [[nodiscard]] static Result<std::unique_ptr<Ledger>> open(const Ports& ports, const Rules& rules,
                                                              const std::string& where, Open mode,
                                                              const std::string& photos = {},
                                                              const std::string& vfs = {});
    ~Ledger();

    [[nodiscard]] Result<Counts> counts();

    // ---- finding
    [[nodiscard]] Result<std::vector<Hit>> search(const SearchAsk& ask);
    [[nodiscard]] Result<std::int64_t> count(const SearchAsk& ask);  // how many it finds, without limit
    [[nodiscard]] Result<std::vector<JobLine>> jobs(const JobFilter& filter, std::size_t limit, std::size_t offset);
    [[nodiscard]] Result<std::vector<TrailerLine>> trailers(std::size_t limit,
                                                            std::size_t offset);  // by unit, then key
    [[nodiscard]] Result<std::vector<TrailerLine>> fleet(const FleetAsk& ask);    // with their answers about towing
    [[nodiscard]] Result<std::int64_t> count(const FleetAsk& ask);
    [[nodiscard]] Result<FleetCounts> fleet_counts();
    // A trailer's key by unit, plate, VIN (any case, whole), key, or a job's id or the first 4 or more digits of one.
    // `not_found`; `refused` when several are meant.
    [[nodiscard]] Result<std::string> find_trailer(std::string_view text);
    [[nodiscard]] Result<std::string> find_job(std::string_view text);  // the same for a job: a trailer's newest

    // ---- reading
    [[nodiscard]] Result<TrailerPage> trailer(const std::string& key);  // not_found
    [[nodiscard]] Result<Job> job(const std::string& id);               // as its packet in view has it; not_found
    // Where each of its shots lies: `sha256` is the photo's name in the vault.
    [[nodiscard]] Result<std::vector<PacketPhoto>> shots(const std::string& job);
    [[nodiscard]] Result<std::vector<PacketLine>> packets(const std::string& job);  // newest revision first
    [[nodiscard]] Result<Bytes> document(const std::string& fingerprint);           // a packet's job.json, to the byte
    [[nodiscard]] Result<Comparison> compare(const std::string& before_job, const std::string& now_job);
    [[nodiscard]] Result<std::vector<DueRow>> due(const DueAsk& ask);  // by day, unit, rule
    [[nodiscard]] Result<std::vector<OrderRow>> orders();              // by supplier, part number, title
    [[nodiscard]] Result<std::vector<AxleFailure>> failures();         // the most frequent first
    [[nodiscard]] Result<std::vector<Receipt>> receipts(std::size_t limit, std::size_t offset);  // newest first
    [[nodiscard]] PhotoVault& photos();  // originals, previews and thumbnails by SHA-256
    // From now on every seat looks for photos in the folder that this one was opened with; nothing when it was opened
    // with none. For what puts photos there: taking in, restoring, moving.
    [[nodiscard]] Result<> remember_photos();

    // ---- answers about towing that no longer count
    // Makes up to `most` of them anew, in one transaction; gives how many it made: 0 when all count. `refused` where
    // this seat may only read.
    [[nodiscard]] Result<std::size_t> renew_answers(std::size_t most);
    // Those of these trailers.
    [[nodiscard]] Result<> renew_answers_of(const std::vector<std::string>& trailers);

    // ---- what a person decides
    // Lets this technician sign with that key from now on; packets held for it come into view. `not_found`: no packet.
    [[nodiscard]] Result<> accept_key(const std::string& technician, const std::string& signer);
    // Of packets that contradict each other, shows this one. `not_found`.
    [[nodiscard]] Result<> choose(const std::string& fingerprint);

    [[nodiscard]] SqlDb& db();  // for the other parts of core/ledger
    [[nodiscard]] const Ports& ports() const;
    [[nodiscard]] const Rules& rules() const;
    [[nodiscard]] const std::string& where() const;
    [[nodiscard]] const std::string& photos_folder() const;

private:
    struct Parts;
    explicit Ledger(std::unique_ptr<Parts> parts);
    [[nodiscard]] Result<> derive_by_rules();
    [[nodiscard]] Result<TrailerLine> trailer_head(const std::string& key);
    [[nodiscard]] Result<> renew_one(const std::string& trailer, const Instant& now);
    std::unique_ptr<Parts> parts_;
};

}  // namespace cotter::ledger
