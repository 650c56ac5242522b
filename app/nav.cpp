// See nav.h.
#include "app/nav.h"

#include <algorithm>

namespace cotter {

Nav::Nav(std::vector<Route> stack) : stack_(std::move(stack)) {
    if (stack_.empty() || stack_.front().screen != Screen::yard) stack_.insert(stack_.begin(), Route{});
}

void Nav::go(const Route& route) {
    const auto open = std::find(stack_.begin(), stack_.end(), route);
    if (open == stack_.end())
        stack_.push_back(route);
    else
        stack_.erase(open + 1, stack_.end());
}

void Nav::replace(const Route& route) {
    if (!at_bottom()) stack_.pop_back();
    go(route);
}

bool Nav::back() {
    if (at_bottom()) return false;
    stack_.pop_back();
    return true;
}

}  // namespace cotter
