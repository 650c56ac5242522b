// A folder that packets are put into by others, looked into again and again for as long as the program runs. One
// thread.
//
// Method: nothing that goes wrong ends it. A folder that is not there, a ledger that another seat is writing to, a
// server that is away are said once and waited for; a packet that failed for our side's trouble is tried again, after a
// pause that doubles. What was refused stays refused until its file is another.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "core/ledger/receive.h"

namespace cotter::ledger {

// Which of the folder's packets are to be taken in now. A file counts once its size and time were the same at two
// looks, so that one which is still being copied is left alone.
class Watch {
public:
    Watch(Files& files, std::string folder) : files_(files), folder_(std::move(folder)) {}
    // Those that have come to rest and are not done, sorted. `now_s`: any clock's seconds. Fails as listing fails.
    [[nodiscard]] Result<std::vector<std::string>> look(std::int64_t now_s);
    void done(const std::string& path);                        // not given again until the file is another
    void failed(const std::string& path, std::int64_t now_s);  // given again after 10 s, then 20, 40 … up to an hour
    [[nodiscard]] bool waiting() const;                        // some that failed are to be given again

private:
    struct Seen {
        std::uint64_t size = 0;
        std::int64_t modified = 0;
        bool done = false;
        std::int64_t pause = 0, next_s = 0;  // of one that failed; pause 0: it has not
    };
    Files& files_;
    std::string folder_;
    std::map<std::string, Seen> seen_;  // by path
};

struct WatchPorts {
    Clock& clock;
    // Takes these in; each receipt goes to the function as well. As receive() does.
    std::function<Result<ReceiveResult>(const std::vector<std::string>&, const std::function<void(const Receipt&)>&)>
        take;
    std::function<void(const std::string&)> say;  // one line about what is waited for, and when that is over
};

class Watcher {
public:
    Watcher(Files& files, const std::string& folder, WatchPorts ports)
        : watch_(files, folder), folder_(folder), ports_(std::move(ports)) {}
    void look();                          // every few seconds
    [[nodiscard]] bool all_good() const;  // nothing was refused, nothing is waited for

private:
    void in_the_way(const std::string& what, const std::string& line);
    void out_of_the_way();

    Watch watch_;
    std::string folder_;
    WatchPorts ports_;
    bool refused_ = false;
    std::string said_;                     // what is in the way and was said; empty: nothing is
    std::int64_t pause_ = 0, next_s_ = 0;  // while the ledger cannot be written to
};

}  // namespace cotter::ledger
