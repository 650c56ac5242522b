// Rows out, rows in, and their digest.
#include "core/ledger/tables.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/base/hash.h"
#include "core/base/text.h"
#include "core/ledger/filing.h"
#include "core/packet/deflate.h"

namespace cotter::ledger {

namespace {

constexpr int kAtOnce = 500;

SqlValue value_at(const SqlRows& r, char type, int column) {
    if (type == 'i') return r.integer(column);
    if (type == 'b') return r.bytes(column);
    return r.text(column);
}

// "SELECT … WHERE (a, b) > ($1, $2) ORDER BY a, b LIMIT 500", the first time without the condition.
std::string page_sql(const KeptTable& table, std::size_t keys, bool first) {
    std::string sql = fmt::format("SELECT {} FROM {}", table.columns, table.name);
    std::string marks;
    for (std::size_t i = 1; i <= keys; ++i) marks += fmt::format("{}${}", i == 1 ? "" : ", ", i);
    if (!first) sql += fmt::format(" WHERE ({}) > ({})", table.order, marks);
    return sql + fmt::format(" ORDER BY {} LIMIT {}", table.order, kAtOnce);
}

// In the table document the size stands before the packed body.
Result<> unpack(SqlValues& row) {
    Bytes out;
    Inflater inflater(static_cast<std::uint64_t>(std::get<std::int64_t>(row[1])));
    COTTER_TRY(inflater.add(std::get<Bytes>(row[2]),
                            [&](ByteView piece) { out.insert(out.end(), piece.begin(), piece.end()); }));
    COTTER_TRY(inflater.finish());
    row[2] = std::move(out);
    return {};
}

void add_to(Hasher& hasher, const SqlValue& value) {
    std::string text;
    if (const auto* number = std::get_if<std::int64_t>(&value)) text = std::to_string(*number);
    if (const auto* string = std::get_if<std::string>(&value)) text = *string;
    if (const auto* bytes = std::get_if<Bytes>(&value)) text = std::string(as_text(*bytes));
    hasher.add(as_bytes(fmt::format("{}:", text.size())));
    hasher.add(as_bytes(text));
}

}  // namespace

std::vector<std::string> columns_of(const KeptTable& table) {
    return split(table.columns, ", ");
}

Result<> each_row(SqlDb& db, const KeptTable& table, const RowTask& task) {
    const auto columns = columns_of(table), keys = split(table.order, ", ");
    SqlValues after;
    for (bool first = true;; first = false) {
        std::vector<SqlValues> page;
        COTTER_TRY(db.each(page_sql(table, keys.size(), first), after, [&](const SqlRows& r) -> Result<> {
            SqlValues& row = page.emplace_back();
            for (std::size_t i = 0; i < columns.size(); ++i)
                row.push_back(value_at(r, table.types[i], static_cast<int>(i)));
            return {};
        }));
        if (page.empty()) return {};
        after.clear();
        for (const std::string& key : keys)
            after.push_back(page.back()[static_cast<std::size_t>(std::find(columns.begin(), columns.end(), key) -
                                                                 columns.begin())]);
        for (SqlValues& row : page) {
            if (table.name == "document") COTTER_TRY(unpack(row));
            COTTER_TRY(task(row));
        }
    }
}

Result<> insert_row(SqlDb& db, const KeptTable& table, const SqlValues& row) {
    std::string marks;
    for (std::size_t i = 1; i <= row.size(); ++i) marks += fmt::format("{}${}", i == 1 ? "" : ", ", i);
    SqlValues packed = row;
    if (table.name == "document") packed[2] = deflate_bytes(std::get<Bytes>(row[2]));
    return db.run(fmt::format("INSERT INTO {}({}) VALUES({})", table.name, table.columns, marks), packed);
}

Result<std::int64_t> row_count(SqlDb& db, const KeptTable& table) {
    return db.integer(fmt::format("SELECT count(*) FROM {}", table.name));
}

Result<> must_be_empty(Ledger& ledger) {
    for (const KeptTable& table : kept_tables()) {
        COTTER_ASSIGN(const auto rows, row_count(ledger.db(), table));
        if (rows > 0) return fail(Errc::refused, "the ledger to fill is not empty", ledger.where(), "name a new place");
    }
    return {};
}

Result<std::map<std::string, std::string>> photos_on_file(SqlDb& db) {
    std::map<std::string, std::string> out;
    COTTER_TRY(db.each("SELECT sha256, max(path) FROM content GROUP BY sha256 ORDER BY sha256", {},
                       [&](const SqlRows& r) -> Result<> {
                           out[r.text(0)] = r.text(1).ends_with(".png") ? "png" : "jpg";
                           return {};
                       }));
    return out;
}

Result<Digest> digest(Ledger& ledger) {
    Digest out;
    Hasher hasher;
    for (const KeptTable& table : kept_tables()) {
        std::int64_t rows = 0;
        hasher.add(as_bytes(table.name));
        COTTER_TRY(each_row(ledger.db(), table, [&](const SqlValues& row) -> Result<> {
            ++rows;
            for (const SqlValue& value : row) add_to(hasher, value);
            return {};
        }));
        out.rows.emplace_back(table.name, rows);
    }
    out.sha256 = hasher.finish_hex();
    return out;
}

}  // namespace cotter::ledger
