// The composition root of the program `cotter`: makes the ports, hands them to the commands, turns answers into exit
// codes: 0 done, 1 refused or failed, 2 wrong use.
#include <cstdio>
#include <vector>

#include <fmt/format.h>

#include "app/cli/cli.h"
#include "core/base/text.h"
#include "core/survey/json_visitors.h"
#include "platform/desktop/ports.h"

namespace cotter::cli {

int report(const Error& error, bool json) {
    fmt::print(stderr, "cotter: {}\n", one_line(error.line(), 2000));
    if (json) fmt::print("{}\n", Json{{"error", error.line()}}.dump(-1, ' ', false, Json::error_handler_t::replace));
    return kFailed;
}

namespace {

// As the parser wants them: the last one first, without the program's name. A click on the program opens the app.
std::vector<std::string> words_of(const ProgramStart& start) {
    if (start.clicked()) return {"app"};
    const auto& all = start.arguments();
    return {all.rbegin(), all.empty() ? all.rend() : all.rend() - 1};
}

int run(std::vector<std::string> words, Ports& ports) {
    CLI::App app(
        "Cotter keeps the record of work on towed trailers: photos, readings, torques, levels, and the packet "
        "that proves them.");
    app.name("cotter");
    app.set_version_flag("--version", "cotter " COTTER_VERSION);
    app.require_subcommand(1);
    const std::vector<Command> commands{
        app_command(app, ports),    demo_command(app, ports),   jobs_command(app, ports),
        replay_command(app, ports), pack_command(app, ports),   judge_command(app, ports),
        quote_command(app, ports),  check_command(app, ports),  receive_command(app, ports),
        accept_command(app, ports), find_command(app, ports),   history_command(app, ports),
        due_command(app, ports),    orders_command(app, ports), failures_command(app, ports),
        export_command(app, ports), backup_command(app, ports), move_command(app, ports),
        desk_command(app, ports)};
    try {
        app.parse(std::move(words));
    } catch (const CLI::ParseError& wrong) {
        return app.exit(wrong) == 0 ? kDone : kWrongUse;  // --help and --version end here too
    }
    for (const Command& command : commands)
        if (command.parser->parsed()) return command.run();
    return kWrongUse;
}

}  // namespace

}  // namespace cotter::cli

int main(int argc, char** argv) {
    using namespace cotter;
    const ProgramStart start(argc, argv);
    const auto files = make_system_files();
    const auto clock = make_system_clock();
    const auto random = make_system_random();
    const auto workers = make_thread_workers();
    cli::Ports ports{*files, *clock, *random, *workers, share_folder(), home_folder(), stdout_is_terminal()};
    return start.end(cli::run(cli::words_of(start), ports));
}
