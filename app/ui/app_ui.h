// What an app is to those who show it: a window, a browser, the headless driver, a test.
#pragma once

#include <functional>
#include <memory>

#include "app/ui/ui.h"

namespace cotter {

class AppUi {
public:
    virtual ~AppUi() = default;
    [[nodiscard]] virtual Appearance look() const = 0;  // may change from frame to frame
    [[nodiscard]] virtual const UiWords& words() const = 0;
    // Draws one frame, then applies the commands that came of it. `ui` lives for this call only.
    virtual void frame(UiContext& ui) = 0;
    // Files that were dropped onto the window, as the system names them. Before the next frame.
    virtual void dropped(const std::vector<std::string>& paths) { (void)paths; }
};

// What a platform hands to the app it shows. Valid as long as the app.
struct HostParts {
    PictureStore& pictures;
    Waker& waker;
};
using MakeApp = std::function<std::unique_ptr<AppUi>(const HostParts&)>;

}  // namespace cotter
