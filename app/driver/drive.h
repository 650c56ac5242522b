// A script from a file, played on a screen, its shots written into a folder. For the command line.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "app/driver/host.h"
#include "app/driver/runner.h"
#include "core/base/files.h"

namespace cotter {

struct DriveSpec {
    std::string script;  // path of the script
    std::string shots;   // folder for NAME.png; made when it is not there; empty: no shots may be taken
    bool audit = false;
    AuditLimits limits = {};
};

// Fails as parse_script and ScriptRunner::run do, with the script's name put before the line.
[[nodiscard]] Result<RunOutcome> drive(DriverHost& host, Files& files, const DriveSpec& spec,
                                       const std::function<void(std::string_view)>& say);

}  // namespace cotter
