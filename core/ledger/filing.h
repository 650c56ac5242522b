// Filing a checked packet: its standing, its place among the packets of its job, what is shown of the job, and all that
// is derived from that. For core/ledger only; inside a transaction of the caller's.
//
// Method: a packet is filed for good, whatever it is. Which packet of a job is shown follows from all of them: those
// held back for their key last, then the highest revision, then the one a person chose, then the first that came. When
// that changes, the rows derived from the old one go and those of the new one come. Trailers that were touched are
// remembered and brought up to date once, by finish(), with their answers about towing.
#pragma once

#include <map>
#include <set>

#include "core/ledger/derive.h"
#include "core/ledger/towing.h"
#include "core/ledger/trust.h"
#include "core/packet/job_document.h"
#include "core/store/sql.h"

namespace cotter::ledger {

// A file of the packet that lies in the vault.
struct Content {
    std::string path;  // below data/
    std::string sha256;
    std::uint64_t bytes = 0;
};

// A packet that was checked and found good.
struct CheckedPacket {
    std::string fingerprint;  // SHA-256 of its tag manifest
    std::string name;
    int revision = 1;
    std::string previous;
    std::string signer;      // "SHA256:…"
    std::string signer_key;  // "ssh-ed25519 AAAA…"
    Instant handed_over;
    JobDocument document;
    std::size_t document_size = 0;  // of job.json
    Bytes document_packed;          // job.json, deflated
    std::vector<Content> contents;
};

struct Filed {
    Arrival arrival = Arrival::taken;
    std::string why;
};

class Filing {
public:
    // `now`: what answers about towing are as of; without it they are put off, to be made later.
    Filing(SqlDb& db, const Rules& rules, const TrustList& trust, const std::optional<Instant>& now = {})
        : db_(db), rules_(rules), trust_(trust), now_(now), jobs_(db) {}

    [[nodiscard]] Result<Filed> file(const CheckedPacket& packet);
    // Chooses anew which packet of the job is shown, after a person's decision.
    [[nodiscard]] Result<> look_again(const std::string& job);
    // Derives all there is to derive from the packets in view, as if they came now.
    [[nodiscard]] Result<> derive_again(const std::string& job);
    // Brings the touched trailers up to date. Before the transaction is committed.
    [[nodiscard]] Result<> finish();

private:
    struct OnFile;
    // The packet in view of a job.
    struct Shown {
        std::string job, fingerprint;
        int revision = 1;
        Instant handed_over;
        bool flagged = false, conflict = false;
    };
    [[nodiscard]] Result<KeyStanding> standing_of(const CheckedPacket& packet);
    [[nodiscard]] Result<> insert(const CheckedPacket& packet, KeyStanding standing);
    [[nodiscard]] Result<> vouch(const CheckedPacket& packet);
    [[nodiscard]] Result<std::vector<OnFile>> on_file(const std::string& job);
    [[nodiscard]] Result<std::string> choose_view(const std::string& job, const CheckedPacket* fresh);
    [[nodiscard]] Result<> mark(std::vector<OnFile>& all, std::size_t view);
    [[nodiscard]] Result<> show(const Shown& shown, const CheckedPacket* fresh);
    [[nodiscard]] Result<> forget(const std::string& job);
    [[nodiscard]] Result<> put_job(const Derived& d, const Shown& shown);
    [[nodiscard]] Result<> put_parts(const Derived& d, const std::string& trailer);
    [[nodiscard]] Result<> put_words(const Derived& d);
    [[nodiscard]] Result<std::string> trailer_of(const std::string& unit_key, const std::string& alone);
    [[nodiscard]] Result<> settle_unit(const std::string& unit_key);
    [[nodiscard]] Result<> settle_trailer(const std::string& trailer);
    [[nodiscard]] Result<> settle_wear(const std::string& trailer, const std::vector<Witness>& witnesses);
    [[nodiscard]] Result<> settle_answer(const std::string& trailer, std::vector<Witness>& witnesses);
    [[nodiscard]] Result<> settle_answer_alone(const std::string& trailer);

    SqlDb& db_;
    const Rules& rules_;
    const TrustList& trust_;
    std::optional<Instant> now_;
    Jobs jobs_;
    std::string rules_version_;               // once it is asked for
    std::set<std::string> trailers_, units_;  // touched
    std::set<std::string> answers_;           // trailers of which nothing but the answer was touched
};

// job.json of a packet on file, to the byte. `not_found`, `damaged`.
[[nodiscard]] Result<Bytes> load_document(SqlDb& db, const std::string& fingerprint);
[[nodiscard]] Result<JobDocument> load_job_document(SqlDb& db, const std::string& fingerprint);
// The job in it.
[[nodiscard]] Result<Job> load_job(SqlDb& db, const std::string& fingerprint);

}  // namespace cotter::ledger
