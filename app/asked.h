// What screens asked for while they were drawn, in order: a list of variants whose moves are compiled in one place.
// Each screen that filled a plain vector compiled those of all kinds anew, a third of what compiling it took.
#pragma once

#include <concepts>
#include <cstddef>
#include <utility>
#include <variant>
#include <vector>

namespace cotter {

template <class Command>
class Asked;

// Defined by asked_impl.h, which one file for each variant includes and instantiates.
template <class... Kinds>
class Asked<std::variant<Kinds...>> {
public:
    using Command = std::variant<Kinds...>;

    Asked();
    Asked(Asked&& other) noexcept;
    Asked& operator=(Asked&& other) noexcept;
    ~Asked();

    template <class Kind>
    requires(std::same_as<Kind, Kinds> || ...) void push_back(Kind command) {
        std::size_t kind = 0;
        (void)((std::same_as<Kind, Kinds> || (++kind, false)) || ...);
        add(kind, &command);
    }
    void append(Command command);

    [[nodiscard]] bool empty() const;
    [[nodiscard]] std::size_t size() const;
    [[nodiscard]] const Command& front() const;  // not empty
    [[nodiscard]] const Command& back() const;   // not empty
    [[nodiscard]] const Command* begin() const;
    [[nodiscard]] const Command* end() const;
    [[nodiscard]] Command* begin();
    [[nodiscard]] Command* end();

private:
    void add(std::size_t kind, void* command);  // of that place among Kinds; moved from

    std::vector<Command> commands_;
};

}  // namespace cotter
