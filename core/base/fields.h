// How a record describes itself once, for everything that needs its fields: JSON, storage, comparison.
// A record has `template <class Self, class F> static void each_field(Self& s, F&& f)` that calls
// f.must(name, s.member) for what is always written and f.may(name, s.member) for what is left out when empty.
// An enumeration has `constexpr auto names(E)`: its texts in the order of its enumerators, counted from 0.
#pragma once

#include <array>
#include <concepts>
#include <optional>
#include <string_view>
#include <type_traits>

namespace cotter {

struct AnyVisitor {
    template <class T>
    void must(std::string_view, T&) {}
    template <class T>
    void may(std::string_view, T&) {}
};

template <class T>
concept HasFields = requires(T& t, AnyVisitor v) {
    std::remove_const_t<T>::each_field(t, v);
};

template <class E>
concept NamedEnum = std::is_enum_v<E> && requires(E e) {
    names(e);
};

template <NamedEnum E>
[[nodiscard]] constexpr std::string_view name_of(E e) {
    return names(e)[static_cast<std::size_t>(e)];
}

template <NamedEnum E>
[[nodiscard]] constexpr std::optional<E> from_name(std::string_view name) {
    const auto all = names(E{});
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i] == name) return static_cast<E>(i);
    return std::nullopt;
}

template <class... T>
[[nodiscard]] constexpr auto name_list(T... texts) {
    return std::array<std::string_view, sizeof...(T)>{std::string_view(texts)...};
}

}  // namespace cotter
