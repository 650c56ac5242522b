// The register that ships with the program: limits and the inspection's items, from the share folder. Any thread.
#pragma once

#include "core/base/files.h"
#include "core/judge/inspection.h"

namespace cotter {

struct JudgeRegister {
    std::vector<Limit> limits;
    std::vector<InspectionItem> inspection;
};

// Reads <share>/limits/limits.json and <share>/limits/inspection.json. Fails `not_found` when they are not installed,
// `refused` with the place when one is not in order.
[[nodiscard]] Result<JudgeRegister> load_register(Files& files, const std::string& share_folder);

}  // namespace cotter
