// See common.h.
#include "app/screens/common.h"

namespace cotter {

ScreenSpec screen_of(const Chrome& chrome, std::string_view key, std::vector<ActionSpec> actions, bool back) {
    ScreenSpec spec;
    spec.key = key;
    spec.header = {chrome.title,        chrome.under,    chrome.saved, chrome.saved_ok, back, chrome.has_job,
                   chrome.undo_enabled, chrome.can_redo, true};
    spec.actions = std::move(actions);
    spec.toast = {chrome.toast, chrome.toast_undo ? "Undo" : ""};
    return spec;
}

void answer_chrome(const ScreenAnswer& answer, Commands& out) {
    switch (answer.tap) {
        case ScreenTap::back:
            out.push_back(GoBack{});
            break;
        case ScreenTap::undo:
        case ScreenTap::toast:
            out.push_back(UndoStep{});
            break;
        case ScreenTap::redo:
            out.push_back(RedoStep{});
            break;
        case ScreenTap::help:
            out.push_back(ShowHelp{true});
            break;
        default:
            break;
    }
}

}  // namespace cotter
