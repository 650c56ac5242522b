// How far the tightening of a joint is: the stages of its plan, the running pass, the next nut; and the beginning of a
// pass. For the torque page and the session. Pure; any thread.
#pragma once

#include <optional>
#include <vector>

#include "core/work/torque.h"

namespace cotter {

struct StageProgress {
    TorqueStage stage;
    bool done = false;  // all have clicked
    bool now = false;   // the running pass
};

struct TorqueProgress {
    std::vector<StageProgress> stages;      // empty without the maker's figure and its source
    bool running = false;                   // there is a pass in which not all have clicked
    std::optional<std::size_t> next_stage;  // to begin when the running pass is full; nothing after the last
    std::vector<int> clicked;               // in the last pass
    int next = 0;                           // nut in our order; 0: the pass is full, or the maker's chart leads
    bool no_order = false;                  // no order of ours for so many nuts: the maker's chart leads

    // Of `stages`: the running pass, or the one to begin. Nothing: all are through, or the pass is at a torque of
    // the user's own.
    [[nodiscard]] std::optional<std::size_t> stage_now() const;
};

// A circle without an order of ours goes through the same stages, in the order of the maker's chart. A pass counts for
// the first stage at its torque that no pass before it has taken.
[[nodiscard]] TorqueProgress torque_progress(const Torque& torque);

// The torque with a pass begun at `at_nut`; the adapter says what the wrench is set to for it. Refused as
// wrench_setting().
[[nodiscard]] Result<Torque> begin_pass(Torque torque, const Amount& at_nut);

}  // namespace cotter
