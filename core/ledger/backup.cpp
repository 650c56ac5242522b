// A backup is a plain BagIt bag (RFC 8493) in a zip, so any validator can check it: data/tables/<table>-<nnnn>.jsonl, a
// row a line; data/photos/<sha256>.jpg or .png; data/digest.json. Copying to another engine takes the same rows.
#include <fmt/format.h>

#include "core/base/hash.h"
#include "core/ledger/parts.h"
#include "core/ledger/tables.h"
#include "core/packet/bag.h"
#include "core/packet/check.h"
#include "core/packet/seal.h"
#include "core/photo/vault_stage.h"
#include "core/survey/json_visitors.h"

namespace cotter::ledger {

namespace {

constexpr std::size_t kPiece = std::size_t{8} << 20;  // of a table, before packing
constexpr const char* kTop = "ledger-backup";
constexpr ZipLimits kRoom{4'000'000, std::uint64_t{4} << 30, std::uint64_t{1} << 44, 2'000, std::uint64_t{1} << 30};

Json as_json(const Digest& digest) {
    Json rows = Json::object();
    for (const auto& [table, count] : digest.rows) rows[table] = count;
    return {{"format", "cotter-ledger-backup"}, {"version", kLedgerVersion}, {"rows", rows}, {"sha256", digest.sha256}};
}

Result<Digest> digest_from(const Bytes& text) {
    COTTER_ASSIGN(const Json json, parse_json(as_text(text)));
    if (!json.is_object() || json.value("format", "") != "cotter-ledger-backup")
        return fail(Errc::not_ours, "this is not a backup of a ledger");
    if (json.value("version", 0) > kLedgerVersion)
        return fail(Errc::too_new, "the backup was made by a newer program", {}, "update this program");
    Digest out;
    for (const KeptTable& table : kept_tables())
        out.rows.emplace_back(table.name, json["rows"].value(std::string(table.name), std::int64_t{0}));
    out.sha256 = json.value("sha256", "");
    return out;
}

std::string row_text(const KeptTable& table, const SqlValues& row) {
    Json out = Json::array();
    for (std::size_t i = 0; i < row.size(); ++i) {
        if (table.types[i] == 'i')
            out.push_back(std::get<std::int64_t>(row[i]));
        else if (table.types[i] == 'b')
            out.push_back(std::string(as_text(std::get<Bytes>(row[i]))));
        else
            out.push_back(std::get<std::string>(row[i]));
    }
    return compact_json(out) + "\n";
}

Result<SqlValues> row_from(const KeptTable& table, std::string_view line) {
    COTTER_ASSIGN(const Json json, parse_json(line));
    const auto broken = [&] {
        return fail(Errc::damaged, "a row of the backup cannot be read", std::string(table.name));
    };
    if (!json.is_array() || json.size() != table.types.size()) return broken();
    SqlValues out;
    for (std::size_t i = 0; i < json.size(); ++i) {
        const bool number = table.types[i] == 'i';
        if (number ? !json[i].is_number_integer() : !json[i].is_string()) return broken();
        if (number)
            out.emplace_back(json[i].get<std::int64_t>());
        else if (table.types[i] == 'b')
            out.emplace_back(to_bytes(json[i].get<std::string>()));
        else
            out.emplace_back(json[i].get<std::string>());
    }
    return out;
}

class Writer {
public:
    Writer(FileWriter& out, const Instant& at) : zip_(out, at) {}

    Result<> begin() { return add_tag("bagit.txt", bagit_txt()); }
    Result<> add(const std::string& path, Bytes bytes) {
        SealedFile file = SealedFile::make(path, std::move(bytes));
        payload_bytes_ += file.file.size;
        manifest_.push_back({file.file.name, file.sha256});
        file.file.name = fmt::format("{}/{}", kTop, file.file.name);
        return zip_.add(file.file);
    }
    Result<> finish(const Instant& at) {
        COTTER_TRY(add_tag("bag-info.txt",
                           bag_info_txt({{"Bagging-Date", at.local_date().text()},
                                         {"Payload-Oxum", fmt::format("{}.{}", payload_bytes_, manifest_.size())},
                                         {"External-Description", "Backup of a ledger: every row, every photo"}})));
        COTTER_TRY(add_tag("manifest-sha256.txt", manifest_txt(manifest_)));
        const std::string tags = manifest_txt(tags_);
        COTTER_TRY(add_tag("tagmanifest-sha256.txt", tags));
        return zip_.finish();
    }

private:
    Result<> add_tag(const std::string& path, const std::string& text) {
        tags_.push_back({path, sha256_hex(as_bytes(text))});
        return zip_.add(ZipFile::make(fmt::format("{}/{}", kTop, path), to_bytes(text), Packing::deflate));
    }
    ZipWriter zip_;
    std::vector<ManifestLine> manifest_, tags_;
    std::uint64_t payload_bytes_ = 0;
};

Result<> write_table(Ledger& ledger, const KeptTable& table, Writer& out) {
    std::string text;
    int piece = 0;
    const auto flush = [&]() -> Result<> {
        if (text.empty()) return {};
        return out.add(fmt::format("tables/{}-{:06}.jsonl", table.name, ++piece), to_bytes(std::exchange(text, {})));
    };
    COTTER_TRY(each_row(ledger.db(), table, [&](const SqlValues& row) -> Result<> {
        text += row_text(table, row);
        return text.size() < kPiece ? Result<>() : flush();
    }));
    return flush();
}

Result<> write_all(Ledger& ledger, Writer& out, const Instant& at, const Step& step) {
    COTTER_TRY(out.begin());
    for (const KeptTable& table : kept_tables()) COTTER_TRY(write_table(ledger, table, out));
    COTTER_ASSIGN(const auto photos, photos_on_file(ledger.db()));
    std::size_t done = 0;
    for (const auto& [sha256, extension] : photos) {
        COTTER_ASSIGN(Bytes bytes, ledger.photos().original(sha256));
        COTTER_TRY(out.add(fmt::format("photos/{}.{}", sha256, extension), std::move(bytes)));
        if (step && !step(++done, photos.size())) return fail(Errc::cancelled, "the backup was stopped");
    }
    COTTER_ASSIGN(const Digest sum, digest(ledger));
    COTTER_TRY(out.add("digest.json", to_bytes(compact_json(as_json(sum)) + "\n")));
    return out.finish(at);
}

Result<> write_file(Ledger& ledger, const std::string& path, const Step& step) {
    COTTER_ASSIGN(const auto file, ledger.ports().files.create(path, false));
    const Instant at = ledger.ports().clock.now();
    Writer out(*file, at);
    COTTER_TRY(write_all(ledger, out, at, step));
    COTTER_TRY(file->sync());
    return file->close();
}

Result<> fill_tables(Ledger& ledger, const BagSource& bag) {
    for (const KeptTable& table : kept_tables())
        for (int piece = 1;; ++piece) {
            const auto file = bag.find(fmt::format("data/tables/{}-{:06}.jsonl", table.name, piece));
            if (!file) break;
            COTTER_ASSIGN(const Bytes bytes, read_whole(bag, *file, std::uint64_t{4} << 30));
            std::string_view rest = as_text(bytes);
            while (!rest.empty()) {
                const auto end = rest.find('\n');
                COTTER_ASSIGN(const SqlValues row, row_from(table, rest.substr(0, end)));
                COTTER_TRY(insert_row(ledger.db(), table, row));
                rest.remove_prefix(end == rest.npos ? rest.size() : end + 1);
            }
        }
    return {};
}

Result<> fill_vault(Ledger& ledger, const BagSource& bag, const Step& step) {
    COTTER_ASSIGN(const auto stage, VaultStage::open(ledger.ports().files, ledger.photos_folder()));
    for (std::size_t i = 0; i < bag.files().size(); ++i) {
        const std::string name = bag.files()[i].path;
        constexpr std::string_view kFolder = "data/photos/";
        if (!name.starts_with(kFolder) || name.size() != kFolder.size() + 68) continue;
        COTTER_ASSIGN(const Bytes bytes, read_whole(bag, i, std::uint64_t{1} << 30));
        COTTER_TRY(stage->put(0, name.substr(kFolder.size(), 64), name.substr(name.size() - 3), bytes));
        if (step && !step(i + 1, bag.files().size())) return fail(Errc::cancelled, "it was stopped");
    }
    COTTER_TRY(stage->keep(0));
    return stage->settle();
}

// What was filled in must be what it was filled from, before it counts.
Result<> close_filled(Ledger& ledger, SqlTransaction& transaction, const Digest& wanted) {
    COTTER_TRY(ledger.remember_photos());
    COTTER_TRY(derive_all(ledger.db(), ledger.rules()));
    COTTER_ASSIGN(const Digest got, digest(ledger));
    if (!(got == wanted))
        return fail(Errc::damaged, "what arrived is not what was sent: the rows do not have the same digest",
                    ledger.where(), "nothing was kept; try again");
    return transaction.commit();
}

Result<> copy_photos(Ledger& from, Ledger& to, const Step& step) {
    if (from.photos_folder() == to.photos_folder()) return {};
    COTTER_ASSIGN(const auto photos, photos_on_file(from.db()));
    COTTER_ASSIGN(const auto stage, VaultStage::open(to.ports().files, to.photos_folder()));
    std::size_t done = 0;
    for (const auto& [sha256, extension] : photos) {
        COTTER_ASSIGN(const Bytes bytes, from.photos().original(sha256));
        COTTER_TRY(stage->put(0, sha256, extension, bytes));
        if (step && !step(++done, photos.size())) return fail(Errc::cancelled, "it was stopped");
    }
    COTTER_TRY(stage->keep(0));
    return stage->settle();
}

}  // namespace

Result<> backup(Ledger& ledger, const std::string& file, const Step& step) {
    Files& files = ledger.ports().files;
    const std::string part = file + ".part";
    Result<> done = write_file(ledger, part, step);
    if (done) {
        const auto checked = check_backup(files, ledger.ports().workers, part);
        if (!checked) done = unexpected(checked.error());
    }
    if (done) done = files.rename(part, file);
    if (!done) {
        (void)files.remove(part);
        return unexpected(done.error());
    }
    return files.sync_folder(parent_folder(file));
}

Result<Digest> check_backup(Files& files, Workers& workers, const std::string& file) {
    const CheckReport report = check(files, workers, file, {}, kRoom);
    for (const Reason& reason : report.reasons)
        if (reason.weight == Weight::error)
            return fail(Errc::damaged, reason.what, reason.where.empty() ? file : reason.where, "use another backup");
    COTTER_ASSIGN(const auto bag, open_bag(files, file, kRoom));
    const auto sum = bag->find("data/digest.json");
    if (!sum) return fail(Errc::not_ours, "this is not a backup of a ledger", file);
    COTTER_ASSIGN(const Bytes text, read_whole(*bag, *sum, 1 << 20));
    return digest_from(text);
}

Result<> restore(Ledger& empty, const std::string& file, const Step& step) {
    COTTER_TRY(must_be_empty(empty));
    COTTER_ASSIGN(const Digest wanted, check_backup(empty.ports().files, empty.ports().workers, file));
    COTTER_ASSIGN(const auto bag, open_bag(empty.ports().files, file, kRoom));
    COTTER_TRY(fill_vault(empty, *bag, step));
    COTTER_ASSIGN(auto transaction, SqlTransaction::begin(empty.db()));
    COTTER_TRY(fill_tables(empty, *bag));
    return close_filled(empty, transaction, wanted);
}

Result<Digest> copy(Ledger& from, Ledger& to, const Step& step) {
    COTTER_TRY(must_be_empty(to));
    COTTER_TRY(copy_photos(from, to, step));
    COTTER_ASSIGN(const Digest wanted, digest(from));
    COTTER_ASSIGN(auto transaction, SqlTransaction::begin(to.db()));
    for (const KeptTable& table : kept_tables())
        COTTER_TRY(each_row(from.db(), table, [&](const SqlValues& row) { return insert_row(to.db(), table, row); }));
    COTTER_TRY(close_filled(to, transaction, wanted));
    return wanted;
}

}  // namespace cotter::ledger
