// One page drawn without pixels, and hands to use it: what it draws is a function, what it asks for is gathered. For
// the tests of screens.
#pragma once

#include <functional>

#include <doctest/doctest.h>

#include "app/command.h"
#include "app/driver/audit.h"
#include "app/driver/runner.h"
#include "tests/app/null_host.h"

namespace cotter {

struct Page {
    using Draw = std::function<void(UiContext&, Commands&)>;

    explicit Page(Draw draw, Point size = {412, 915}, const Appearance& look = {})
        : host(size, test_fonts(),
               [&](const HostParts&) { return std::make_unique<Drawn>(*this, std::move(draw), look); }),
          hands(host, {[](std::string_view) {}, {}, false}) {}

    [[nodiscard]] const TargetLog& log() { return host.stage().log(); }
    [[nodiscard]] const Target& target(std::string_view label) {
        const auto found = log().find(label);
        REQUIRE_MESSAGE(found.size() == 1, std::string(label));
        return *found.front();
    }
    void tap(std::string_view label) {
        const auto tapped = hands.tap(label);
        REQUIRE_MESSAGE(tapped, tapped.error().line());
    }
    // The commands since the last call.
    [[nodiscard]] Commands take() { return std::exchange(commands, {}); }
    [[nodiscard]] std::vector<std::string> offences() {
        return audit(log(), host.stage().width(), host.stage().height());
    }

    Commands commands;
    std::function<void(const Command&)> carry_out;  // what a session would do at once

private:
    class Drawn final : public AppUi {
    public:
        Drawn(Page& page, Draw draw, const Appearance& look) : page_(page), draw_(std::move(draw)), look_(look) {}
        [[nodiscard]] Appearance look() const override { return look_; }
        [[nodiscard]] const UiWords& words() const override { return words_; }
        void frame(UiContext& ui) override {
            Commands out;
            draw_(ui, out);
            for (Command& c : out) {
                if (page_.carry_out) page_.carry_out(c);
                page_.commands.append(std::move(c));
            }
            if (!out.empty()) ui.wake_at(ui.now_s);
        }

    private:
        Page& page_;
        Draw draw_;
        Appearance look_;
        UiWords words_;
    };

public:
    NullHost host;
    ScriptRunner hands;
};

// The one command of a kind among those given; fails the test when there is none or there are more.
template <class C>
const C& only_of(const Commands& commands) {
    const C* found = nullptr;
    for (const Command& c : commands)
        if (const C* one = std::get_if<C>(&c)) {
            REQUIRE(found == nullptr);
            found = one;
        }
    REQUIRE(found != nullptr);
    return *found;
}

}  // namespace cotter
