// What the commands share: the ports they work through and how they answer. One thread.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <string>

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

// A command adds its options to the parser and gives back what runs it, or exit codes other than these never happen.
using Run = std::function<int()>;
struct Command {
    CLI::App* parser = nullptr;
    Run run;
};

[[nodiscard]] Command accept_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command app_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command backup_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command check_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command demo_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command desk_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command due_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command export_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command failures_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command find_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command history_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command jobs_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command judge_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command move_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command orders_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command pack_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command quote_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command receive_command(CLI::App& app, Ports& ports);
[[nodiscard]] Command replay_command(CLI::App& app, Ports& ports);

// Prints "cotter: what: where; todo" to stderr, as JSON to stdout too when `json`; gives kFailed.
int report(const Error& error, bool json);

}  // namespace cotter::cli
