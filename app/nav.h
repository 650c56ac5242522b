// Where the user is: a stack of routes, the last one shown. Plain values, kept over restarts; any thread.
#pragma once

#include <string>
#include <vector>

#include "core/base/fields.h"
#include "core/trailer/place.h"

namespace cotter {

// The pages of the app. Their texts are kept in the state file: append only.
enum class Screen {
    yard,
    identify,
    plan,
    corner,
    photo,
    torque,
    level,
    hand_over,
    intake,
    settings,
    work,
    bearing,
    bleed,
    quotes,
    quote,
    compare,
    customer,
    shelf,
    offer,
    summary,
    judgement,
    figure,
    inspection,
    since,
    offers_file,
    points,
    point,
    plate,
    sidewall,
    chamber,
    breakaway,
    events
};
constexpr auto names(Screen) {
    return name_list("yard", "identify", "plan", "corner", "photo", "torque", "level", "hand over", "intake",
                     "settings", "work", "bearing", "bleed", "quotes", "quote", "compare", "customer", "shelf", "offer",
                     "may it be towed", "judgement", "makers figure", "inspection", "since the last visit",
                     "offers from a file", "what is looked at", "point", "plate", "sidewall", "chamber",
                     "breakaway test", "what happened");
}

// One page: which, of which place, of which record (its id; empty: of none).
struct Route {
    Screen screen = Screen::yard;
    Place place;
    std::string record;

    bool operator==(const Route&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("screen", s.screen);
        f.may("place", s.place);
        f.may("record", s.record);
    }
};

// Never empty: the yard book lies at the bottom.
class Nav {
public:
    Nav() : stack_{Route{}} {}
    explicit Nav(std::vector<Route> stack);

    [[nodiscard]] const Route& top() const { return stack_.back(); }
    [[nodiscard]] const std::vector<Route>& stack() const { return stack_; }
    [[nodiscard]] bool at_bottom() const { return stack_.size() == 1; }
    // Opens a page. One that is open already is gone back to, so that going round in circles does not pile up.
    void go(const Route& route);
    void replace(const Route& route);  // the shown page turns into another
    bool back();                       // false at the bottom
    void home() { stack_.resize(1); }

private:
    std::vector<Route> stack_;
};

}  // namespace cotter
