// The book: all jobs of one phone or PC, on disk. What commit(), undo() and redo() have answered is on the disk and
// survives a killed program and a power cut; what they refused has changed nothing.
//
// On disk, in the book's folder:
//   book.sqlite (with -wal while open)   jobs, records, journal, packets made
//   in-use                               locked while the book is open
//   photos/ previews/ thumbs/            the photo vault's; the book only holds the photos' hashes
//   device_key                           the packet's signing key; not read here
//
// One thread at a time, one Book per folder. All calls may fail `io`, `no_space` or `damaged`.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/files.h"
#include "core/book/journal.h"
#include "core/survey/edit.h"

namespace cotter {

enum class OpenMode {
    create,    // a missing folder and book are made
    existing,  // a missing book is `not_found`
};

// A job in one line of a list.
struct JobSummary {
    JobId id;
    Instant opened;
    std::string unit;
    std::string customer;
    std::string place;
    std::string technician;
    std::size_t shots = 0;
    std::size_t findings = 0;
    std::optional<Grade> worst;  // of all findings as graded, repaired ones included
    bool signed_off = false;
    std::optional<Instant> unpacked_since;  // what it says is in no packet since then; nullopt: all is in one
};

// A packet that was made from a job.
struct PacketMade {
    JobId job;
    int revision = 0;                // from 1
    std::string content_sha256;      // of what the packet says, revision and dates apart; 64 hex digits
    std::string tagmanifest_sha256;  // the packet's own fingerprint; 64 hex digits
    std::string name;                // the file's name
    Instant made_at;

    bool operator==(const PacketMade&) const = default;
};

class PriceShelf;

class Book {
public:
    // `files` must outlive the book. `vfs`: SQLite's door to the disk, the system's own when empty; tests put
    // another in. Fails
    //   busy       the book is open already, here or in another process
    //   too_new    a newer program has written it; the file stays as it is, byte for byte
    //   not_ours   there is a file of that name which is no book
    //   damaged    it is a book, but broken
    //   not_found  see OpenMode
    [[nodiscard]] static Result<std::unique_ptr<Book>> open(Files& files, const std::string& folder, OpenMode mode,
                                                            const std::string& vfs = {});

    ~Book();

    // The job after the edit, once it is on the disk. The first edit of a job puts its visit. Fails as apply() does,
    // and `refused` for a value that cannot be written down (a number that is none, a text that is not UTF-8).
    [[nodiscard]] Result<Job> commit(const Edit& edit);

    // The job after the last step not yet undone was taken back, or the last undone one done again. A new edit ends
    // what can be redone. Fails `not_found` when there is no such step: the one that opened the job stays. After
    // sign-off both are amendments with the reason "undone: …" or "done again: …"; the sign-off itself, and with it
    // what came before, is `refused`.
    [[nodiscard]] Result<Job> undo(const JobId& job, const Instant& at, const std::string& by);
    [[nodiscard]] Result<Job> redo(const JobId& job, const Instant& at, const std::string& by);

    [[nodiscard]] Result<Job> load(const JobId& job);      // exactly as committed, in order; not_found
    [[nodiscard]] Result<std::vector<JobSummary>> jobs();  // newest first by `opened`
    // By whole id, by the first 4 or more digits of one, or by the trailer's unit (any case; its newest job).
    // Fails `not_found`, or `refused` when more than one job is meant.
    [[nodiscard]] Result<JobId> find_job(std::string_view text);
    // Jobs opened before this one whose trailer has its unit or its VIN, in any case; the newest first. Whether it is
    // the same trailer is same_trailer()'s to say (core/judge/forecast.h).
    [[nodiscard]] Result<std::vector<JobId>> jobs_before(const Job& job);
    [[nodiscard]] Result<std::vector<JournalStep>> journal(const JobId& job);  // oldest first; empty for no such job

    [[nodiscard]] Result<std::vector<PacketMade>> packets(const JobId& job);  // oldest first
    [[nodiscard]] Result<std::optional<PacketMade>> last_packet(const JobId& job);
    // Fails `refused` when the revision is not above the last one, `not_found` when there is no such job.
    [[nodiscard]] Result<> record_packet(const PacketMade& packet);

    // Prices remembered across jobs (core/quote/shelf.h), in this book's file. Must not outlive the book.
    [[nodiscard]] std::unique_ptr<PriceShelf> shelf();

    // Reads everything: the database's own checks, every record, and whether each job is what its journal makes of
    // it. Fails `damaged` with the first thing wrong. Takes about as long as reading the whole file.
    [[nodiscard]] Result<> verify();
    // The database's own quick check alone: for each start, where a sound copy is at hand.
    [[nodiscard]] Result<> verify_pages();

private:
    Book(std::unique_ptr<FileLock> lock, std::unique_ptr<Sqlite> db);

    struct Held;  // the last job that was loaded or written, with its rows' positions
    [[nodiscard]] Result<> hold(const JobId& job);
    [[nodiscard]] Result<Job> take_step(JournalStep step);
    [[nodiscard]] Result<Job> move_step(StepKind kind, const JobId& job, const Instant& at, const std::string& by);

    std::unique_ptr<FileLock> lock_;  // let go of last
    std::unique_ptr<Sqlite> db_;
    std::unique_ptr<Held> held_;
};

}  // namespace cotter
