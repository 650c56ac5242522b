// Batches: group after group, the one filed while the next is checked.
#include "core/ledger/receive.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/ledger/checking.h"

namespace cotter::ledger {

namespace {

constexpr std::size_t kMostInGroup = 16;
constexpr std::uint64_t kGroupBytes = 192u << 20;  // a group of large packets is smaller

class Batch {
public:
    Batch(Ledger& ledger, const std::vector<std::string>& packets, const ReceiveOptions& options, VaultStage& stage)
        : ledger_(ledger), packets_(packets), options_(options), stage_(stage) {
        for (const std::string& path : packets) {
            const auto info = ledger.ports().files.info(path);
            sizes_.push_back(info ? info->size : 0);
            progress_.bytes_total += sizes_.back();
        }
        progress_.total = packets.size();
        began_ = ledger.ports().clock.now().unix_s;
    }

    Result<ReceiveResult> run() {
        std::vector<Checked> ready;
        for (std::size_t from = 0; from < packets_.size() || !ready.empty();) {
            std::vector<Checked> next(group_from(from));
            Result<> filed;
            const std::size_t begin = from;
            ledger_.ports().workers.run(next.size() + 1, [&](std::size_t piece) {
                if (piece == 0)
                    filed = file(ready);
                else
                    next[piece - 1] = check(begin + piece - 1, next.size() == 1);
            });
            from += next.size();
            COTTER_TRY(filed);
            tell();
            if (!goes_on()) break;
            ready = std::move(next);
        }
        return std::move(result_);
    }

private:
    [[nodiscard]] std::size_t group_from(std::size_t from) const {
        std::size_t count = 0;
        std::uint64_t bytes = 0;
        while (from + count < packets_.size() && count < kMostInGroup && (count == 0 || bytes < kGroupBytes))
            bytes += sizes_[from + count++];
        return count;
    }

    // A packet alone in its group may use all cores for its files.
    Checked check(std::size_t index, bool alone) {
        SerialWorkers here;
        Workers& workers = alone ? ledger_.ports().workers : static_cast<Workers&>(here);
        return check_one({ledger_.ports().files, stage_}, workers, packets_[index], index);
    }

    Result<> file(std::vector<Checked>& group) {
        if (group.empty()) return {};
        const std::size_t first = filed_;
        for (std::size_t i = 0; i < group.size(); ++i)
            if (group[i].packet) keep_photos(group[i], first + i);
        COTTER_TRY(stage_.settle());
        SqlDb& db = ledger_.db();
        COTTER_ASSIGN(auto transaction, SqlTransaction::begin(db));
        Filing filing(db, ledger_.rules(), options_.trust, ledger_.ports().clock.now());
        std::vector<Receipt> receipts;
        COTTER_ASSIGN(std::int64_t number, db.integer("SELECT max(number) FROM receipt"));
        for (const Checked& checked : group) {
            COTTER_ASSIGN(Receipt receipt, file_one(db, filing, checked));
            receipt.number = ++number;
            COTTER_TRY(log(db, receipt));
            receipts.push_back(std::move(receipt));
        }
        COTTER_TRY(filing.finish());
        COTTER_TRY(transaction.commit());
        filed_ += group.size();
        told_ = std::move(receipts);
        return {};
    }

    void keep_photos(Checked& checked, std::size_t bunch) {
        const auto kept = stage_.keep(bunch);
        if (kept) return;
        checked.packet.reset();
        checked.arrival = Arrival::failed;
        checked.why = one_line(kept.error().line(), 400);
    }

    // A packet that the engine cannot hold is refused by itself; the others of its group stay.
    Result<Receipt> file_one(SqlDb& db, Filing& filing, const Checked& checked) {
        Receipt out{0,
                    ledger_.ports().clock.now(),
                    checked.path,
                    checked.arrival,
                    checked.why,
                    checked.fingerprint,
                    checked.job,
                    checked.revision,
                    checked.bytes};
        if (!checked.packet) return out;
        COTTER_TRY(db.script("SAVEPOINT packet"));
        const auto filed = filing.file(*checked.packet);
        if (!filed && filed.error().code != Errc::refused) return unexpected(filed.error());
        if (!filed) COTTER_TRY(db.script("ROLLBACK TO SAVEPOINT packet"));
        COTTER_TRY(db.script("RELEASE SAVEPOINT packet"));
        out.arrival = filed ? filed->arrival : Arrival::refused;
        out.why = filed ? filed->why : one_line(filed.error().line(), 400);
        return out;
    }

