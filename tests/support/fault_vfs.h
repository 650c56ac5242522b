// A door to the disk for SQLite that fails on demand and remembers what a power cut would leave. One thread.
//
// Method: a shim over SQLite's own VFS. Reads and writes go to the real files; beside them the shim keeps, per file,
// the bytes that have reached the disk and the writes since the last sync. sync is only noted, not passed on, which
// also makes tests fast. The shim offers no shared memory, so a book that needed it could not be opened.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <string>

#include "core/base/bytes.h"

namespace cotter::test {

class FaultVfs {
public:
    enum class Kind {
        io,    // every counted call: open, read, write, truncate, sync, delete
        full,  // only those that may need space: open, write, sync
    };
    enum class Mode { once, from_then_on };

    FaultVfs();
    ~FaultVfs();  // all connections through it must be closed
    FaultVfs(const FaultVfs&) = delete;
    FaultVfs& operator=(const FaultVfs&) = delete;

    [[nodiscard]] const std::string& name() const;  // for Book::open

    // The n-th counted call from now (1 = the next one) fails; a failing write leaves half its bytes.
    void fail_call(int n, Kind kind, Mode mode);
    void stop_failing();
    [[nodiscard]] int failures() const;  // that struck since fail_call()

    // What a power cut would leave, by the file's name without its folder.
    using Disk = std::map<std::string, Bytes>;
    enum class Cut {
        strict,   // what was synced and nothing else
        written,  // everything written, as if all had been synced
        torn,     // of what was not synced, some sectors of 512 bytes and not others, by a fixed seed
    };
    [[nodiscard]] Disk after_power_cut(Cut cut, unsigned seed = 0) const;

    // Called just before and just after each sync (and delete) takes effect. Empty: nobody is told.
    void watch(std::function<void()> at_sync);
    [[nodiscard]] int syncs() const;  // since it was made

    struct State;  // private to the .cpp

private:
    std::unique_ptr<State> state_;
};

}  // namespace cotter::test
