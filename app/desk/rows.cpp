// See rows.h: the register, a trailer's visits, packets.
#include "app/desk/rows.h"

#include <cmath>

#include <fmt/format.h>

#include "app/views/chrome.h"
#include "core/base/text.h"

namespace cotter::desk {

namespace {

constexpr std::size_t kMostText = 300;

TableCell words(std::string_view text) {
    return one_line(text, kMostText);
}

TableCell worst_cell(const std::optional<Grade>& worst) {
    if (!worst) return TableCell("", -1);  // that no finding is open says nothing about towing
    TableCell cell(std::string(name_of(*worst)), static_cast<double>(*worst));
    cell.grade = worst;
    return cell;
}

TableCell count_cell(std::size_t n) {
    return TableCell(n == 0 ? "" : fmt::format("{}", n), static_cast<double>(n));
}

TableCell day_cell(const Instant& at) {
    return TableCell(day_words(at), static_cast<double>(at.unix_s));
}

std::string doubt_words(bool flagged, bool conflict) {
    if (flagged && conflict) return "signed by another key, and packets contradict each other";
    if (flagged) return "signed by a key that is not this technician's";
    return conflict ? "packets contradict each other" : "";
}

std::string unit_words(const ledger::JobLine& job) {
    if (!job.unit.empty()) return one_line(job.unit, kMostText);
    if (!job.plate.empty()) return one_line(job.plate, kMostText);
    return job.vin.empty() ? "no unit number" : one_line(job.vin, kMostText);
}

std::string job_detail(const ledger::JobLine& job) {
    std::string out =
        fmt::format("{}: {} by {}", day_words(job.opened), unit_words(job), one_line(job.technician, kMostText));
    if (!job.company.empty()) out += fmt::format(" ({})", one_line(job.company, kMostText));
    if (!job.customer.empty()) out += fmt::format(", for {}", one_line(job.customer, kMostText));
    if (!job.place.empty()) out += fmt::format(", at {}", one_line(job.place, kMostText));
    if (!job.vin.empty()) out += fmt::format(". VIN {}", one_line(job.vin, 60));
    out += fmt::format(". {}, {} of them open", count_words(job.findings, "finding", "findings"), job.open_findings);
    if (const std::string doubt = doubt_words(job.flagged, job.conflict); !doubt.empty()) out += ". Doubtful: " + doubt;
    return out + ".";
}

}  // namespace

// What was found comes before the grades: what does not fit is left out from the right.
Columns job_columns() {
    return {{"opened", "Day", 0, 120, false, true, true},
            {"unit", "Unit", 0.8F, 110, false, true, true},
            {"plate", "Plate", 0.4F, 100, false, false, false},
            {"vin", "VIN", 0.4F, 190, false, false, false},
            {"customer", "Customer", 1.4F, 140, false, true, true},
            {"technician", "Technician", 1, 124, false, true, true},
            {"towing", "Towing now", 0.2F, 236, false, false, true},
            {"found", "Found in", 2, 170, false, false, true},
            {"worst", "Worst open", 0.3F, 136, false, true, true},
            {"open", "Open", 0, 66, true, true, true},
            {"place", "Place", 1.4F, 142, false, false, true}};
}

ledger::JobOrder job_order(std::size_t column) {
    switch (column) {
        case 1:
            return ledger::JobOrder::unit;
        case 4:
            return ledger::JobOrder::customer;
        case 5:
            return ledger::JobOrder::technician;
        case 8:
            return ledger::JobOrder::worst;
        case 9:
            return ledger::JobOrder::open_findings;
        default:
            return ledger::JobOrder::opened;
    }
}

TableRow job_row(const ledger::Hit& hit) {
    const ledger::JobLine& job = hit.job;
    TableRow row;
    row.key = job.job;
    row.label = fmt::format("{}, {}", unit_words(job), day_words(job.opened));
    row.marked = job.flagged || job.conflict;
    row.detail = job_detail(job);
    const std::string found = hit.field.empty() ? "" : fmt::format("{}: {}", hit.field, one_line(hit.text, kMostText));
    if (!found.empty()) row.detail += fmt::format(" Found in {}.", found);
    row.detail += " The trailer now: " + towing_words(hit.tow);
    row.cells = {day_cell(job.opened),  unit_words(job),
                 words(job.plate),      words(job.vin),
                 words(job.customer),   words(job.technician),
                 towing_cell(hit.tow),  found,
                 worst_cell(job.worst), count_cell(job.open_findings),
                 words(job.place)};
    return row;
}

Columns visit_columns() {
    return {{"opened", "Day", 0, 120, false, true, true},
            {"technician", "Technician", 0.8F, 124, false, true, true},
            {"place", "Place", 1.4F, 170, false, true, true},
            {"customer", "Customer", 1.4F, 170, false, true, true},
            {"findings", "Findings", 0, 92, true, true, true},
            {"open", "Open", 0, 66, true, true, true},
            {"worst", "Worst open", 0.3F, 136, false, true, true},
            {"revision", "Revision", 0, 90, true, true, true}};
}

TableRow visit_row(const ledger::JobLine& job) {
    TableRow row;
    row.key = job.job;
    row.label = "Visit of " + day_words(job.opened);
    row.marked = job.flagged || job.conflict;
    row.detail = job_detail(job);
    row.cells = {day_cell(job.opened),     words(job.technician),
                 words(job.place),         words(job.customer),
                 count_cell(job.findings), count_cell(job.open_findings),
                 worst_cell(job.worst),    TableCell(fmt::format("{}", job.revision), job.revision)};
    return row;
}

Columns packet_columns() {
    return {{"handed", "Handed over", 0, 120, false, true, true},
            {"name", "Packet", 2, 220, false, true, true},
            {"revision", "Revision", 0, 90, true, true, true},
            {"technician", "Technician", 1, 110, false, true, true},
            {"standing", "Key", 0.6F, 110, false, true, true},
            {"role", "Role", 0.4F, 90, false, true, true},
            {"conflict", "Contradicts", 0.4F, 110, false, true, true}};
}

TableRow packet_row(const ledger::PacketLine& packet, bool accepted) {
    TableRow row;
    row.key = packet.fingerprint;
    row.label = one_line(packet.name, kMostText);
    row.marked = (ledger::flagged(packet.standing) && !accepted) || packet.conflict;
    row.detail =
        fmt::format("{}. Signed by {}. {}", row.label, one_line(packet.signer, 80), standing_words(packet, accepted));
    row.cells = {day_cell(packet.handed_over),
                 row.label,
                 TableCell(fmt::format("{}", packet.revision), packet.revision),
                 words(packet.technician),
                 accepted ? "accepted" : std::string(name_of(packet.standing)),
                 packet.role == ledger::Role::view ? "shown" : std::string(name_of(packet.role)),
                 packet.conflict       ? "another packet"
                 : packet.chain_broken ? "the one before"
                                       : ""};
    return row;
}

std::string standing_words(const ledger::PacketLine& packet, bool accepted) {
    std::string out;
    switch (packet.standing) {
        case ledger::KeyStanding::listed:
            out = "The trust list gives this key to this technician.";
            break;
        case ledger::KeyStanding::seen:
            out = packet.accepted ? "This technician has signed with this key before, and it is accepted here."
                                  : "This technician has signed with this key before.";
            break;
        case ledger::KeyStanding::first:
            out = "The first packet of somebody new: neither name nor key was known.";
            break;
        case ledger::KeyStanding::new_key:
            out = "Flagged: this technician is not known to sign with this key.";
            break;
        case ledger::KeyStanding::other_name:
            out = "Flagged: the trust list gives this key to somebody else.";
            break;
        case ledger::KeyStanding::lapsed:
            out = "Flagged: the trust list's dates do not cover the hand-over.";
            break;
    }
    if (accepted) out += " Somebody here has accepted it since.";
    if (!packet.accepted && !ledger::flagged(packet.standing))
        out += " Nobody here has accepted it yet: what it signs may forbid towing, and never permits it.";
    if (packet.role == ledger::Role::held) out += " It is held: filed, and not shown until its key is accepted.";
    if (packet.conflict) out += " Another packet claims the same job and revision; one of them is shown.";
    if (packet.chain_broken) out += " The revision before it is on file under another fingerprint.";
    if (packet.newer_format) out += " Made by a newer program; what is not known here is kept untouched.";
    return out;
}

std::string days_words(std::int64_t days) {
    const auto n = static_cast<std::size_t>(std::abs(days));
    if (n < 62) return count_words(n, "day", "days");
    if (n < 730) return fmt::format("{} months", n / 30);
    return fmt::format("{} years", n / 365);
}

std::string size_words(double bytes) {
    if (bytes < 1e3) return fmt::format("{:.0f} B", bytes);
    if (bytes < 1e6) return fmt::format("{:.0f} kB", bytes / 1e3);
    if (bytes < 1e9) return fmt::format("{:.1f} MB", bytes / 1e6);
    return fmt::format("{:.2f} GB", bytes / 1e9);
}

}  // namespace cotter::desk
