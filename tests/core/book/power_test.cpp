// Power cuts: at every sync the state of the files as a cut would leave them is kept, then each is opened.
// A book after a cut is whole, holds a state that was committed, and misses nothing that commit() had answered.
#include "tests/core/book/book_bench.h"
#include "tests/support/effort.h"

#include <fstream>

using namespace cotter;
using namespace cotter::test;

namespace {

struct Snapshot {
    FaultVfs::Disk disk;
    std::size_t confirmed = 0;  // states that had been answered by then

    bool operator==(const Snapshot&) const = default;
};

// A session whose every state is known; state 0 is a book without the job.
struct Session {
    TempFolder folder;
    std::unique_ptr<Files> files = make_system_files();
    FaultVfs vfs;
    std::unique_ptr<Book> book;
    EditMaker maker{4711};
    std::vector<Job> states{Job{}};
    std::vector<Snapshot> snapshots;

    Session() {
        vfs.watch([this] { take_snapshots(); });
    }
    ~Session() { vfs.watch({}); }

    void take_snapshots() {
        using Cut = FaultVfs::Cut;
        keep(vfs.after_power_cut(Cut::strict));
        keep(vfs.after_power_cut(Cut::written));
        for (unsigned seed = 1; seed <= 2; ++seed) keep(vfs.after_power_cut(Cut::torn, seed));
    }
    void keep(FaultVfs::Disk disk) {
        Snapshot snapshot{std::move(disk), states.size() - 1};
        const std::size_t recent = std::min<std::size_t>(snapshots.size(), 8);
        if (std::find(snapshots.end() - static_cast<std::ptrdiff_t>(recent), snapshots.end(), snapshot) ==
            snapshots.end())
            snapshots.push_back(std::move(snapshot));
    }
    void open() {
        book.reset();
        book = good(Book::open(*files, folder.path(), OpenMode::create, vfs.name()));
    }
    void confirmed(const Result<Job>& job) { states.push_back(good(job)); }

    void run() {
        open();
        confirmed(book->commit(maker.opening()));
        for (int i = 0; i < 25; ++i) step();
        open();
        for (int i = 0; i < 55; ++i) i % 3 == 0 ? step() : confirmed(book->commit(maker.big(9'000)));
        book.reset();
    }
    void step() {
        const std::size_t dice = maker.below(4);
        if (dice == 0)
            if (auto undone = book->undo(maker.job(), maker.moment(), "A. Tester")) return confirmed(undone);
        if (dice == 1)
            if (auto redone = book->redo(maker.job(), maker.moment(), "A. Tester")) return confirmed(redone);
        confirmed(book->commit(maker.next(states.back())));
    }
};

void write_files(const FaultVfs::Disk& disk, const std::string& folder) {
    for (const auto& [name, bytes] : disk) {
        std::ofstream out(join_path(folder, name), std::ios::binary);
        out.write(reinterpret_cast<const char*>(bytes.data()), static_cast<std::streamsize>(bytes.size()));
    }
}

void check(Files& files, const Session& session, const Snapshot& snapshot) {
    TempFolder folder;
    write_files(snapshot.disk, folder.path());
    FaultVfs vfs;
    const auto book = good(Book::open(files, folder.path(), OpenMode::create, vfs.name()));
    good(book->verify());
    const auto loaded = book->load(session.maker.job());
    if (!loaded) REQUIRE(loaded.error().code == Errc::not_found);
    const Job now = loaded ? *loaded : Job{};
    const bool last_confirmed = now == session.states[snapshot.confirmed];
    const bool one_more =
        snapshot.confirmed + 1 < session.states.size() && now == session.states[snapshot.confirmed + 1];
    const bool whole = last_confirmed || one_more;
    CHECK(whole);
}

}  // namespace

TEST_CASE("book power cuts: at every sync, with and without what was not synced, and torn") {
    Session session;
    session.run();
    CHECK(session.snapshots.size() > 200);
    std::size_t opened = 0;
    for (std::size_t i = 0; i < session.snapshots.size(); i += few() ? 7 : 1, ++opened)
        check(*session.files, session, session.snapshots[i]);
    MESSAGE("power cuts: " << session.vfs.syncs() << " syncs, " << opened
                           << " different disks opened, nothing confirmed missing");
}
