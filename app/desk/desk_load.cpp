// See desk_session.h: what the pages show, asked of the ledger.
#include <algorithm>

#include <fmt/format.h>

#include "app/desk/desk_session.h"

namespace cotter::desk {

namespace {

// Whoever has more than that due can only begin with what has waited longest, or choose a kind.
constexpr std::size_t kMostDue = 10'000;

// Where nothing is searched, nothing was found in anything, and the other columns get that room; but one stays.
void show_found(Columns& columns, bool searched) {
    const auto others = [](const TableColumn& c) { return c.shown && c.key != "found"; };
    const bool idle = !searched && std::any_of(columns.begin(), columns.end(), others);
    for (TableColumn& c : columns)
        if (c.key == "found") c.idle = idle;
}

}  // namespace

void DeskSession::load() {
    unread_.clear();
    if (const auto done = try_load(); !done) could_not_read(done.error());
}

// What is taken in is told by its receipts, which are there already; every other page is nothing without the ledger.
void DeskSession::could_not_read(const Error& error) {
    if (route().page == Page::take_in) return note(unexpected(error), {});
    unread_ = error.line();
    next_end_.reset();
    if (route().page == Page::trailer) trailer_.reset();
    if (route().page == Page::compare) compared_.reset();
}

Result<> DeskSession::try_load() {
    reached_ = false;
    COTTER_ASSIGN(counts_, parts_.ledger->counts());
    ledger::SearchAsk doubtful;
    doubtful.filter.doubtful = true;
    COTTER_ASSIGN(doubtful_, parts_.ledger->count(doubtful));
    reached_ = true;
    next_end_.reset();
    switch (route().page) {
        case Page::trailers:
            return load_fleet();
        case Page::jobs:
            return load_register();
        case Page::trailer:
            return load_trailer(route().record);
        case Page::compare:
            return load_compared();
        case Page::due:
            return load_due();
        case Page::orders:
            return load_orders();
        case Page::failures:
            return load_failures();
        case Page::receipts:
            return load_receipts();
        case Page::take_in:
            break;
    }
    return {};
}

ledger::SearchAsk DeskSession::search_ask() const {
    ledger::SearchAsk ask;
    ask.words = asked_.words;
    ask.filter = asked_.filter;
    ask.limit = PagedRows::kPage;
    if (jobs_.sort) {
        ask.order = job_order(jobs_.sort->column);
        ask.rising = !jobs_.sort->falling;
    }
    return ask;
}

// The first page tells how many there are where it is not full: counting is left out then.
Result<> DeskSession::load_register() {
    job_pages_.clear();
    ++jobs_.made;
    show_found(jobs_.columns, asked_.words.find_first_not_of(' ') != std::string::npos);
    auto& rows = std::get<PagedRows>(jobs_.rows);
    rows.start(PagedRows::kPage);
    COTTER_TRY(count_answers());
    COTTER_TRY(fetch(0));
    if (job_pages_[0].size() == PagedRows::kPage) {
        COTTER_ASSIGN(const std::int64_t all, parts_.ledger->count(search_ask()));
        rows.grow(static_cast<std::size_t>(all));
    } else {
        rows.grow(job_pages_[0].size());
    }
    if (counts_.jobs == 0)
        jobs_.empty = "No job is on file yet. Take packets in first: drop them onto this window.";
    else
        jobs_.empty = "No jobs match.";
    return {};
}

Result<> DeskSession::fetch(std::size_t page) {
    List* shown = shown_list();
    if (shown == &fleet_) return fetch_fleet(page);
    auto& rows = std::get<PagedRows>(shown->rows);
    std::vector<TableRow> out;
    if (shown == &receipts_) {
        COTTER_ASSIGN(const auto receipts, parts_.ledger->receipts(PagedRows::kPage, page * PagedRows::kPage));
        for (const ledger::Receipt& receipt : receipts) out.push_back(receipt_row(receipt));
        rows.put(page, std::move(out));
        return {};
    }
    ledger::SearchAsk ask = search_ask();
    ask.offset = page * PagedRows::kPage;
    COTTER_ASSIGN(const auto hits, parts_.ledger->search(ask));
    std::vector<ledger::JobLine>& jobs = job_pages_[page];
    jobs.clear();
    for (const ledger::Hit& hit : hits) {
        out.push_back(job_row(hit));
        jobs.push_back(hit.job);
    }
    rows.put(page, std::move(out));
    return {};
}

Result<> DeskSession::load_trailer(const std::string& key) {
    COTTER_ASSIGN(const ledger::TrailerPage page, parts_.ledger->trailer(key));
    if (page.trailer.tow) next_end_ = page.trailer.tow->runs_out;
    const Part part = trailer_ ? trailer_->part : Part::visits;
    Trailer view = trailer_view(page);
    const bool same = trailer_ && trailer_->title == view.title;
    trailer_ = std::move(view);
    if (same) trailer_->part = part;
    return {};
}

Result<> DeskSession::load_compared() {
    COTTER_ASSIGN(const ledger::Comparison comparison, parts_.ledger->compare(route().record, route().other));
    compared_ = compared_view(comparison);
    return {};
}

Result<> DeskSession::load_due() {
    const Date now = today();
    ledger::DueAsk ask;
    ask.until = Date::from_days(now.days() + due_asked_.days);
    ask.kinds = due_asked_.kinds;
    ask.limit = kMostDue + 1;
    COTTER_ASSIGN(due_rows_, parts_.ledger->due(ask));
    const bool more = due_rows_.size() > kMostDue;
    if (more) due_rows_.resize(kMostDue);
    std::vector<TableRow> rows;
    trailers_.clear();
    for (const ledger::DueRow& row : due_rows_) {
        rows.push_back(due_row(row, now));
        trailers_[rows.back().key] = row.trailer;
    }
    due_.title = "Due by " + ask.until->text();
    if (more) due_.title += fmt::format(", the {} that come first", kMostDue);
    due_.keep(std::move(rows));
    return {};
}

Result<> DeskSession::load_orders() {
    COTTER_ASSIGN(order_rows_, parts_.ledger->orders());
    std::vector<TableRow> rows;
    for (const ledger::OrderRow& row : order_rows_) rows.push_back(order_row(row));
    orders_.keep(std::move(rows));
    return {};
}

Result<> DeskSession::load_failures() {
    COTTER_ASSIGN(const auto failures, parts_.ledger->failures());
    std::vector<TableRow> rows;
    for (const ledger::AxleFailure& row : failures) rows.push_back(failure_row(row));
    failures_.keep(std::move(rows));
    return {};
}

Result<> DeskSession::load_receipts() {
    ++receipts_.made;
    std::get<PagedRows>(receipts_.rows).start(static_cast<std::size_t>(counts_.receipts));
    return fetch(0);
}

}  // namespace cotter::desk
