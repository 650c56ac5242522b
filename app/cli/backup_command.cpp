// `cotter backup`, `cotter export`, `cotter move`: the ledger as a whole.
#include "app/cli/office.h"
#include "core/ledger/transfer.h"
#include "core/store/sql.h"

namespace cotter::cli {

namespace {

struct BackupOptions {
    LedgerPlace place;
    std::string to, to_photos, check, restore;
};

Json as_json(const ledger::Digest& digest) {
    Json rows = Json::object();
    for (const auto& [table, count] : digest.rows) rows[table] = count;
    return {{"rows", rows}, {"sha256", digest.sha256}};
}

void print(const ledger::Digest& digest, bool json) {
    if (json) return print_json(as_json(digest));
    for (const auto& [table, count] : digest.rows) fmt::print("{:<14} {:>9}\n", table, count);
    fmt::print("sha256 {}\n", digest.sha256);
}

Result<> backup(Ports& ports, const BackupOptions& options) {
    if (!options.check.empty()) {
        COTTER_ASSIGN(const auto digest, ledger::check_backup(ports.files, ports.workers, options.check));
        print(digest, options.place.json);
        return {};
    }
    const bool restores = !options.restore.empty();
    COTTER_ASSIGN(const auto office,
                  open_office(ports, options.place, restores ? ledger::Open::create : ledger::Open::existing));
    if (restores)
        COTTER_TRY(ledger::restore(*office->ledger, options.restore, step_bar(ports, "photos")));
    else
        COTTER_TRY(ledger::backup(*office->ledger, options.to, step_bar(ports, "photos")));
    COTTER_ASSIGN(const auto digest, ledger::digest(*office->ledger));
    print(digest, options.place.json);
    return {};
}

Result<> export_to(Ports& ports, const BackupOptions& options) {
    COTTER_ASSIGN(const auto office, open_office(ports, options.place, ledger::Open::existing));
    return ledger::export_all(*office->ledger, options.to, step_bar(ports, "jobs"));
}

Result<> move_to(Ports& ports, const BackupOptions& options) {
    COTTER_ASSIGN(const auto office, open_office(ports, options.place, ledger::Open::existing));
    LedgerPlace to{options.to, options.to_photos, false};
    if (to.photos.empty() && is_server(to.ledger)) to.photos = office->ledger->photos_folder();
    COTTER_ASSIGN(const auto other, open_another(ports, *office, to));
    COTTER_ASSIGN(const auto digest, ledger::copy(*office->ledger, *other, step_bar(ports, "photos")));
    print(digest, options.place.json);
    return {};
}

int answer(const Result<>& done, bool json) {
    return done ? kDone : report(done.error(), json);
}

}  // namespace

Command backup_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<BackupOptions>();
    Parser parser = all.add_command("backup", "Back a ledger up into one file, check such a file, or restore it");
    parser.add_option("--ledger", options->place.ledger, "The ledger: a file, or postgresql://USER@HOST/DATABASE");
    parser.add_option("--photos", options->place.photos, "The folder of its photos");
    parser.add_flag("--json", options->place.json, "Answer in JSON");
    parser.add_option("--to", options->to, "The file to write");
    parser.add_option("--check", options->check, "A backup to read and check, without a ledger");
    parser.add_option("--restore", options->restore, "A backup to fill the ledger with, which must be new");
    return {parser, [&ports, options] {
                const int given = !options->to.empty() + !options->check.empty() + !options->restore.empty();
                if (given != 1 || options->place.ledger.empty() != !options->check.empty()) {
                    fmt::print(stderr, "cotter: --ledger with --to or --restore, or --check alone\n");
                    return static_cast<int>(kWrongUse);
                }
                return answer(backup(ports, *options), options->place.json);
            }};
}

Command export_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<BackupOptions>();
    Parser parser = all.add_command("export", "Write everything as CSV tables and one file of JSON lines");
    add_ledger_options(parser, options->place);
    parser.add_option("--out", options->to, "The folder to write to").required();
    return {parser, [&ports, options] { return answer(export_to(ports, *options), options->place.json); }};
}

Command move_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<BackupOptions>();
    Parser parser = all.add_command("move", "Copy a ledger to another engine or place, and verify it");
    add_ledger_options(parser, options->place);
    parser.add_option("--to", options->to, "The new ledger: a file, or postgresql://USER@HOST/DATABASE").required();
    parser.add_option("--to-photos", options->to_photos, "The folder for its photos, where they are not to be shared");
    return {parser, [&ports, options] { return answer(move_to(ports, *options), options->place.json); }};
}

}  // namespace cotter::cli
