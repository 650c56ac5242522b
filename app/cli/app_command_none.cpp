// `cotter app` in a build without screens.
#include "app/cli/cli.h"

namespace cotter::cli {

Command app_command(CommandLine& all, Ports&) {
    Parser parser = all.add_command("app", "Open the app (this build has no screens)");
    parser.take_any();
    return {
        parser, [] {
            return report({Errc::refused, "this build has no screens", {}, "configure it with COTTER_APP=ON"}, false);
        }};
}

}  // namespace cotter::cli
