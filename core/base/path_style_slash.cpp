// Paths of POSIX systems and of the browser.
#include "core/base/path.h"

namespace cotter {

PathStyle path_style() {
    return PathStyle::slash;
}

}  // namespace cotter
