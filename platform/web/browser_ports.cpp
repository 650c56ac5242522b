// Clock, randomness and the device of a browser.
#include <cstdlib>
#include <ctime>

#include "platform/web/bridge.h"
#include "platform/web/browser_ports.h"

namespace cotter {

namespace {

class BrowserClock final : public Clock {
public:
    Instant now() override {
        const std::time_t now = std::time(nullptr);
        std::tm local{};
        ::localtime_r(&now, &local);
        return {now, static_cast<int>(local.tm_gmtoff / 60)};
    }
};

class BrowserRandom final : public Random {
public:
    void fill(std::span<std::uint8_t> out) override {
        constexpr std::size_t kMost = 65'536;  // of one call, https://www.w3.org/TR/WebCryptoAPI/
        while (!out.empty()) {
            const std::size_t part = std::min(out.size(), kMost);
            cotter_js_random(out.data(), static_cast<int>(part));
            out = out.subspan(part);
        }
    }
};

class BrowserDevice final : public Device {
public:
    [[nodiscard]] bool picks() const override { return true; }
    void pick(Pick what) override { cotter_js_pick(static_cast<int>(what)); }
    void hand_out(const std::string& path) override { cotter_js_hand_out(path.c_str()); }
    void confirm() override { cotter_js_confirm(); }
    void keep_awake(bool on) override {
        if (on != awake_) cotter_js_keep_awake(on ? 1 : 0);
        awake_ = on;
    }
    [[nodiscard]] std::optional<StorageFacts> storage() const override {
        double used = 0;
        double room = 0;
        const bool may_be_cleared = cotter_js_storage(&used, &room) != 0;
        return StorageFacts{may_be_cleared, static_cast<std::uint64_t>(used), static_cast<std::uint64_t>(room)};
    }
    [[nodiscard]] std::uint64_t written() override { return static_cast<std::uint64_t>(cotter_js_written()); }
    [[nodiscard]] std::uint64_t kept() const override { return static_cast<std::uint64_t>(cotter_js_kept()); }
    [[nodiscard]] std::string keeping_trouble() const override {
        const std::unique_ptr<char, decltype(&std::free)> text(cotter_js_trouble(), &std::free);
        return text.get();
    }

private:
    bool awake_ = false;
};

}  // namespace

std::unique_ptr<Clock> make_browser_clock() {
    return std::make_unique<BrowserClock>();
}
std::unique_ptr<Random> make_browser_random() {
    return std::make_unique<BrowserRandom>();
}
std::unique_ptr<Device> make_browser_device() {
    return std::make_unique<BrowserDevice>();
}

}  // namespace cotter
