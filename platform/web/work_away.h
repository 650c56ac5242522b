// Long work done by a worker of the browser: a second program with a memory of its own, which gets orders and gives
// answers as JSON texts and blobs. The page sends, the worker carries out.
#pragma once

#include <functional>
#include <map>
#include <memory>

#include "app/long_work.h"
#include "core/base/ports.h"

namespace cotter {

// The page's side. An answer comes by answered(); what never comes back (a worker that was ended) comes as an error.
class WorkAway final : public LongWork {
public:
    WorkAway(Files& files, Random& random) : files_(files), random_(random) {}
    void order(std::vector<std::string> paths, std::function<void(std::vector<std::string>)> done) override;
    void take_in(const std::string& path, std::function<void(Result<PhotoRef>)> done) override;
    void pack(PackOrder order, std::function<void(Result<Packed>)> done) override;
    void answered(int order, const std::string& json);

private:
    int send(const std::string& json, std::function<void(const std::string&)> done);

    Files& files_;
    Random& random_;
    int last_ = 0;
    std::map<int, std::function<void(const std::string&)>> waiting_;
};

// The worker's side: carries out one order, as the page's side wrote it, and gives the answer. `key` is the device's,
// as its file has it; it is put where packing looks for it.
[[nodiscard]] std::string carry_out(Files& files, Random& random, const std::string& software,
                                    const std::string& order);

}  // namespace cotter
