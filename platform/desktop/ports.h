// The desktop's answers to core's ports. Made by main and by tests that need the real machine.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/base/files.h"
#include "core/base/ports.h"

namespace cotter {

[[nodiscard]] std::unique_ptr<Files> make_system_files();
[[nodiscard]] std::unique_ptr<Clock> make_system_clock();      // with the machine's UTC offset of that moment
[[nodiscard]] std::unique_ptr<Random> make_system_random();    // the kernel's
[[nodiscard]] std::unique_ptr<Workers> make_thread_workers();  // as many threads as the CPU has cores

// Where the program's own data lies (fonts, demo): ../share/cotter as seen from the executable; on Windows
// share/cotter.
[[nodiscard]] std::string share_folder();
[[nodiscard]] std::string home_folder();  // of the user; "." when the system knows of none
// From the root, whatever folder the program runs in; without "." and "..". `path` need not be there, and is not empty.
[[nodiscard]] std::string absolute_path(const std::string& path);
[[nodiscard]] bool stdout_is_terminal();

// What main begins and ends with: the arguments in UTF-8, the program's name first, and a console that shows UTF-8.
class ProgramStart {
public:
    ProgramStart(int argc, char** argv);
    [[nodiscard]] const std::vector<std::string>& arguments() const { return arguments_; }
    // Started from the desktop by a click, without a console of somebody else and without arguments.
    [[nodiscard]] bool clicked() const { return clicked_; }
    // What main returns. After a click the words that were printed stay to be read when it failed.
    [[nodiscard]] int end(int exit_code) const;

private:
    std::vector<std::string> arguments_;
    bool clicked_ = false;
};

}  // namespace cotter
