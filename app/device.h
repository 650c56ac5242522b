// What a device has besides a disk: its own camera and chooser, a way to hand files on, a storage that keeps what was
// written a moment later. Implemented by platforms; a desktop has none of it and is a plain Device. The app's thread.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace cotter {

enum class Pick { camera, photos, table };  // one new photo, photos that are there, a CSV file

struct StorageFacts {
    bool may_be_cleared = false;       // by the system, when room grows short or the app is not used for long
    std::uint64_t used = 0, room = 0;  // bytes, about; 0: not known
};

class Device {
public:
    virtual ~Device() = default;

    // True: photos and files come by pick() and leave by hand_out(); the user sees no folders.
    [[nodiscard]] virtual bool picks() const { return false; }
    // Opens the chooser; what is chosen comes back later through AppUi::dropped(). In the frame that saw the tap.
    virtual void pick(Pick what) { (void)what; }
    // Offers the file to other apps, or to be saved. In the frame that saw the tap.
    virtual void hand_out(const std::string& path) { (void)path; }
    virtual void confirm() {}  // a touch that can be felt: what was asked for is done
    virtual void keep_awake(bool on) { (void)on; }

    // Nothing when the disk is a disk.
    [[nodiscard]] virtual std::optional<StorageFacts> storage() const { return std::nullopt; }
    // What has been written up to now, as a number that grows; and the last of these that would survive a power cut.
    [[nodiscard]] virtual std::uint64_t written() { return 0; }
    [[nodiscard]] virtual std::uint64_t kept() const { return 0; }
    // Why what was written cannot be kept, and what to do; empty: it can.
    [[nodiscard]] virtual std::string keeping_trouble() const { return {}; }
};

}  // namespace cotter
