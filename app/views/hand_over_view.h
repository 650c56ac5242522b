// The hand-over: what is still missing and where, signing off, the packet. Plain values; no ImGui.
#pragma once

#include <optional>

#include "app/views/chrome.h"
#include "app/views/recheck_lines.h"

namespace cotter {

// Something that a hand-over should not lack; a tap leads to where it is mended.
struct Gap {
    std::string key;
    std::string what;   // "Axle 1, left"
    std::string lacks;  // "no torque, no oil level"
    std::optional<Grade> grade;
    Route route;
};

struct HandOverView {
    Chrome chrome;
    std::string towing;                   // "May it be towed? No"
    Towing answer = Towing::cannot_tell;  // of that question
    std::string acknowledge;              // the whole answer, which whoever signs has to acknowledge; empty: need not
    std::vector<Gap> gaps;
    std::string not_covered;            // at this visit: "drawbar; 5 things not known"; empty: nothing
    std::vector<RecheckLine> rechecks;  // what is due when
    std::vector<std::string> told;      // what the report says plainly: declined lines, steps skipped without proof
    bool signed_off = false;
    std::string signed_by;             // "R. Alder, 2026-05-14 15:02"
    std::string technician;            // the name offered for signing
    bool unnamed = false;              // the job does not say whose work it is
    std::string doing, detail;         // while the packet is made; empty: nothing runs
    std::string packet_path;           // of the packet made this time; empty: none yet
    std::string packet_line;           // "revision 2, nothing changed since revision 1"
    std::vector<std::string> packets;  // "2026-05-14_NUR-07_3f9c1a2b_r1, made 15:02"
    std::string folder;                // where packets go
    bool hands_out = false;            // the device passes files on by itself; there are no folders
    std::string only_here;             // that the record is nowhere else, and since when; empty: it need not be said
};

[[nodiscard]] HandOverView hand_over_view(const Session& session);

}  // namespace cotter
