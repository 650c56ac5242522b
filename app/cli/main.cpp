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
    if (json) fmt::print("{}\n", compact_json(Json{{"error", error.line()}}));
    return kFailed;
}

namespace {

// Without the program's name. A click on the program opens the app.
std::vector<std::string> words_of(const ProgramStart& start) {
    if (start.clicked()) return {"app"};
    const auto& all = start.arguments();
    return {all.empty() ? all.end() : all.begin() + 1, all.end()};
}

int run(std::vector<std::string> words, Ports& ports) {
    CommandLine all(
        "Cotter keeps the record of work on towed trailers: photos, readings, torques, levels, and the packet "
        "that proves them.",
        "cotter " COTTER_VERSION);
    const std::vector<Command> commands{
        app_command(all, ports),      demo_command(all, ports),   jobs_command(all, ports),
        replay_command(all, ports),   pack_command(all, ports),   judge_command(all, ports),
        quote_command(all, ports),    check_command(all, ports),  receive_command(all, ports),
        accept_command(all, ports),   find_command(all, ports),   history_command(all, ports),
        due_command(all, ports),      orders_command(all, ports), failures_command(all, ports),
        export_command(all, ports),   backup_command(all, ports), move_command(all, ports),
        trailers_command(all, ports), desk_command(all, ports)};
    if (const auto ended = all.parse(std::move(words), kWrongUse)) return *ended;
    for (const Command& command : commands)
        if (command.parser.given()) return command.run();
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
