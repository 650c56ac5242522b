// What the widgets ask of the platform: pictures as textures, and the system's keyboard. Called in the frame only.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "app/ui/target_log.h"

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
