// The members of Asked. Use: #include it, then `template class Asked<Command>;`, in the one file that compiles them.
#pragma once

#include "app/asked.h"

namespace cotter {

template <class... Kinds>
Asked<std::variant<Kinds...>>::Asked() = default;
template <class... Kinds>
Asked<std::variant<Kinds...>>::Asked(Asked&&) noexcept = default;
template <class... Kinds>
Asked<std::variant<Kinds...>>& Asked<std::variant<Kinds...>>::operator=(Asked&&) noexcept = default;
template <class... Kinds>
Asked<std::variant<Kinds...>>::~Asked() = default;

template <class... Kinds>
void Asked<std::variant<Kinds...>>::append(Command command) {
    commands_.push_back(std::move(command));
}

template <class... Kinds>
void Asked<std::variant<Kinds...>>::add(std::size_t kind, void* command) {
    using Adder = void (*)(std::vector<Command>&, void*);
    static constexpr Adder kAdders[] = {
        [](std::vector<Command>& to, void* from) { to.emplace_back(std::move(*static_cast<Kinds*>(from))); }...};
    kAdders[kind](commands_, command);
}

template <class... Kinds>
bool Asked<std::variant<Kinds...>>::empty() const {
    return commands_.empty();
}
template <class... Kinds>
std::size_t Asked<std::variant<Kinds...>>::size() const {
    return commands_.size();
}
template <class... Kinds>
auto Asked<std::variant<Kinds...>>::front() const -> const Command& {
    return commands_.front();
}
template <class... Kinds>
auto Asked<std::variant<Kinds...>>::back() const -> const Command& {
    return commands_.back();
}
template <class... Kinds>
auto Asked<std::variant<Kinds...>>::begin() const -> const Command* {
    return commands_.data();
}
template <class... Kinds>
auto Asked<std::variant<Kinds...>>::end() const -> const Command* {
    return commands_.data() + commands_.size();
}
template <class... Kinds>
auto Asked<std::variant<Kinds...>>::begin() -> Command* {
    return commands_.data();
}
template <class... Kinds>
auto Asked<std::variant<Kinds...>>::end() -> Command* {
    return commands_.data() + commands_.size();
}

}  // namespace cotter
