// Long work beside the screen: taken in steps, so that it runs on a thread where there are threads and inside the
// frames where there are none.
#pragma once

#include <deque>
#include <memory>
#include <string>

namespace cotter {

// One piece of long work. It owns copies of its inputs and publishes once, in done().
class Task {
public:
    virtual ~Task() = default;
    // A part of the work, some milliseconds long; true when all of it is done. On any thread, one call at a time.
    virtual bool step() = 0;
    // On the app's thread, after the last step; not called when the runner was destroyed before.
    virtual void done() = 0;
};

class TaskRunner {
public:
    virtual ~TaskRunner() = default;
    virtual void start(std::unique_ptr<Task> task) = 0;  // they are worked on in the order in which they came
    // Once a frame, on the app's thread: calls done() of what is ready. True when anything was.
    virtual bool collect() = 0;
    [[nodiscard]] virtual std::size_t pending() const = 0;  // started and not yet collected
    [[nodiscard]] virtual bool wants_frames() const = 0;    // it works inside collect(): draw on
};

// Works inside collect(), one step a frame: for the web, the headless driver and tests.
class FrameTaskRunner final : public TaskRunner {
public:
    void start(std::unique_ptr<Task> task) override { tasks_.push_back(std::move(task)); }
    bool collect() override;
    [[nodiscard]] std::size_t pending() const override { return tasks_.size(); }
    [[nodiscard]] bool wants_frames() const override { return !tasks_.empty(); }

private:
    std::deque<std::unique_ptr<Task>> tasks_;
};

}  // namespace cotter
