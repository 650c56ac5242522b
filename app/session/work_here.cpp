// See work_here.h.
#include "app/session/work_here.h"

#include <utility>

#include "app/session/photo_order.h"
#include "core/book/replay.h"
#include "core/packet/pack_rules.h"
#include "core/packet/signature.h"
#include "core/photo/probe.h"

namespace cotter {

namespace {

// One step that makes a value, and who gets it.
template <class T>
class OneStep final : public Task {
public:
    OneStep(std::function<T()> make, std::function<void(T)> done) : make_(std::move(make)), done_(std::move(done)) {}
    bool step() override {
        made_.emplace(make_());
        return true;
    }
    void done() override { done_(std::move(*made_)); }

private:
    std::function<T()> make_;
    std::function<void(T)> done_;
    std::optional<T> made_;
};

// Finds out when each of several photos was taken, one a step.
class OrderTask final : public Task {
public:
    OrderTask(Files& files, std::vector<std::string> paths, std::function<void(std::vector<std::string>)> done)
        : files_(files), paths_(std::move(paths)), done_(std::move(done)) {}
    bool step() override {
        if (seen_.size() < paths_.size()) seen_.push_back(photo_when(files_, paths_[seen_.size()]));
        return seen_.size() == paths_.size();
    }
    void done() override { done_(in_order(std::move(seen_))); }

private:
    Files& files_;
    std::vector<std::string> paths_;
    std::function<void(std::vector<std::string>)> done_;
    std::vector<PhotoWhen> seen_;
};

}  // namespace

Result<PhotoRef> take_in_photo(Files& files, PhotoVault& vault, const std::string& path) {
    COTTER_ASSIGN(const Bytes bytes, read_file(files, path, kMostPhotoBytes));
    const auto stored = vault.take_in(bytes);
    if (!stored) return unexpected(context(stored.error(), base_name(path)));
    return photo_ref(*stored);
}

Result<Packed> make_packet(const WorkPlace& place, const PackOrder& order) {
    COTTER_TRY(place.files.make_folders(order.out_folder));
    COTTER_ASSIGN(const auto key,
                  DeviceKey::load_or_make(place.files, place.random, join_path(place.book_folder, "device_key"),
                                          "cotter device key"));
    COTTER_ASSIGN(const PackRules rules, load_pack_rules(place.files, place.share));
    const PackTools tools{place.files,
                          place.workers,
                          place.vault,
                          key,
                          rules.font,
                          rules.font_bold,
                          place.software,
                          rules.judging.limits,
                          rules.judging.inspection,
                          rules.rechecks,
                          order.paper};
    return pack(tools, order.job, order.earlier, order.out_folder, order.visits);
}

void WorkHere::order(std::vector<std::string> paths, std::function<void(std::vector<std::string>)> done) {
    tasks_.start(std::make_unique<OrderTask>(place_.files, std::move(paths), std::move(done)));
}

void WorkHere::take_in(const std::string& path, std::function<void(Result<PhotoRef>)> done) {
    const auto make = [place = place_, path] { return take_in_photo(place.files, place.vault, path); };
    tasks_.start(std::make_unique<OneStep<Result<PhotoRef>>>(make, std::move(done)));
}

void WorkHere::pack(PackOrder order, std::function<void(Result<Packed>)> done) {
    auto shared = std::make_shared<const PackOrder>(std::move(order));
    const auto make = [place = place_, shared] { return make_packet(place, *shared); };
    tasks_.start(std::make_unique<OneStep<Result<Packed>>>(make, std::move(done)));
}

}  // namespace cotter
