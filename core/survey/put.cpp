// The copies and moves of a change, compiled once. See edit.h.
#include <utility>

#include "core/survey/edit.h"

namespace cotter {

namespace {

template <class... Kinds>
void move_into(Record& to, std::size_t kind, void* from, std::variant<Kinds...>*) {
    using Mover = void (*)(Record&, void*);
    static constexpr Mover kMovers[] = {
        [](Record& into, void* one) { into = std::move(*static_cast<Kinds*>(one)); }...};
    kMovers[kind](to, from);
}

}  // namespace

Put::Put() = default;
Put::Put(const Put&) = default;
Put::Put(Put&&) noexcept = default;
Put& Put::operator=(const Put&) = default;
Put& Put::operator=(Put&&) noexcept = default;
Put::~Put() = default;
bool Put::operator==(const Put&) const = default;

Put::Put(std::size_t kind, void* from, std::optional<std::size_t> position) : at(position) {
    if (kind == kAnyKind)
        record = std::move(*static_cast<Record*>(from));
    else
        move_into(record, kind, from, static_cast<Record*>(nullptr));
}

}  // namespace cotter
