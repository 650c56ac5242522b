// What a tire's sidewall and an air chamber's tag say, as forms. Plain values; no ImGui.
#pragma once

#include <optional>
#include <vector>

#include "app/views/chrome.h"
#include "app/views/form_view.h"

namespace cotter {

template <class R>
struct TagView {
    Chrome chrome;
    R record;  // as it is, or as it would begin; a nil id: not in the job yet
    std::vector<FormRow> rows;
    std::string shot;  // the photo that shows it, its SHA-256; empty: none
    std::string shot_id;
    std::optional<R> like;   // of another wheel or corner of this trailer, to be taken over
    std::string like_words;  // "Same as axle 1 left"
    Drafts drafts;
};

// By the route's place. The newest record of that place is the one shown.
[[nodiscard]] TagView<Sidewall> sidewall_view(const Session& session);
[[nodiscard]] TagView<Chamber> chamber_view(const Session& session);

[[nodiscard]] Sidewall with_amount(Sidewall r, const std::string& field, const Amount& amount);
[[nodiscard]] Sidewall with_choice(Sidewall r, const std::string& field, std::size_t choice);
[[nodiscard]] Sidewall with_words(Sidewall r, const std::string& field, const std::string& words);
[[nodiscard]] Chamber with_amount(Chamber r, const std::string& field, const Amount& amount);
[[nodiscard]] Chamber with_choice(Chamber r, const std::string& field, std::size_t choice);
[[nodiscard]] Chamber with_words(Chamber r, const std::string& field, const std::string& words);

}  // namespace cotter
