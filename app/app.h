// The app as a platform shows it: draws the page the session is on, then hands it the commands that came of it.
// One thread.
#pragma once

#include "app/pictures.h"
#include "app/screens/screens.h"
#include "app/session/session.h"
#include "app/ui/app_ui.h"

namespace cotter {

class App final : public AppUi {
public:
    // Session and runner outlive the app.
    App(Session& session, TaskRunner& tasks, const HostParts& host);

    [[nodiscard]] Appearance look() const override { return session_.settings().look(); }
    [[nodiscard]] const UiWords& words() const override { return words_; }
    void frame(UiContext& ui) override;
    void dropped(const std::vector<std::string>& paths) override;

private:
    Session& session_;
    TaskRunner& tasks_;
    PictureServer pictures_;
    UiWords words_;
    ScreenStates states_;
};

}  // namespace cotter
