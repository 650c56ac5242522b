// A record put by the person at the screen. For changes_….cpp.
#pragma once

#include <utility>

#include "app/session/changes.h"

namespace cotter {

// A record that is put again bears the name and time of who changed it last.
template <class R>
[[nodiscard]] Changes put_stamped(R record, const Stamp& stamp) {
    if (record.id.nil()) record.id = stamp.new_id<R>();
    record.at = stamp.at;
    record.by = stamp.by;
    return Changes{Put{std::move(record), {}}};
}

}  // namespace cotter
