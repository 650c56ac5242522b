// Long work on a thread of its own. For the desktop's window.
#pragma once

#include <memory>

#include "app/tasks.h"
#include "app/ui/ui_ports.h"

namespace cotter {

// `waker` is told from the thread when something is ready to be collected. When the runner is destroyed, the task under
// way is finished by its next step and thrown away.
[[nodiscard]] std::unique_ptr<TaskRunner> make_thread_tasks(Waker& waker);

}  // namespace cotter
