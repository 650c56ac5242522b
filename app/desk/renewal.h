// Answers about towing made anew beside the screen: a few at a time, on a ledger of its own. For the desk's session.
#pragma once

#include "app/desk/take_in.h"

namespace cotter::desk {

// What the tasks of one chain share; whoever runs has it alone.
struct Renewal {
    OpenAnother open;
    std::unique_ptr<ledger::Ledger> ledger;  // since the first task
};

// `told` gets how many were made, on the app's thread: 0 when all count.
[[nodiscard]] std::unique_ptr<Task> renew_some(std::shared_ptr<Renewal> renewal,
                                               std::function<void(Result<std::size_t>)> told);

}  // namespace cotter::desk
