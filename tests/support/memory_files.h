// A disk in memory that can lose power and fail on demand: for tests of everything that writes through Files.
// Thread rule: like any Files, every call may be made from any thread.
//
// Method: each file keeps two contents and each folder two lists of names: what programs see now, and what has
// reached the disk. sync() of a writer carries the content over, sync_folder() the names of that folder (not of
// its subfolders), and power_cut() throws away everything else. This is the strictest reading of POSIX: a new file
// survives only when the file AND its folder were synced, a new folder only when its parent was.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/files.h"

namespace cotter {

class MemoryFiles final : public Files {
public:
    // What a power cut leaves.
    enum class Cut {
        strict,         // only what was synced: names by sync_folder, contents by sync
        names_survive,  // every name as it stood, unsynced contents gone: a file may be there, old or empty
    };
    // How often an armed failure strikes.
    enum class Mode { once, from_then_on };

    MemoryFiles();
    ~MemoryFiles() override;

    // --- Failing on demand. Counted are all calls of Files, FileReader::read_at and FileWriter's write, sync, close;
    // for `no_space` only those that may need space: create, make_folders, write, sync, close.

    // The n-th counted call from now (1 = the next one) fails with `code`; a failing write leaves half its bytes.
    void fail_call(int n, Errc code, Mode mode);
    void stop_failing();                // and start counting anew
    [[nodiscard]] bool failed() const;  // did an armed failure strike since fail_call?
    [[nodiscard]] int calls() const;    // all counted calls since the last fail_call or stop_failing

    // --- Power. Readers and writers opened before the cut fail `io` afterwards; locks are released.
    void power_cut(Cut cut = Cut::strict);

    // --- Looking and meddling, uncounted and never failing by the switch.
    void put(const std::string& path, ByteView bytes);       // with its folders, all of it on the disk
    [[nodiscard]] Bytes get(const std::string& path) const;  // as seen now; empty when absent
    [[nodiscard]] bool has(const std::string& path) const;
    [[nodiscard]] std::vector<std::string> all_files() const;  // full paths as seen now, without a leading '/', sorted
    void flip_bit(const std::string& path, std::size_t offset);  // damages the byte, now and on the disk

    Result<FileInfo> info(const std::string& path) override;  // modified_unix_s is always 0
    Result<std::vector<std::string>> list(const std::string& folder) override;
    Result<std::unique_ptr<FileReader>> open(const std::string& path) override;
    Result<std::unique_ptr<FileWriter>> create(const std::string& path, bool secret) override;
    Result<> rename(const std::string& from, const std::string& to) override;
    Result<> remove(const std::string& path) override;
    Result<> make_folders(const std::string& path) override;
    Result<> sync_folder(const std::string& path) override;
    Result<std::unique_ptr<FileLock>> lock(const std::string& path) override;

    struct Disk;  // private to the .cpp; shared with the open readers, writers and locks

private:
    std::shared_ptr<Disk> disk_;
};

// The N-th-failure loop: calls `run(files)` with a fresh MemoryFiles whose n-th call fails, n = 1, 2, 3 … until no
// failure strikes any more; for each of: io once, io from then on, no_space once, no_space from then on.
// `prepare(files)` fills the disk before the failure is armed; `check(files)` looks at what is left after it is
// disarmed, once as it stands and once (with prepare and run anew) after each kind of power cut.
template <class Prepare, class Run, class Check>
void for_every_failure(Prepare prepare, Run run, Check check, int most_calls = 2000) {
    enum class After { nothing, strict, names_survive };
    for (const Errc code : {Errc::io, Errc::no_space})
        for (const auto mode : {MemoryFiles::Mode::once, MemoryFiles::Mode::from_then_on})
            for (const After after : {After::nothing, After::strict, After::names_survive}) {
                bool struck = true;
                for (int n = 1; struck && n < most_calls; ++n) {
                    MemoryFiles files;
                    prepare(files);
                    files.fail_call(n, code, mode);
                    run(files);
                    struck = files.failed();
                    files.stop_failing();
                    if (after == After::strict) files.power_cut(MemoryFiles::Cut::strict);
                    if (after == After::names_survive) files.power_cut(MemoryFiles::Cut::names_survive);
                    check(files);
                }
            }
}

}  // namespace cotter
