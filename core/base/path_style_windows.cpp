// Paths of Windows.
#include "core/base/path.h"

namespace cotter {

PathStyle path_style() {
    return PathStyle::windows;
}

}  // namespace cotter
