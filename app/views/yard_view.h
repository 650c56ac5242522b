// The yard book: all jobs, newest first. Plain values; no ImGui.
#pragma once

#include <optional>

#include "app/views/chrome.h"

namespace cotter {

struct YardRow {
    std::string id;
    std::string title;             // "NUR-07"
    std::string under;             // "2026-05-14, Greenacre yard: 28 photos, 47 findings"
    std::string value;             // "handed over", "open"
    std::optional<Towing> answer;  // of the question whether it may be towed; nullopt: not worked out yet
    bool open = false;             // the one that was open last
};

struct YardView {
    Chrome chrome;
    std::vector<YardRow> under_way, handed_over;
    std::string only_here;  // see only_here.h; may be empty
};

[[nodiscard]] YardView yard_view(const Session& session);

}  // namespace cotter
