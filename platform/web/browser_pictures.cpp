// See browser_pictures.h.
#include "platform/web/browser_pictures.h"

#include <algorithm>

#include "platform/web/bridge.h"

namespace cotter {

void BrowserPictures::serve() {
    for (const PictureWish& wish : textures_.take_wanted())
        cotter_js_picture(wish.id.c_str(), std::min(wish.longest_px, textures_.limit_px()));
}

}  // namespace cotter
