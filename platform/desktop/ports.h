// The desktop's answers to core's ports. Made by main and by tests that need the real machine.
#pragma once

#include <memory>
#include <string>

#include "core/base/files.h"
#include "core/base/ports.h"

namespace cotter {

[[nodiscard]] std::unique_ptr<Files> make_system_files();
[[nodiscard]] std::unique_ptr<Clock> make_system_clock();      // with the machine's UTC offset of that moment
[[nodiscard]] std::unique_ptr<Random> make_system_random();    // the kernel's
[[nodiscard]] std::unique_ptr<Workers> make_thread_workers();  // as many threads as the CPU has cores

// Where the program's own data lies (fonts, demo): ../share/cotter as seen from the executable.
[[nodiscard]] std::string share_folder();
[[nodiscard]] bool stdout_is_terminal();

}  // namespace cotter
