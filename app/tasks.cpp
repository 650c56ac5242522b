// See tasks.h.
#include "app/tasks.h"

namespace cotter {

bool FrameTaskRunner::collect() {
    if (tasks_.empty() || !tasks_.front()->step()) return false;
    const auto task = std::move(tasks_.front());
    tasks_.pop_front();
    task->done();
    return true;
}

}  // namespace cotter
