// Long work done by this process, through a TaskRunner; and its three pieces, for whoever does them elsewhere.
#pragma once

#include "app/long_work.h"
#include "app/tasks.h"
#include "core/base/ports.h"
#include "core/photo/vault.h"

namespace cotter {

// Where the work is done. All of it outlives the work.
struct WorkPlace {
    Files& files;
    Random& random;
    Workers& workers;
    PhotoVault& vault;
    std::string share;        // the program's own data
    std::string software;     // "Cotter 0.1.0"
    std::string book_folder;  // the device's key lies there
};

// Any thread.
[[nodiscard]] Result<PhotoRef> take_in_photo(Files& files, PhotoVault& vault, const std::string& path);
// Any thread. Makes the device's key when there is none yet.
[[nodiscard]] Result<Packed> make_packet(const WorkPlace& place, const PackOrder& order);

class WorkHere final : public LongWork {
public:
    WorkHere(const WorkPlace& place, TaskRunner& tasks) : place_(place), tasks_(tasks) {}
    void order(std::vector<std::string> paths, std::function<void(std::vector<std::string>)> done) override;
    void take_in(const std::string& path, std::function<void(Result<PhotoRef>)> done) override;
    void pack(PackOrder order, std::function<void(Result<Packed>)> done) override;

private:
    WorkPlace place_;
    TaskRunner& tasks_;
};

}  // namespace cotter
