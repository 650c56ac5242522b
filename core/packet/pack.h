// A job turned into its packet on disk: complete and checked, or not there at all. Any thread, one packing at a time.
#pragma once

#include <span>
#include <string>

#include "core/base/ports.h"
#include "core/judge/inspection.h"
#include "core/judge/limit.h"
#include "core/packet/job_document.h"
#include "core/packet/signature.h"
#include "core/photo/vault.h"
#include "core/report/paper.h"
#include "core/work/recheck.h"

namespace cotter {

// A packet of a job, as its book remembers it.
struct PacketFacts {
    int revision = 0;
    std::string content_sha256;      // of what went in: the same content gives the same revision
    std::string tagmanifest_sha256;  // its fingerprint, named by the next revision
    std::string name;                // without ".zip"
};

struct PackTools {
    Files& files;
    Workers& workers;
    PhotoVault& vault;
    const DeviceKey& key;
    ByteView font;  // TrueType files for the report and for marks on photos
    ByteView font_bold;
    std::string software;  // "Cotter 0.1.0"
    // For the report and rechecks.ics; all of it is part of what makes a packet the same.
    std::span<const Limit> limits = {};
    std::span<const InspectionItem> inspection = {};
    RecheckRules rechecks = {};
    Paper paper = Paper::a4;
};

struct Packed {
    std::string path;
    bool unchanged = false;  // the same revision as before, written again with the same bytes
    PacketFacts facts;
};

// Writes <out_folder>/<name>.zip. The same job gives the same bytes. `earlier`: the packets made of it, oldest first;
// a job changed since the last of them gives the next revision, which names the fingerprint of the one before. The file
// appears under its name only after it was read back and found valid; on any failure nothing of it is left and an
// earlier file stays as it was. `visits`: the trailer's other jobs, in any order, for the report's forecasts: those
// opened before this one count, and are part of what makes a packet the same.
[[nodiscard]] Result<Packed> pack(const PackTools& tools, const Job& job, std::span<const PacketFacts> earlier,
                                  const std::string& out_folder, std::span<const Job> visits = {});

// "2026-05-14_NUR-07_3f9c1a2b_r1"
[[nodiscard]] std::string packet_name(const Job& job, int revision);

// The time that stands for the whole packet: of the hand-over, or of the newest record while not signed off.
[[nodiscard]] Instant packet_time(const Job& job);

}  // namespace cotter
