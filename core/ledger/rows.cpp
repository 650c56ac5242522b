// Reading rows, and conditions.
#include "core/ledger/rows.h"

#include <fmt/format.h>

#include "core/ledger/words.h"

namespace cotter::ledger {

Instant time_of(const std::string& text) {
    return Instant::parse(text).value_or(Instant{});
}

std::optional<Grade> grade_of(std::int64_t number) {
    if (number < 0 || number > static_cast<int>(Grade::do_not_tow)) return std::nullopt;
    return static_cast<Grade>(number);
}

JobLine job_line(const SqlRows& r) {
    JobLine out;
    out.job = r.text(0);
    out.trailer = r.text(1);
    out.revision = static_cast<int>(r.integer(2));
    out.opened = time_of(r.text(3));
    out.handed_over = time_of(r.text(4));
    out.unit = r.text(5);
    out.plate = r.text(6);
    out.vin = r.text(7);
    out.place = r.text(8);
    out.customer = r.text(9);
    out.technician = r.text(10);
    out.company = r.text(11);
    out.findings = static_cast<std::size_t>(r.integer(12));
    out.open_findings = static_cast<std::size_t>(r.integer(13));
    out.worst = grade_of(r.integer(14));
    out.flagged = r.integer(15) != 0;
    out.conflict = r.integer(16) != 0;
    return out;
}

std::string accepted_sql(std::string_view packet) {
    return fmt::format(
        "CASE WHEN {0}.standing={1} OR EXISTS(SELECT 1 FROM accepted_key a WHERE a.technician_key={0}.technician_key "
        "AND a.signer={0}.signer) OR ({0}.standing<={2} AND EXISTS(SELECT 1 FROM packet other WHERE "
        "other.technician_key={0}.technician_key AND other.signer={0}.signer AND other.standing={1})) THEN 1 ELSE 0 "
        "END",
        packet, static_cast<int>(KeyStanding::listed), static_cast<int>(KeyStanding::first));
}

std::string packet_columns() {
    return "packet.fingerprint, packet.name, packet.job, packet.revision, packet.previous, packet.handed_over, "
           "packet.technician, packet.signer, packet.standing, packet.role, packet.conflict, packet.chain_broken, "
           "packet.newer, " +
           accepted_sql("packet");
}

PacketLine packet_line(const SqlRows& r) {
    PacketLine out;
    out.fingerprint = r.text(0);
    out.name = r.text(1);
    out.job = r.text(2);
    out.revision = static_cast<int>(r.integer(3));
    out.previous = r.text(4);
    out.handed_over = time_of(r.text(5));
    out.technician = r.text(6);
    out.signer = r.text(7);
    out.standing = static_cast<KeyStanding>(r.integer(8));
    out.role = static_cast<Role>(r.integer(9));
    out.conflict = r.integer(10) != 0;
    out.chain_broken = r.integer(11) != 0;
    out.newer_format = r.integer(12) != 0;
    out.accepted = r.integer(13) != 0;
    return out;
}

std::string Conditions::next(SqlValue value) {
    values_.push_back(std::move(value));
    return fmt::format("${}", values_.size());
}

void Conditions::add(std::string_view condition, SqlValue value) {
    std::string filled(condition);
    filled.replace(filled.find('?'), 1, next(std::move(value)));
    add(filled);
}

void Conditions::add(std::string_view condition) {
    text_ += text_.empty() ? " WHERE " : " AND ";
    text_ += condition;
}

void add_filter(Conditions& where, const JobFilter& f) {
    if (!f.technician.empty()) where.add("job.technician_key = ?", name_key(f.technician));
    if (!f.customer.empty()) where.add("job.customer_key = ?", name_key(f.customer));
    if (!f.trailer.empty()) where.add("job.trailer = ?", f.trailer);
    if (f.from) where.add("job.opened_day >= ?", f.from->days());
    if (f.until) where.add("job.opened_day <= ?", f.until->days());
    if (f.at_least) where.add("job.worst >= ?", std::int64_t{static_cast<int>(*f.at_least)});
    if (f.open_findings) where.add("job.open_findings > 0");
    if (f.doubtful) where.add("(job.flagged = 1 OR job.conflict = 1)");
}

}  // namespace cotter::ledger
