// See renewal.h.
#include "app/desk/renewal.h"

namespace cotter::desk {

namespace {

constexpr std::size_t kAtOnce = 20;  // trailers: other seats, and pictures, wait for as many

class RenewSome final : public Task {
public:
    RenewSome(std::shared_ptr<Renewal> renewal, std::function<void(Result<std::size_t>)> told)
        : renewal_(std::move(renewal)), told_(std::move(told)) {}

    bool step() override {
        made_ = renew();
        return true;
    }
    void done() override { told_(std::move(made_)); }

private:
    Result<std::size_t> renew() {
        if (renewal_->ledger == nullptr) {
            COTTER_ASSIGN(renewal_->ledger, renewal_->open());
        }
        return renewal_->ledger->renew_answers(kAtOnce);
    }

    std::shared_ptr<Renewal> renewal_;
    std::function<void(Result<std::size_t>)> told_;
    Result<std::size_t> made_ = std::size_t{0};
};

}  // namespace

std::unique_ptr<Task> renew_some(std::shared_ptr<Renewal> renewal, std::function<void(Result<std::size_t>)> told) {
    return std::make_unique<RenewSome>(std::move(renewal), std::move(told));
}

}  // namespace cotter::desk
