// See ui.h.
#include "app/ui/ui.h"

#include <utility>

namespace cotter {

const Face& UiContext::face(Type type) const {
    switch (type) {
        case Type::bold:
            return faces.bold;
        case Type::small:
            return faces.small;
        case Type::title:
            return faces.title;
        case Type::figures:
            return faces.figures;
        case Type::body:
            break;
    }
    return faces.body;
}

float UiContext::em(Type type) const {
    switch (type) {
        case Type::small:
            return sizes.small();
        case Type::title:
            return sizes.title();
        case Type::figures:
            return sizes.figures();
        case Type::body:
        case Type::bold:
            break;
    }
    return sizes.body();
}

bool UiContext::take_back() {
    return top_layer() && std::exchange(back, false);
}

}  // namespace cotter
