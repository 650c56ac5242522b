// See null_host.h.
#include "tests/app/null_host.h"

#include <imgui.h>

#include <algorithm>

#include <doctest/doctest.h>

#include "platform/desktop/ports.h"
#include "tests/support/project_files.h"

namespace cotter {

namespace {

bool outside_texture(const ImDrawList* list) {
    const auto beyond = [](float u) { return !(u >= 0 && u <= 1); };
    return std::any_of(list->VtxBuffer.begin(), list->VtxBuffer.end(),
                       [&](const ImDrawVert& v) { return beyond(v.uv.x) || beyond(v.uv.y); });
}

}  // namespace

Picture NullPictures::picture(std::string_view id, int longest_px) {
    if (std::find(asked_.begin(), asked_.end(), id) == asked_.end()) {
        asked_.emplace_back(id);
        wanted_.push_back({std::string(id), std::min(longest_px, limit_px())});
    }
    for (Held& held : held_)
        if (held.id == id) return {&held, held.width, held.height};
    return {};
}

std::vector<PictureWish> NullPictures::take_wanted() {
    return std::exchange(wanted_, {});
}

Result<> NullPictures::put(const PictureWish& wish, int width, int height, ByteView rgb) {
    CHECK(rgb.size() == std::size_t{3} * static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    held_.push_back({wish.id, width, height});
    return {};
}

NullHost::NullHost(Point size, const FontFiles& fonts, const MakeApp& make) : stage_(fonts, pictures_, keyboard_) {
    // As the real one does: a thousand marks on one photo are more corners than 16 bits count.
    ImGui::GetIO().BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
    stage_.resize(size.x, size.y, 1, {}, 0);
    app_ = make({pictures_, waker_});
}

void NullHost::frame(double now_s) {
    stage_.begin(now_s, app_->look());
    stage_.draw(*app_);
    if (std::any_of(ImGui::GetDrawData()->CmdLists.begin(), ImGui::GetDrawData()->CmdLists.end(), outside_texture)) {
        ++pages_refused_;
        FAIL_CHECK("a corner of what is drawn lies outside of its texture: SDL draws nothing of that list");
    }
}

Result<> NullHost::resize(float width, float height, double now_s) {
    stage_.resize(width, height, 1, {}, now_s);
    return {};
}

const FontFiles& test_fonts() {
    static const FontFiles fonts = [] {
        const auto files = make_system_files();
        auto loaded = load_font_files(*files, test::share_folder());
        REQUIRE_MESSAGE(loaded.has_value(), (loaded ? std::string() : loaded.error().line()));
        return std::move(*loaded);
    }();
    return fonts;
}

}  // namespace cotter
