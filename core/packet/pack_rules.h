// What the program ships with that a packet is made by: figures to judge by, the inspection's items, re-checks, fonts.
// For whoever packs. Any thread.
#pragma once

#include "core/base/files.h"
#include "core/judge/register.h"
#include "core/work/recheck.h"

namespace cotter {

struct PackRules {
    JudgeRegister judging;
    RecheckRules rechecks;
    Bytes font;  // TrueType
    Bytes font_bold;
};

// Reads them from the share folder. Fails `not_found` when something is not installed, `refused` when it does not read.
[[nodiscard]] Result<PackRules> load_pack_rules(Files& files, const std::string& share_folder);

}  // namespace cotter
