// Packets into rows, and which of them is shown.
#include "core/ledger/filing.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/ledger/revisions.h"
#include "core/packet/deflate.h"

namespace cotter::ledger {

namespace {

constexpr std::uint64_t kLargestDocument = 256u << 20;

std::int64_t as_number(bool b) {
    return b ? 1 : 0;
}

std::string said(KeyStanding standing, const std::string& technician) {
    switch (standing) {
        case KeyStanding::new_key:
            return fmt::format("flagged: {} is not known to sign with this key", technician);
        case KeyStanding::other_name:
            return fmt::format("flagged: the trust list gives this key to somebody else than {}", technician);
        case KeyStanding::lapsed:
            return "flagged: the trust list's dates do not cover the day of the hand-over";
        case KeyStanding::first:
            return fmt::format("the first packet of {}, by a key not seen before", technician);
        default:
            return {};
    }
}

}  // namespace

// A packet of one job, as much of it as choosing takes.
struct Filing::OnFile {
    std::string fingerprint, previous;
    std::int64_t revision = 1, seq = 0;
    Instant handed_over;
    bool held = false;  // flagged, and no person has accepted its key
    bool chosen = false;
    // as they stand in the table, and as they should
    Role role = Role::view, old_role = Role::view;
    bool conflict = false, old_conflict = false;
    bool broken = false, old_broken = false;
};

Result<KeyStanding> Filing::standing_of(const CheckedPacket& packet) {
    const std::string technician = packet.document.job.only<Visit>()->technician;
    switch (trust_.judge(technician, packet.signer_key, packet.handed_over)) {
        case Trust::listed:
            return KeyStanding::listed;
        case Trust::other_name:
            return KeyStanding::other_name;
        case Trust::lapsed:
            return KeyStanding::lapsed;
        case Trust::not_listed:
            break;
    }
    const std::string name = name_key(technician);
    COTTER_ASSIGN(
        const auto accepted,
        db_.integer("SELECT count(*) FROM accepted_key WHERE technician_key=$1 AND signer=$2", {name, packet.signer}));
    COTTER_ASSIGN(const auto same,
                  db_.integer("SELECT 1 FROM packet WHERE technician_key=$1 AND signer=$2 AND standing<=$3 LIMIT 1",
                              {name, packet.signer, std::int64_t{static_cast<int>(KeyStanding::first)}}));
    if (accepted + same > 0) return KeyStanding::seen;
    COTTER_ASSIGN(const auto known, db_.integer("SELECT 1 FROM packet WHERE technician_key=$1 LIMIT 1", {name}));
    if (known > 0 || trust_.names(technician)) return KeyStanding::new_key;
    // Nobody knows this name: harmless in a job of its own, but it may be a look-alike on somebody else's.
    COTTER_ASSIGN(const auto others,
                  db_.integer("SELECT 1 FROM packet WHERE job=$1 LIMIT 1", {packet.document.job.id().text()}));
    return others > 0 ? KeyStanding::new_key : KeyStanding::first;
}

Result<> Filing::insert(const CheckedPacket& p, KeyStanding standing) {
    const std::string technician = p.document.job.only<Visit>()->technician;
    COTTER_ASSIGN(const auto last, db_.integer("SELECT max(seq) FROM packet"));
    COTTER_TRY(db_.run(
        "INSERT INTO packet(fingerprint, seq, job, revision, previous, name, handed_over, handed_s, technician, "
        "technician_key, signer, signer_key, standing, chosen, newer, role, conflict, chain_broken) VALUES($1, $2, $3, "
        "$4, $5, $6, $7, $8, $9, $10, $11, $12, $13, 0, $14, 1, 0, 0)",
        {p.fingerprint, last + 1, p.document.job.id().text(), std::int64_t{p.revision}, p.previous, p.name,
         p.handed_over.text(), p.handed_over.unix_s, one_line(technician), name_key(technician), p.signer, p.signer_key,
         std::int64_t{static_cast<int>(standing)}, as_number(p.document.newer)}));
    COTTER_TRY(db_.run("INSERT INTO document(fingerprint, size, body) VALUES($1, $2, $3)",
                       {p.fingerprint, static_cast<std::int64_t>(p.document_size), p.document_packed}));
    for (const Content& c : p.contents)
        COTTER_TRY(db_.run("INSERT INTO content(fingerprint, path, sha256, bytes) VALUES($1, $2, $3, $4)",
                           {p.fingerprint, c.path, c.sha256, static_cast<std::int64_t>(c.bytes)}));
    return {};
}

// The first packet by which the trust list vouches for a key makes those before it count as well.
Result<> Filing::vouch(const CheckedPacket& p) {
    const std::string name = name_key(p.document.job.only<Visit>()->technician);
    COTTER_ASSIGN(const auto before,
                  db_.integer("SELECT 1 FROM packet WHERE technician_key=$1 AND signer=$2 AND standing=$3 LIMIT 1",
                              {name, p.signer, std::int64_t{static_cast<int>(KeyStanding::listed)}}));
    return before > 0 ? Result<>() : put_off_answers(db_, name, p.signer);
}

Result<std::vector<Filing::OnFile>> Filing::on_file(const std::string& job) {
    std::vector<OnFile> out;
    COTTER_TRY(db_.each(
        "SELECT p.fingerprint, p.previous, p.revision, p.seq, p.handed_over, p.standing, p.chosen, p.role, p.conflict, "
        "p.chain_broken, (SELECT count(*) FROM accepted_key a WHERE a.technician_key=p.technician_key AND "
        "a.signer=p.signer) FROM packet p WHERE p.job=$1 ORDER BY p.seq",
        {job}, [&](const SqlRows& r) -> Result<> {
            OnFile p;
            p.fingerprint = r.text(0);
            p.previous = r.text(1);
            p.revision = r.integer(2);
            p.seq = r.integer(3);
            COTTER_ASSIGN(p.handed_over, Instant::parse(r.text(4)));
            p.held = flagged(static_cast<KeyStanding>(r.integer(5))) && r.integer(10) == 0;
            p.chosen = r.integer(6) != 0;
            p.old_role = static_cast<Role>(r.integer(7));
            p.old_conflict = r.integer(8) != 0;
            p.old_broken = r.integer(9) != 0;
            out.push_back(std::move(p));
            return {};
        }));
    return out;
}

Result<> Filing::mark(std::vector<OnFile>& all, std::size_t view) {
    for (std::size_t i = 0; i < all.size(); ++i) {
        OnFile& p = all[i];
        p.role = i == view ? Role::view : p.held ? Role::held : Role::history;
        bool before = false, as_named = false;
        for (const OnFile& other : all) {
            p.conflict = p.conflict || (&other != &p && other.revision == p.revision && other.held == p.held);
            if (other.revision != p.revision - 1 || other.held) continue;
            before = true;
            as_named = as_named || other.fingerprint == p.previous;
        }
        p.broken = before && !as_named;
        if (p.role == p.old_role && p.conflict == p.old_conflict && p.broken == p.old_broken) continue;
        COTTER_TRY(db_.run(
            "UPDATE packet SET role=$1, conflict=$2, chain_broken=$3 WHERE fingerprint=$4",
            {std::int64_t{static_cast<int>(p.role)}, as_number(p.conflict), as_number(p.broken), p.fingerprint}));
    }
    return {};
}

// Gives the fingerprint of the packet in view.
Result<std::string> Filing::choose_view(const std::string& job, const CheckedPacket* fresh) {
    COTTER_ASSIGN(auto all, on_file(job));
    if (all.empty()) return fail(Errc::not_found, "there is no such job in the ledger", job);
    const auto better = [](const OnFile& a, const OnFile& b) {
        return std::tuple(!a.held, a.revision, a.chosen, -a.seq) > std::tuple(!b.held, b.revision, b.chosen, -b.seq);
    };
    const auto view = static_cast<std::size_t>(std::min_element(all.begin(), all.end(), better) - all.begin());
    COTTER_TRY(mark(all, view));
    const bool conflict =
        std::any_of(all.begin(), all.end(), [](const OnFile& p) { return !p.held && (p.conflict || p.broken); });
    const OnFile& best = all[view];
    COTTER_TRY(
        show({job, best.fingerprint, static_cast<int>(best.revision), best.handed_over, best.held, conflict}, fresh));
    return best.fingerprint;
}

Result<Filed> Filing::file(const CheckedPacket& packet) {
    const std::string job = packet.document.job.id().text();
    COTTER_ASSIGN(const auto there,
                  db_.integer("SELECT count(*) FROM packet WHERE fingerprint=$1", {packet.fingerprint}));
    if (there > 0) return Filed{Arrival::there_already, {}};
    COTTER_ASSIGN(const std::string before, db_.text("SELECT fingerprint FROM job WHERE id=$1", {job}));
    COTTER_ASSIGN(const KeyStanding standing, standing_of(packet));
    if (standing == KeyStanding::listed) COTTER_TRY(vouch(packet));
    COTTER_TRY(insert(packet, standing));
    if (now_) jobs_.keep(packet.fingerprint, packet.document.job);
    COTTER_ASSIGN(const std::string view, choose_view(job, &packet));
    COTTER_ASSIGN(const auto conflict,
                  db_.integer("SELECT conflict + chain_broken FROM packet WHERE fingerprint=$1", {packet.fingerprint}));
    Filed out{Arrival::taken, said(standing, packet.document.job.only<Visit>()->technician)};
    if (conflict > 0) {
        out.arrival = Arrival::conflict;
        out.why = "another packet claims the same job and revision, or another past; both are kept for you to decide";
    } else if (flagged(standing) && view != packet.fingerprint) {
        out.arrival = Arrival::held;
    } else if (view != packet.fingerprint) {
        out.arrival = Arrival::older;
        out.why = "a later revision of the job is shown";
    } else if (!before.empty()) {
        out.arrival = Arrival::revision;
    }
    COTTER_ASSIGN(const auto changes, changes_around(db_, packet.fingerprint, packet.document.job, packet.revision));
    if (const std::string line = changes_line(changes); !line.empty()) out.why += (out.why.empty() ? "" : "; ") + line;
    return out;
}

Result<> Filing::look_again(const std::string& job) {
    COTTER_TRY(choose_view(job, nullptr));
    return {};
}

Result<> Filing::derive_again(const std::string& job) {
    COTTER_TRY(db_.run("UPDATE job SET fingerprint='' WHERE id=$1", {job}));
    return look_again(job);
}

Result<Bytes> load_document(SqlDb& db, const std::string& fingerprint) {
    COTTER_ASSIGN(const auto rows, db.query("SELECT size, body FROM document WHERE fingerprint=$1", {fingerprint}));
    COTTER_ASSIGN(const bool there, rows->next());
    if (!there) return fail(Errc::not_found, "there is no such packet in the ledger", fingerprint);
    const auto size = static_cast<std::uint64_t>(rows->integer(0));
    if (size > kLargestDocument) return fail(Errc::damaged, "a packet's document is too large", fingerprint);
    Bytes out;
    out.reserve(static_cast<std::size_t>(size));
    const Bytes packed = rows->bytes(1);
    Inflater inflater(size);
    COTTER_TRY(inflater.add(packed, [&](ByteView piece) { out.insert(out.end(), piece.begin(), piece.end()); }));
    COTTER_TRY(inflater.finish());
    return out;
}

Result<JobDocument> load_job_document(SqlDb& db, const std::string& fingerprint) {
    COTTER_ASSIGN(const Bytes json, load_document(db, fingerprint));
    auto document = job_document_from_json(as_text(json));
    if (!document) return unexpected(context(document.error(), fingerprint));
    return document;
}

Result<Job> load_job(SqlDb& db, const std::string& fingerprint) {
    COTTER_ASSIGN(JobDocument document, load_job_document(db, fingerprint));
    return std::move(document.job);
}

}  // namespace cotter::ledger