    static Result<> log(SqlDb& db, const Receipt& r) {
        return db.run(
            "INSERT INTO receipt(number, at, path, arrival, why, fingerprint, job, revision, bytes) "
            "VALUES($1, $2, $3, $4, $5, $6, $7, $8, $9)",
            {r.number, r.at.text(), one_line(r.path, 4000), std::int64_t{static_cast<int>(r.arrival)},
             one_line(r.why, 1000), r.fingerprint, one_line(r.job, 40), std::int64_t{r.revision},
             static_cast<std::int64_t>(r.bytes)});
    }

    void tell() {
        for (const Receipt& receipt : told_) {
            ++progress_.done;
            progress_.bytes_done += receipt.bytes;
            count(receipt.arrival);
            if (options_.told) options_.told(receipt);
        }
        told_.clear();
    }

    void count(Arrival arrival) {
        switch (arrival) {
            case Arrival::there_already:
                ++result_.there_already;
                break;
            case Arrival::refused:
                ++result_.refused;
                break;
            case Arrival::failed:
                ++result_.failed;
                break;
            default:
                ++result_.taken;
        }
    }

    bool goes_on() {
        const auto seconds = static_cast<double>(ledger_.ports().clock.now().unix_s - began_);
        if (seconds >= 1) {
            progress_.bytes_per_second = static_cast<double>(progress_.bytes_done) / seconds;
            const double part = static_cast<double>(progress_.bytes_done) / static_cast<double>(progress_.bytes_total);
            if (part > 0) progress_.seconds_left = seconds / part - seconds;
        }
        if (!options_.progress || options_.progress(progress_)) return true;
        result_.cancelled = progress_.done < progress_.total;
        return !result_.cancelled;
    }

    Ledger& ledger_;
    const std::vector<std::string>& packets_;
    const ReceiveOptions& options_;
    VaultStage& stage_;
    std::vector<std::uint64_t> sizes_;
    std::size_t filed_ = 0;
    std::vector<Receipt> told_;
    Progress progress_;
    ReceiveResult result_;
    std::int64_t began_ = 0;
};

bool is_hidden(const std::string& name) {
    return name.starts_with('.');
}

Result<> collect(Files& files, const std::string& folder, int depth, std::vector<std::string>& out) {
    constexpr int kDeepest = 32;
    COTTER_ASSIGN(const auto names, files.list(folder));
    if (std::binary_search(names.begin(), names.end(), std::string("bagit.txt"))) {
        out.push_back(folder);
        return {};
    }
    for (const std::string& name : names) {
        if (is_hidden(name)) continue;
        const std::string path = join_path(folder, name);
        const auto info = files.info(path);
        if (!info && info.error().code == Errc::not_found) continue;  // gone since it was listed
        if (!info) out.push_back(path);                               // its receipt will say why
        if (!info) continue;
        if (info->kind == FileInfo::Kind::folder && depth < kDeepest)
            COTTER_TRY(collect(files, path, depth + 1, out));
        else if (info->kind == FileInfo::Kind::file && ascii_lower(name).ends_with(".zip"))
            out.push_back(path);
    }
    return {};
}

}  // namespace

Result<std::vector<std::string>> packets_in(Files& files, const std::vector<std::string>& paths) {
    std::vector<std::string> out;
    for (const std::string& path : paths) {
        const std::string clean = without_end_slash(path);
        const auto info = files.info(clean);
        if (!info && info.error().code != Errc::not_found) return unexpected(info.error());
        if (info && info->kind == FileInfo::Kind::folder)
            COTTER_TRY(collect(files, clean, 0, out));
        else
            out.push_back(clean);
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

Result<std::vector<std::string>> packets_below(Files& files, const std::string& folder) {
    std::vector<std::string> out;
    COTTER_TRY(collect(files, without_end_slash(folder), 0, out));
    return out;
}

Result<ReceiveResult> receive(Ledger& ledger, const std::vector<std::string>& packets, const ReceiveOptions& options) {
    COTTER_ASSIGN(const auto stage, VaultStage::open(ledger.ports().files, ledger.photos_folder()));
    COTTER_TRY(ledger.remember_photos());
    return Batch(ledger, packets, options, *stage).run();
}

}  // namespace cotter::ledger
