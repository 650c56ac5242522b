// Parallel work where there are no threads: one piece after the other.
#include "platform/desktop/ports.h"

namespace cotter {

std::unique_ptr<Workers> make_thread_workers() {
    return std::make_unique<SerialWorkers>();
}

}  // namespace cotter
