// The ledger's answers as rows of the desk's tables: texts ready to read. Pure; any thread.
#pragma once

#include <vector>

#include "app/ui/table_model.h"
#include "core/ledger/answers.h"

namespace cotter::desk {

using Columns = std::vector<TableColumn>;

[[nodiscard]] Columns job_columns();  // of the register; found where: only while something is searched
[[nodiscard]] TableRow job_row(const ledger::Hit& hit);
// What the register is sorted by when a column's head is clicked; the days for columns that have no order.
[[nodiscard]] ledger::JobOrder job_order(std::size_t column);

[[nodiscard]] Columns fleet_columns();
[[nodiscard]] TableRow fleet_row(const ledger::TrailerLine& trailer);  // its key is the trailer's
[[nodiscard]] ledger::FleetOrder fleet_order(std::size_t column);
[[nodiscard]] TableCell towing_cell(const std::optional<ledger::TowLine>& tow);
[[nodiscard]] std::string towing_words(const std::optional<ledger::TowLine>& tow);  // all of it, with its time
[[nodiscard]] std::string outcome_words(TowOutcome outcome);                        // "Do not tow"
[[nodiscard]] Sign sign_of_outcome(TowOutcome outcome);
[[nodiscard]] std::string trailer_name(const ledger::TrailerLine& trailer);  // unit, plate or VIN

[[nodiscard]] Columns visit_columns();
[[nodiscard]] TableRow visit_row(const ledger::JobLine& job);
[[nodiscard]] Columns torque_columns();
[[nodiscard]] TableRow torque_row(const ledger::TorqueLine& line);
[[nodiscard]] Columns finding_columns();
[[nodiscard]] TableRow finding_row(const ledger::FindingLine& line);
[[nodiscard]] Columns revision_columns();  // what a later revision changes
[[nodiscard]] TableRow revision_row(const ledger::RevisionChange& change, const Instant& visit, std::size_t number);
[[nodiscard]] Columns cost_columns();
[[nodiscard]] TableRow cost_row(const ledger::YearCost& cost);
[[nodiscard]] Columns packet_columns();
// `accepted`: flagged when it came, and a person has accepted its key since.
[[nodiscard]] TableRow packet_row(const ledger::PacketLine& packet, bool accepted);

[[nodiscard]] Columns due_columns();
[[nodiscard]] TableRow due_row(const ledger::DueRow& row, const Date& today);
[[nodiscard]] Columns order_columns();
[[nodiscard]] TableRow order_row(const ledger::OrderRow& row);
[[nodiscard]] Columns failure_columns();
[[nodiscard]] TableRow failure_row(const ledger::AxleFailure& row);
[[nodiscard]] Columns receipt_columns();
[[nodiscard]] TableRow receipt_row(const ledger::Receipt& receipt);

[[nodiscard]] Columns change_columns();
[[nodiscard]] TableRow change_row(const ReadingChange& change, std::size_t number);
[[nodiscard]] Columns stayed_columns();  // of findings of two visits: appeared, gone, stayed
[[nodiscard]] TableRow stayed_row(const ledger::FindingLine& line, const std::string& what);

// What a packet's standing means, in a sentence, and what may be decided about it.
[[nodiscard]] std::string standing_words(const ledger::PacketLine& packet, bool accepted);

// "2 years 3 months", "5 days"; for what is ahead or overdue.
[[nodiscard]] std::string days_words(std::int64_t days);
[[nodiscard]] std::string size_words(double bytes);  // "3.2 MB"

}  // namespace cotter::desk
