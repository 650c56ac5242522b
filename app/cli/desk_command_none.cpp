// `cotter desk` in a build without screens.
#include "app/cli/cli.h"

namespace cotter::cli {

Command desk_command(CLI::App& app, Ports&) {
    CLI::App* parser = app.add_subcommand("desk", "Open the app (this build has no screens)");
    parser->allow_extras();
    return {
        parser, [] {
            return report({Errc::refused, "this build has no screens", {}, "configure it with COTTER_APP=ON"}, false);
        }};
}

}  // namespace cotter::cli
