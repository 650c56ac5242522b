// See pictures.h.
#include "app/pictures.h"

#include <algorithm>

#include "core/photo/image.h"

namespace cotter {

namespace {

class PictureTask final : public Task {
public:
    PictureTask(PictureStore& store, PhotoVault& vault, PictureWish wish)
        : store_(store), vault_(vault), wish_(std::move(wish)), side_(std::min(wish_.longest_px, store.limit_px())) {}

    bool step() override {
        image_ = read();
        return true;
    }
    void done() override {
        if (!image_ || !store_.put(wish_, image_->width, image_->height, image_->pixels)) store_.missing(wish_.id);
    }

private:
    Result<Image> read() {
        COTTER_ASSIGN(const Bytes jpeg,
                      side_ <= kThumbnailSide ? vault_.thumbnail(wish_.id) : vault_.preview(wish_.id));
        COTTER_ASSIGN(Image image, decode_upright(jpeg, std::max(side_, 1)));
        return shrink(std::move(image), side_);
    }

    PictureStore& store_;
    PhotoVault& vault_;
    PictureWish wish_;
    int side_;
    Result<Image> image_ = fail(Errc::cancelled, "not begun");
};

}  // namespace

void PictureServer::serve() {
    for (PictureWish& wish : store_.take_wanted())
        tasks_.start(std::make_unique<PictureTask>(store_, vault_, std::move(wish)));
}

}  // namespace cotter
