// The long pieces of work, as orders that own all they need and answers that are plain values: so they can be done on a
// thread, inside the frames, or by another process that shares no memory. Orders and answers on the app's thread.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/packet/pack.h"
#include "core/survey/job.h"

namespace cotter {

struct PackOrder {
    Job job;
    std::vector<Job> visits;  // to the same trailer
    std::vector<PacketFacts> earlier;
    Paper paper = Paper::a4;
    std::string out_folder;
};

// Each answer comes once, later, on the app's thread; not at all when the worker is gone before.
class LongWork {
public:
    virtual ~LongWork() = default;
    // The photos in the order in which they were taken.
    virtual void order(std::vector<std::string> paths, std::function<void(std::vector<std::string>)> done) = 0;
    // A photo read and put into the vault.
    virtual void take_in(const std::string& path, std::function<void(Result<PhotoRef>)> done) = 0;
    virtual void pack(PackOrder order, std::function<void(Result<Packed>)> done) = 0;
};

}  // namespace cotter
