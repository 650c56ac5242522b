// What leads through the work, as the program's data has it: procedures and cautions, fluids, re-checks. Read when it
// is first asked for, so that the first frame does not wait for it. For the session; one thread.
#pragma once

#include <optional>
#include <string>

#include "core/base/files.h"
#include "core/work/fluid.h"
#include "core/work/procedure.h"
#include "core/work/recheck.h"

namespace cotter {

class WorkData {
public:
    // `files` outlives it.
    WorkData(Files& files, const std::string& share);

    // Each is empty when it could not be read; trouble() says why, the last one of them.
    [[nodiscard]] const WorkBook& book() const { return data().book; }
    [[nodiscard]] const FluidTable& fluids() const { return data().fluids; }
    [[nodiscard]] const RecheckRules& rechecks() const { return data().rechecks; }
    [[nodiscard]] const std::optional<Error>& trouble() const { return data().trouble; }

private:
    struct Data {
        WorkBook book;
        FluidTable fluids;
        RecheckRules rechecks;
        std::optional<Error> trouble;
    };
    [[nodiscard]] const Data& data() const;

    Files& files_;
    std::string folder_;
    mutable std::optional<Data> data_;  // nullopt: not read yet
};

}  // namespace cotter
