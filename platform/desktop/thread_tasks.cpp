// See thread_tasks.h.
#include "platform/desktop/thread_tasks.h"

#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>

namespace cotter {

namespace {

class ThreadTasks final : public TaskRunner {
public:
    explicit ThreadTasks(Waker& waker) : waker_(waker), thread_([this] { work(); }) {}
    ~ThreadTasks() override {
        {
            const std::lock_guard lock(mutex_);
            stopping_ = true;
        }
        wanted_.notify_all();
        thread_.join();
    }

    void start(std::unique_ptr<Task> task) override {
        pending_ += 1;
        {
            const std::lock_guard lock(mutex_);
            waiting_.push_back(std::move(task));
        }
        wanted_.notify_one();
    }

    bool collect() override {
        std::deque<std::unique_ptr<Task>> ready;
        {
            const std::lock_guard lock(mutex_);
            ready.swap(ready_);
        }
        for (const auto& task : ready) {
            pending_ -= 1;
            task->done();
        }
        return !ready.empty();
    }

    [[nodiscard]] std::size_t pending() const override { return pending_; }
    [[nodiscard]] bool wants_frames() const override { return false; }

private:
    std::unique_ptr<Task> next() {
        std::unique_lock lock(mutex_);
        wanted_.wait(lock, [this] { return stopping_ || !waiting_.empty(); });
        if (stopping_) return nullptr;
        auto task = std::move(waiting_.front());
        waiting_.pop_front();
        return task;
    }
    bool stopping() {
        const std::lock_guard lock(mutex_);
        return stopping_;
    }

    void work() {
        while (auto task = next()) {
            while (!task->step())
                if (stopping()) return;
            {
                const std::lock_guard lock(mutex_);
                ready_.push_back(std::move(task));
            }
            waker_.wake();
        }
    }

    Waker& waker_;
    std::mutex mutex_;
    std::condition_variable wanted_;
    std::deque<std::unique_ptr<Task>> waiting_, ready_;
    bool stopping_ = false;
    std::size_t pending_ = 0;  // the app's thread only
    std::thread thread_;       // last: it uses all of the above
};

}  // namespace

std::unique_ptr<TaskRunner> make_thread_tasks(Waker& waker) {
    return std::make_unique<ThreadTasks>(waker);
}

}  // namespace cotter
