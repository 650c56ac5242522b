// Everything as tables and as one file of JSON lines, written piece by piece.
#include <algorithm>
#include <fmt/format.h>

#include "core/ledger/filing.h"
#include "core/ledger/rows.h"
#include "core/ledger/transfer.h"
#include "core/quote/csv_text.h"
#include "core/report/csv.h"
#include "core/report/quote_csv.h"
#include "core/survey/json_visitors.h"

namespace cotter::ledger {

namespace {

// A file that gets its name when it is whole.
class Growing {
public:
    static Result<Growing> begin(Files& files, const std::string& path) {
        COTTER_ASSIGN(auto out, files.create(path + ".part", false));
        return Growing(files, path, std::move(out));
    }
    Growing(Growing&&) = default;
    Growing& operator=(Growing&&) = delete;
    ~Growing() {
        if (out_) (void)files_->remove(path_ + ".part");
    }
    Result<> add(std::string_view text) {
        held_ += text;
        return held_.size() < kPiece ? Result<>() : flush();
    }
    Result<> finish() {
        COTTER_TRY(flush());
        COTTER_TRY(out_->sync());
        COTTER_TRY(out_->close());
        COTTER_TRY(files_->rename(path_ + ".part", path_));
        out_.reset();
        return {};
    }

private:
    static constexpr std::size_t kPiece = std::size_t{1} << 20;
    Growing(Files& files, std::string path, std::unique_ptr<FileWriter> out)
        : files_(&files), path_(std::move(path)), out_(std::move(out)) {}
    Result<> flush() {
        COTTER_TRY(out_->write(as_bytes(held_)));
        held_.clear();
        return {};
    }
    Files* files_;
    std::string path_;
    std::unique_ptr<FileWriter> out_;
    std::string held_;
};

using Fields = std::vector<std::string>;

std::string line_of(const Fields& fields) {
    std::string out;
    add_csv_line(out, fields);
    return out;
}

// A job's own table with the job's columns in front of every row; its header only once.
Result<> add_table(Growing& out, const Fields& front, const std::string& table, bool& begun) {
    COTTER_ASSIGN(const auto lines, csv_lines(table));
    for (std::size_t i = begun ? 1 : 0; i < lines.size(); ++i) {
        Fields row = i == 0 ? Fields{"job", "unit", "opened"} : front;
        row.insert(row.end(), lines[i].fields.begin(), lines[i].fields.end());
        COTTER_TRY(out.add(line_of(row)));
    }
    begun = true;
    return {};
}

std::string findings_csv(const Job& job) {
    std::string out =
        line_of({"place", "component", "defect", "grade", "outcome", "note", "todo", "outcome_note", "at", "by"});
    for (const Finding& f : job.all<Finding>())
        out += line_of({f.place.text(), guarded_text(f.component), guarded_text(f.defect),
                        std::string(name_of(f.grade)), std::string(name_of(f.outcome)), guarded_text(f.note),
                        guarded_text(f.todo), guarded_text(f.outcome_note), f.at.text(), guarded_text(f.by)});
    return out;
}

// The tables that are put together from those of the jobs.
class JobTables {
public:
    static constexpr int kCount = 5;
    static Result<JobTables> begin(Files& files, const std::string& folder) {
        JobTables out;
        for (const char* name : {"findings", "readings", "torques", "levels", "quotes"}) {
            COTTER_ASSIGN(Growing file, Growing::begin(files, join_path(folder, fmt::format("{}.csv", name))));
            out.files_.push_back(std::move(file));
        }
        return out;
    }
    Result<> add(const JobLine& line, const Job& job) {
        const Fields front{line.job, guarded_text(line.unit), line.opened.text()};
        const std::string tables[kCount]{findings_csv(job), readings_csv(job), torques_csv(job), levels_csv(job),
                                         quote_csv(job)};
        for (std::size_t i = 0; i < kCount; ++i) COTTER_TRY(add_table(files_[i], front, tables[i], begun_[i]));
        return {};
    }
    Result<> finish() {
        for (Growing& file : files_) COTTER_TRY(file.finish());
        return {};
    }

private:
    std::vector<Growing> files_;
    bool begun_[kCount]{};
};

Fields job_fields(const JobLine& l) {
    return {l.job,
            std::to_string(l.revision),
            l.opened.text(),
            l.handed_over.text(),
            guarded_text(l.unit),
            guarded_text(l.plate),
            guarded_text(l.vin),
            guarded_text(l.customer),
            guarded_text(l.place),
            guarded_text(l.technician),
            guarded_text(l.company),
            std::to_string(l.findings),
            std::to_string(l.open_findings),
            l.worst ? std::string(name_of(*l.worst)) : "",
            l.flagged ? "yes" : "no",
            l.conflict ? "yes" : "no",
            guarded_text(l.trailer)};
}

Result<> export_jobs(Ledger& ledger, const std::string& folder, const Step& step) {
    std::vector<std::pair<JobLine, std::string>> all;
    COTTER_TRY(ledger.db().each(fmt::format("SELECT {}, job.fingerprint FROM job ORDER BY job.id", kJobColumns), {},
                                [&](const SqlRows& r) -> Result<> {
                                    all.emplace_back(job_line(r), r.text(kJobColumnCount));
                                    return {};
                                }));
    Files& files = ledger.ports().files;
    COTTER_ASSIGN(Growing jobs, Growing::begin(files, join_path(folder, "jobs.csv")));
    COTTER_ASSIGN(JobTables tables, JobTables::begin(files, folder));
    COTTER_TRY(jobs.add(
        line_of({"job", "revision", "opened", "handed_over", "unit", "plate", "vin", "customer", "place", "technician",
                 "company", "findings", "open_findings", "worst_open", "flagged", "conflict", "trailer"})));
    for (std::size_t i = 0; i < all.size(); ++i) {
        COTTER_TRY(jobs.add(line_of(job_fields(all[i].first))));
        COTTER_ASSIGN(const Job job, load_job(ledger.db(), all[i].second));
        COTTER_TRY(tables.add(all[i].first, job));
        if (step && !step(i + 1, all.size())) return fail(Errc::cancelled, "the export was stopped", folder);
    }
    COTTER_TRY(jobs.finish());
    return tables.finish();
}

Json as_json(const PacketLine& p) {
    return {{"fingerprint", p.fingerprint},
            {"name", p.name},
            {"job", p.job},
            {"revision", p.revision},
            {"previous_tagmanifest_sha256", p.previous},
            {"handed_over", p.handed_over.text()},
            {"technician", p.technician},
            {"signer", p.signer},
            {"standing", std::string(name_of(p.standing))},
            {"role", std::string(name_of(p.role))},
            {"conflict", p.conflict},
            {"chain_broken", p.chain_broken},
            {"newer_format", p.newer_format}};
}

Fields packet_fields(const PacketLine& p) {
    const auto yes = [](bool b) { return std::string(b ? "yes" : "no"); };
    return {p.fingerprint,
            p.name,
            p.job,
            std::to_string(p.revision),
            p.previous,
            p.handed_over.text(),
            guarded_text(p.technician),
            p.signer,
            std::string(name_of(p.standing)),
            std::string(name_of(p.role)),
            yes(p.conflict),
            yes(p.chain_broken),
            yes(p.newer_format)};
}

Result<> export_packets(Ledger& ledger, const std::string& folder) {
    std::vector<PacketLine> all;
    COTTER_TRY(ledger.db().each(fmt::format("SELECT {} FROM packet ORDER BY packet.fingerprint", packet_columns()), {},
                                [&](const SqlRows& r) -> Result<> {
                                    all.push_back(packet_line(r));
                                    return {};
                                }));
    Files& files = ledger.ports().files;
    COTTER_ASSIGN(Growing table, Growing::begin(files, join_path(folder, "packets.csv")));
    COTTER_ASSIGN(Growing lines, Growing::begin(files, join_path(folder, "ledger.jsonl")));
    COTTER_TRY(table.add(line_of({"fingerprint", "name", "job", "revision", "previous", "handed_over", "technician",
                                  "signer", "standing", "role", "conflict", "chain_broken", "newer_format"})));
    for (const PacketLine& packet : all) {
        COTTER_TRY(table.add(line_of(packet_fields(packet))));
        COTTER_ASSIGN(const Bytes text, load_document(ledger.db(), packet.fingerprint));
        COTTER_ASSIGN(Json document, parse_json(as_text(text)));
        Json line = as_json(packet);
        line["document"] = std::move(document);
        COTTER_TRY(lines.add(compact_json(line) + "\n"));
    }
    COTTER_TRY(table.finish());
    return lines.finish();
}

Result<> export_trailers(Ledger& ledger, const std::string& folder) {
    std::string out =
        line_of({"trailer", "unit", "plate", "vin", "kind", "maker", "axle_models", "visits", "first", "last"});
    constexpr std::size_t kAtOnce = 1000;
    for (std::size_t offset = 0;; offset += kAtOnce) {
        COTTER_ASSIGN(const auto page, ledger.trailers(kAtOnce, offset));
        for (const TrailerLine& t : page) {
            std::string models;
            for (const std::string& model : t.axle_models) models += (models.empty() ? "" : "; ") + model;
            out += line_of({guarded_text(t.key), guarded_text(t.unit), guarded_text(t.plate), guarded_text(t.vin),
                            guarded_text(t.kind), guarded_text(t.maker), guarded_text(models), std::to_string(t.visits),
                            t.first.text(), t.last.text()});
        }
        if (page.size() < kAtOnce) break;
    }
    return replace_file(ledger.ports().files, join_path(folder, "trailers.csv"), as_bytes(out));
}

}  // namespace

Result<> export_all(Ledger& ledger, const std::string& folder, const Step& step) {
    Files& files = ledger.ports().files;
    COTTER_TRY(files.make_folders(folder));
    COTTER_TRY(export_packets(ledger, folder));
    COTTER_TRY(export_jobs(ledger, folder, step));
    COTTER_TRY(export_trailers(ledger, folder));
    DueAsk everything;
    everything.each_trip = true;
    COTTER_ASSIGN(const auto due, ledger.due(everything));
    COTTER_TRY(replace_file(files, join_path(folder, "due.csv"), as_bytes(due_csv(due))));
    COTTER_ASSIGN(const auto orders, ledger.orders());
    COTTER_TRY(replace_file(files, join_path(folder, "orders.csv"), as_bytes(orders_csv(orders))));
    return files.sync_folder(folder);
}

}  // namespace cotter::ledger
