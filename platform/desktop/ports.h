// The desktop's answers to core's ports. Made by main and by tests that need the real machine.
#pragma once

#include <memory>

#include "core/base/files.h"
#include "core/base/ports.h"

namespace cotter {

[[nodiscard]] std::unique_ptr<Files> make_system_files();
[[nodiscard]] std::unique_ptr<Clock> make_system_clock();    // with the machine's UTC offset of that moment
[[nodiscard]] std::unique_ptr<Random> make_system_random();  // the kernel's
[[nodiscard]] std::unique_ptr<Workers> make_thread_workers();  // as many threads as the CPU has cores

}  // namespace cotter
