// What the commands share: the ports they work through and how they answer. One thread.
#pragma once

#include <functional>
#include <string>

#include "app/cli/parser.h"
#include "core/base/files.h"
#include "core/base/ports.h"

namespace cotter::cli {

// Made by main, handed to every command.
struct Ports {
    Files& files;
    Clock& clock;
    Random& random;
    Workers& workers;
    std::string share;      // folder with fonts and the demo
    std::string home;       // the user's folder
    bool terminal = false;  // stdout is one: progress may be drawn
};

enum ExitCode { kDone = 0, kFailed = 1, kWrongUse = 2 };

// A command adds its options to the command line and gives back what runs it, or exit codes other than these never
// happen.
using Run = std::function<int()>;
struct Command {
    Parser parser;
    Run run;
};

[[nodiscard]] Command accept_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command app_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command backup_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command check_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command demo_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command desk_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command due_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command export_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command failures_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command find_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command history_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command jobs_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command judge_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command move_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command orders_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command pack_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command quote_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command receive_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command replay_command(CommandLine& all, Ports& ports);
[[nodiscard]] Command trailers_command(CommandLine& all, Ports& ports);

// Prints "cotter: what: where; todo" to stderr, as JSON to stdout too when `json`; gives kFailed.
int report(const Error& error, bool json);

}  // namespace cotter::cli
