// What the widgets ask of the platform: pictures as textures, and the system's keyboard. Called in the frame only.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/ui/target_log.h"
#include "core/base/bytes.h"
#include "core/base/error.h"

namespace cotter {

struct Picture {
    void* texture = nullptr;    // what the renderer understands; nullptr while it is not there yet
    int width = 0, height = 0;  // px of the texture
};

class Pictures {
public:
    virtual ~Pictures() = default;
    // The picture with that id, about `longest_px` on its longer side. Never waits: when it is not there, it is asked
    // for, an empty Picture (or a coarser one) is given, and the loop is woken when it has come. Valid for this frame.
    virtual Picture picture(std::string_view id, int longest_px) = 0;
};

struct PictureWish {
    std::string id;
    int longest_px = 0;
};

// Pictures with the door through which they come in; kept by the platform, filled by whoever can decode. In the
// frame's thread only.
class PictureStore : public Pictures {
public:
    virtual std::vector<PictureWish> take_wanted() = 0;  // asked for since the last call, each one once
    // 8-bit RGB, rows from the top, 3 × width × height bytes. Larger than the renderer bears is refused: ask
    // limit_px().
    virtual Result<> put(const PictureWish& wish, int width, int height, ByteView rgb) = 0;
    virtual void missing(const std::string& id) = 0;  // it will not come: do not ask for it again
    virtual void forget(const std::string& id) = 0;   // it changed or is gone
    [[nodiscard]] virtual int limit_px() const = 0;
};

// Makes the loop draw again: called from any thread when a worker has published something.
class Waker {
public:
    virtual ~Waker() = default;
    virtual void wake() = 0;
};

enum class TextKind { plain, note, number, phone, email };

// The field being edited, told anew each frame, as it may move.
struct TextEdit {
    std::uint32_t id = 0;
    Rect rect;
    TextKind kind = TextKind::plain;
    std::string label, text;
    std::size_t max_bytes = 0;
};

class Keyboard {
public:
    virtual ~Keyboard() = default;
    virtual void show(const TextEdit& edit) = 0;
    virtual void hide() = 0;  // no field is being edited any more
    // Where the platform edits in a field of its own (a browser), the whole new text since the last call.
    virtual std::optional<std::string> replaced() { return std::nullopt; }
};

}  // namespace cotter
