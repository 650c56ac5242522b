// What the app knows about itself between starts: where the user was and what had been begun. One file beside the book.
#pragma once

#include <string>

#include "app/draft.h"
#include "app/nav.h"
#include "app/settings.h"
#include "core/base/files.h"
#include "core/survey/job.h"

namespace cotter {

struct AppState {
    std::string job;  // id of the open one; empty: none
    std::vector<Route> stack;
    std::vector<Drafts> kept_drafts;  // of each job that has any
    Drafts drafts;                    // as programs before wrote them, without saying of which job; read, never written

    bool operator==(const AppState&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.may("job", s.job);
        f.may("stack", s.stack);
        f.may("kept_drafts", s.kept_drafts);
        f.may("drafts", s.drafts);
    }
};

// Missing or unreadable files give the defaults: neither holds anything that a job needs.
[[nodiscard]] AppState load_state(Files& files, const std::string& folder);
[[nodiscard]] Settings load_settings(Files& files, const std::string& folder);
[[nodiscard]] Result<> save_state(Files& files, const std::string& folder, const AppState& state);
[[nodiscard]] Result<> save_settings(Files& files, const std::string& folder, const Settings& settings);

}  // namespace cotter
