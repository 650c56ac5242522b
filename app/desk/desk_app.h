// The desk as a platform shows it: draws the page the session is on, then hands it the commands that came of it.
// One thread.
#pragma once

#include "app/desk/desk_session.h"
#include "app/desk/frame.h"
#include "app/pictures.h"
#include "app/ui/app_ui.h"

namespace cotter::desk {

class DeskApp final : public AppUi {
public:
    // Session and runner outlive the app.
    DeskApp(DeskSession& session, TaskRunner& tasks, const HostParts& host, ThemeKind theme);

    [[nodiscard]] Appearance look() const override { return look_; }
    [[nodiscard]] const UiWords& words() const override { return words_; }
    void frame(UiContext& ui) override;
    void dropped(const std::vector<std::string>& paths) override;

private:
    DeskSession& session_;
    TaskRunner& tasks_;
    PictureServer pictures_;
    Appearance look_;
    UiWords words_;
    DeskState state_;
};

}  // namespace cotter::desk
