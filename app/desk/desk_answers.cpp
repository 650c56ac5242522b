// See desk_session.h: the trailers with what is said about towing them, and answers that no longer count made anew.
//
// Method: lists show nothing in the place of an answer that no longer counts. While there are such, short tasks make
// them anew beside the screen, one after the other, and the rows in sight are read again about once a second. A page
// that stays open is read again at the moment the next of its answers runs out.
#include <algorithm>

#include "app/desk/desk_session.h"

namespace cotter::desk {

namespace {
constexpr std::int64_t kTryAgain = 20;  // s
}

ledger::FleetAsk DeskSession::fleet_ask() const {
    ledger::FleetAsk ask;
    ask.words = fleet_.words;
    ask.outcomes = fleet_asked_.outcomes;
    ask.trip_check_due = fleet_asked_.trip_check_due;
    ask.limit = PagedRows::kPage;
    if (fleet_.sort) {
        ask.order = fleet_order(fleet_.sort->column);
        ask.falling = fleet_.sort->falling;
    }
    return ask;
}

Result<> DeskSession::load_fleet() {
    ++fleet_.made;
    std::get<PagedRows>(fleet_.rows).start(0);
    fleet_.empty = counts_.trailers == 0
                       ? "No trailer is on file yet. Take packets in first: drop them onto this window."
                       : "No trailer on file has this answer.";
    COTTER_TRY(count_answers());
    return read_answers_again();
}

Result<> DeskSession::fetch_fleet(std::size_t page) {
    ledger::FleetAsk ask = fleet_ask();
    ask.offset = page * PagedRows::kPage;
    COTTER_ASSIGN(const auto trailers, parts_.ledger->fleet(ask));
    std::vector<TableRow> rows;
    for (const ledger::TrailerLine& trailer : trailers) rows.push_back(fleet_row(trailer));
    std::get<PagedRows>(fleet_.rows).put(page, std::move(rows));
    return {};
}

Result<> DeskSession::count_answers() {
    COTTER_ASSIGN(fleet_counts_, parts_.ledger->fleet_counts());
    next_end_ = fleet_counts_.next_end;
    renew();
    return {};
}

// The pages that are there, of the list shown; at least the first.
Result<> DeskSession::read_answers_again() {
    auto& rows = std::get<PagedRows>(shown_list()->rows);
    if (shown_list() == &fleet_) {
        COTTER_ASSIGN(const std::int64_t all, parts_.ledger->count(fleet_ask()));
        rows.grow(static_cast<std::size_t>(all));
    }
    std::vector<std::size_t> pages = rows.pages();
    if (pages.empty()) pages.push_back(0);
    for (const std::size_t page : pages) COTTER_TRY(fetch(page));
    return {};
}

void DeskSession::refresh_answers() {
    next_end_.reset();
    if (!shows_answers()) return route().page == Page::trailer ? load() : void();
    refreshed_s_ = parts_.clock.now().unix_s;
    Result<> done = count_answers();
    if (done) done = read_answers_again();
    if (!done) could_not_read(done.error());
}

void DeskSession::renew() {
    if (fleet_counts_.waiting == 0 || renewal_ != nullptr || !may_renew_) return;
    renewal_ = std::make_shared<Renewal>();
    renewal_->open = parts_.another;
    parts_.tasks.start(renew_some(renewal_, [this](const Result<std::size_t>& made) { renewed(made); }));
}

// What failed, as when another seat was writing, is tried again; a seat that may only read shows what others have made.
void DeskSession::renewed(const Result<std::size_t>& made) {
    if (!made && made.error().code == Errc::refused) may_renew_ = false;
    if (!made && may_renew_ && shows_answers())
        next_end_ = Instant{parts_.clock.now().unix_s + kTryAgain, parts_.clock.now().offset_min};
    const bool more = made && *made > 0;
    if (more)
        parts_.tasks.start(renew_some(renewal_, [this](const Result<std::size_t>& next) { renewed(next); }));
    else
        renewal_.reset();
    const bool seen = shows_answers() && unread_.empty();
    if (seen && made && (!more || parts_.clock.now().unix_s != refreshed_s_)) refresh_answers();
}

std::optional<double> DeskSession::seconds_to_end() const {
    if (!next_end_ || !unread_.empty()) return std::nullopt;
    return static_cast<double>(std::max<std::int64_t>(1, next_end_->unix_s - parts_.clock.now().unix_s));
}

}  // namespace cotter::desk
