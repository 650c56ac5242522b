// When a record was made or last changed, by whatever name it has for that. For the date of a packet. Pure; any thread.
#pragma once

#include <optional>
#include <type_traits>

#include "core/survey/records.h"

namespace cotter {

// Kinds of record that bear no time of their own: a trailer is described, a tag belongs to a shot and a finding.
template <class R>
inline constexpr bool kTimeless = std::is_same_v<R, Trailer> || std::is_same_v<R, Tag>;

// Nothing for the timeless kinds. A kind that has no time that is known here does not compile: give it one, or say that
// it is timeless.
template <class R>
[[nodiscard]] std::optional<Instant> when_made(const R& record) {
    if constexpr (requires { record.at; })
        return record.at;
    else if constexpr (requires { record.added; })
        return record.added;
    else if constexpr (requires { record.opened; })
        return record.opened;
    else
        static_assert(kTimeless<R>, "say when such a record was made");
    return std::nullopt;
}

}  // namespace cotter
