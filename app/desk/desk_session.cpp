// See desk_session.h: going about, and what a person decides. Loading is in desk_load.cpp, work beside the screen in
// desk_work.cpp.
#include "app/desk/desk_session.h"

#include <algorithm>

#include <fmt/format.h>

namespace cotter::desk {

DeskSession::DeskSession(DeskParts parts)
    : parts_(std::move(parts)),
      fleet_(list_of("trailers", "Trailers", "No trailer on file has this answer.", fleet_columns())),
      jobs_(list_of("register", "Register", "No job on file has these words.", job_columns())),
      due_(list_of("due", "What is due", "Nothing is due in this time.", due_columns())),
      orders_(list_of("orders", "What to order", "No accepted quote waits for parts.", order_columns())),
      failures_(list_of("what-fails", "What fails", "Nothing was graded 'repair' or worse on an axle with a model.",
                        failure_columns())),
      receipts_(list_of("receipts", "Receipts", "Nothing was handed in yet.", receipt_columns())),
      came_(list_of("taken-in", "Taken in", "Each file's outcome will stand here.", receipt_columns())) {
    fleet_.rows = PagedRows();
    fleet_.sort = TableSort{0, false};
    jobs_.rows = PagedRows();
    jobs_.sort = TableSort{0, true};
    receipts_.rows = PagedRows();
}

Result<std::unique_ptr<DeskSession>> DeskSession::open(DeskParts parts) {
    std::unique_ptr<DeskSession> session(new DeskSession(std::move(parts)));
    COTTER_TRY(session->try_load());
    return session;
}

void DeskSession::apply(const Command& command) {
    std::visit([this](const auto& c) { act(c); }, command);
}

void DeskSession::collect() {
    parts_.tasks.collect();
    if (take_in_.running) take_in_.seconds = parts_.clock.now().unix_s - take_in_.started.unix_s;
    if (next_end_ && next_end_->unix_s <= parts_.clock.now().unix_s) refresh_answers();
}

void DeskSession::act(const GoTo& c) {
    if (c.route == route()) return;
    notice_ = {};
    // What hangs on the rail lies at the bottom; only what a list led to can be left by going back.
    const bool leads = c.route.page == Page::trailer || c.route.page == Page::compare;
    if (!leads) stack_.clear();
    stack_.push_back(c.route);
    load();
}

void DeskSession::act(const GoBack&) {
    if (at_bottom()) return;
    stack_.pop_back();
    unread_.clear();
    if (route().page == Page::trailer || route().page == Page::compare) return load();
    refresh_answers();  // they may have run out meanwhile
}

void DeskSession::act(const ShowPart& c) {
    if (trailer_) trailer_->part = c.part;
}

void DeskSession::act(const AskFleet& c) {
    fleet_asked_ = c;
    load();
}

void DeskSession::act(const AskRegister& c) {
    asked_ = c;
    load();
}

void DeskSession::act(const AskDue& c) {
    due_asked_ = c;
    load();
}

void DeskSession::act(const WantRows& c) {
    const List* shown = shown_list();
    if (shown == nullptr || !shown->paged()) return;
    for (const std::size_t page : std::get<PagedRows>(shown->rows).missing(c.rows))
        if (const auto done = fetch(page); !done) return could_not_read(done.error());
}

void DeskSession::act(const SortList& c) {
    List* shown = shown_list();
    if (shown == nullptr) return;
    if (!shown->paged()) return shown->sort_by(c.sort);
    shown->sort = c.sort;
    load();
}

void DeskSession::act(const NarrowList& c) {
    List* shown = shown_list();
    if (shown != nullptr && !shown->paged()) return shown->narrow(c.words);
    if (shown != &fleet_) return;
    fleet_.words = c.words;
    load();
}

void DeskSession::act(const ShowColumn& c) {
    List* shown = shown_list();
    if (shown == nullptr || c.column >= shown->columns.size()) return;
    TableColumn& column = shown->columns[c.column];
    const auto left =
        std::count_if(shown->columns.begin(), shown->columns.end(), [](const auto& one) { return one.drawn(); });
    if (c.shown || left > 1 || column.idle) column.shown = c.shown;
}

void DeskSession::act(const AcceptKey& c) {
    note(parts_.ledger->accept_key(c.technician, c.signer),
         fmt::format("{} may sign with this key from now on", c.technician));
    load();
}

void DeskSession::act(const ChoosePacket& c) {
    note(parts_.ledger->choose(c.fingerprint), "This packet is shown of its job from now on");
    load();
}

List* DeskSession::shown_list() {
    switch (route().page) {
        case Page::trailers:
            return &fleet_;
        case Page::jobs:
            return &jobs_;
        case Page::due:
            return &due_;
        case Page::orders:
            return &orders_;
        case Page::failures:
            return &failures_;
        case Page::receipts:
            return &receipts_;
        case Page::take_in:
            return &came_;
        case Page::compare:
            return compared_ ? &compared_->readings : nullptr;
        case Page::trailer:
            break;
    }
    if (!trailer_) return nullptr;
    switch (trailer_->part) {
        case Part::visits:
            return &trailer_->visits;
        case Part::torques:
            return &trailer_->torques;
        case Part::findings:
            return &trailer_->findings;
        case Part::changes:
            return &trailer_->changes;
        case Part::costs:
            return &trailer_->costs;
        case Part::packets:
            return &trailer_->packets;
        default:
            return nullptr;
    }
}

void DeskSession::note(const Result<>& done, std::string good) {
    if (!done)
        notice_ = {done.error().line(), true};
    else
        notice_ = {std::move(good), false};
}

std::string DeskSession::trailer_of(const std::string& row_key) const {
    const auto found = trailers_.find(row_key);
    return found == trailers_.end() ? std::string() : found->second;
}

const ledger::JobLine* DeskSession::job_at(std::size_t row) const {
    const auto page = job_pages_.find(row / PagedRows::kPage);
    if (page == job_pages_.end() || row % PagedRows::kPage >= page->second.size()) return nullptr;
    return &page->second[row % PagedRows::kPage];
}

}  // namespace cotter::desk
