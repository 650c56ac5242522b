// Text by a field of the page, laid over the one that is drawn: its own keyboard, dictation, paste and suggestions.
#pragma once

#include "app/ui/ui_ports.h"

namespace cotter {

class BrowserKeyboard final : public Keyboard {
public:
    void show(const TextEdit& edit) override;
    void hide() override;
    std::optional<std::string> replaced() override { return std::exchange(replaced_, std::nullopt); }

    void replace(std::string text) { replaced_ = std::move(text); }

private:
    std::optional<std::string> replaced_;
    std::string shown_;  // what the page was told last
};

class BrowserWaker final : public Waker {
public:
    void wake() override;
};

}  // namespace cotter
