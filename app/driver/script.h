// The script of a driven screen: one command a line, '#' begins a comment. Pure; any thread.
//   tap "label" [n] | "label" U,V | X,Y   press-hold "label" | X,Y [MS]     key back|enter|tab|escape|backspace|
//                                         up|down|page-up|page-down|home|end|space|ctrl-a|shift-down
//   drag ["label"] X1,Y1 X2,Y2 [MS]       pinch X,Y FROM TO                 text "words"
//   wait N ms | wait N frames             rotate WxH                        shot NAME
//   expect "text" | expect-not "text"     scroll-to "label"                 note "words"
// Labels and texts stand in double quotes; \" and \\ within. Coordinates are dp; beside a label they are parts of
// its target, 0,0 to 1,1. `n` picks the n-th of equal labels.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/ui/touch.h"
#include "core/base/error.h"

namespace cotter {

enum class ScriptVerb {
    tap,
    press_hold,
    drag,
    pinch,
    text,
    key,
    wait_ms,
    wait_frames,
    shot,
    rotate,
    expect,
    expect_not,
    scroll_to,
    note
};

struct ScriptCommand {
    int line = 0;  // counted from 1
    ScriptVerb verb = ScriptVerb::note;
    std::string text;    // label, words, name of a key or shot; empty when `from` is meant
    Point from, to;      // pinch: to = fingers' distance at first and at last
    bool parts = false;  // from and to are parts of the target called `text`
    int count = 0;       // n, ms or frames; 0: not given
};

// Fails `refused` at the first line that is no command, naming it.
[[nodiscard]] Result<std::vector<ScriptCommand>> parse_script(std::string_view text);

}  // namespace cotter
