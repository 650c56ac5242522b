// What core may ask of the world besides the disk: the time, randomness, and other cores of the CPU.
// Handed in by the composition root; nothing in core reaches for them by itself.
#pragma once

#include <cstddef>
#include <functional>
#include <span>

#include "core/base/time.h"

namespace cotter {

class Clock {
public:
    virtual ~Clock() = default;
    [[nodiscard]] virtual Instant now() = 0;  // with the offset of the place
};

class Random {
public:
    virtual ~Random() = default;
    virtual void fill(std::span<std::uint8_t> out) = 0;  // fit for keys
};

// Runs independent pieces of work. `work` must not throw; pieces may run at once and in any order.
class Workers {
public:
    virtual ~Workers() = default;
    virtual void run(std::size_t pieces, const std::function<void(std::size_t)>& work) = 0;
};

// One piece after the other on the calling thread: for tests, and for platforms without threads.
class SerialWorkers final : public Workers {
public:
    void run(std::size_t pieces, const std::function<void(std::size_t)>& work) override {
        for (std::size_t i = 0; i < pieces; ++i) work(i);
    }
};

}  // namespace cotter
