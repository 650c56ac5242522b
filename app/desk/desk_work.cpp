// See desk_session.h: work beside the screen, taking packets in and writing lists.
#include <algorithm>

#include <fmt/format.h>

#include "app/desk/desk_session.h"
#include "app/desk/list_file.h"
#include "core/ledger/transfer.h"

namespace cotter::desk {

namespace {

constexpr std::size_t kMostWritten = 5000;  // rows of a long list on paper
constexpr std::size_t kMostShown = 2000;    // outcomes of a batch that stay in sight; the receipts have all

constexpr const char* ending(ListFile as) {
    return as == ListFile::pdf ? "pdf" : as == ListFile::csv ? "csv" : "ics";
}

Bytes bytes_of(const std::string& text) {
    return Bytes(text.begin(), text.end());
}

// Rows of a long list, read anew on a ledger of its own.
Result<std::vector<TableRow>> all_jobs(const OpenAnother& another, ledger::SearchAsk ask) {
    COTTER_ASSIGN(const auto ledger, another());
    std::vector<TableRow> rows;
    for (ask.limit = 1000; rows.size() < kMostWritten; ask.offset += ask.limit) {
        COTTER_ASSIGN(const auto hits, ledger->search(ask));
        for (const ledger::Hit& hit : hits) rows.push_back(job_row(hit));
        if (hits.size() < ask.limit) break;
    }
    return rows;
}

// On paper no answer about towing is left out: those that no longer count are made anew first, where this seat may.
Result<std::vector<TableRow>> all_trailers(const OpenAnother& another, ledger::FleetAsk ask) {
    COTTER_ASSIGN(const auto ledger, another());
    for (std::size_t made = 1; made > 0;) {
        const auto done = ledger->renew_answers(100);
        if (!done && done.error().code != Errc::refused) return unexpected(done.error());
        made = done ? *done : 0;
    }
    std::vector<TableRow> rows;
    for (ask.limit = 1000; rows.size() < kMostWritten; ask.offset += ask.limit) {
        COTTER_ASSIGN(const auto trailers, ledger->fleet(ask));
        for (const ledger::TrailerLine& trailer : trailers) rows.push_back(fleet_row(trailer));
        if (trailers.size() < ask.limit) break;
    }
    return rows;
}

Result<std::vector<TableRow>> all_receipts(const OpenAnother& another) {
    COTTER_ASSIGN(const auto ledger, another());
    COTTER_ASSIGN(const auto receipts, ledger->receipts(kMostWritten, 0));
    std::vector<TableRow> rows;
    for (const ledger::Receipt& receipt : receipts) rows.push_back(receipt_row(receipt));
    return rows;
}

}  // namespace

// What goes into the file; copies of all it needs, as it is called beside the screen.
std::function<Result<Bytes>()> DeskSession::make_file(ListFile as) {
    const List& shown = *shown_list();
    ListOnPaper paper{shown.title,     shown.empty,       {}, shown.columns, {}, parts_.share,
                      parts_.software, parts_.clock.now()};
    std::function<Result<std::vector<TableRow>>()> rows;
    if (&shown == &jobs_)
        rows = [another = parts_.another, ask = search_ask()] { return all_jobs(another, ask); };
    else if (&shown == &fleet_)
        rows = [another = parts_.another, ask = fleet_ask()] { return all_trailers(another, ask); };
    else if (&shown == &receipts_)
        rows = [another = parts_.another] { return all_receipts(another); };
    for (std::size_t i = 0; !rows && i < shown.table().size(); ++i)
        if (const TableRow* row = shown.table().row(i)) paper.rows.push_back(*row);
    if (!asked_.words.empty() && &shown == &jobs_) paper.under.push_back("With the words: " + asked_.words);
    if (&shown == &fleet_)
        for (const TowOutcome outcome : fleet_asked_.outcomes) paper.under.push_back("Only: " + outcome_words(outcome));
    if (&shown == &fleet_ && fleet_asked_.trip_check_due) paper.under.push_back("Only: trip check due");
    if (!shown.words.empty()) paper.under.push_back("With the words: " + shown.words);
    if (as == ListFile::ics)
        return [due = due_rows_, at = parts_.clock.now(), by = parts_.software]() -> Result<Bytes> {
            return bytes_of(ledger::due_ics(due, at, by));
        };
    return [paper, rows, as, &files = parts_.files]() mutable -> Result<Bytes> {
        if (rows) {
            COTTER_ASSIGN(paper.rows, rows());
            if (paper.rows.size() >= kMostWritten)
                paper.under.push_back(fmt::format("The first {} rows; 'cotter export' writes all.", paper.rows.size()));
        }
        if (as == ListFile::pdf) return list_as_pdf(files, paper);
        return bytes_of(list_as_csv(paper));
    };
}

void DeskSession::act(const WriteList& c) {
    const List* shown = shown_list();
    if (shown == nullptr || !unread_.empty()) return;
    if (c.as == ListFile::ics && shown != &due_) return;
    const std::string name = fmt::format("{}_{}", today().text(), shown->name);
    const NewFile file{join_path(parts_.lists_folder, name), ending(c.as)};
    notice_ = {fmt::format("Writing {}.{}", file.path, file.ending), false};
    parts_.tasks.start(write_file(parts_.files, file, make_file(c.as), [this](const Result<std::string>& done) {
        done ? note({}, "Written: " + *done) : note(unexpected(done.error()), {});
    }));
}

void DeskSession::act(const TakeIn& c) {
    if (c.paths.empty()) return;
    act(GoTo{{Page::take_in, {}, {}}});
    if (batch_ != nullptr) {
        notice_ = {"Wait for the current batch to finish.", true};
        return;
    }
    batch_ = std::make_shared<Batch>();
    batch_->open = parts_.another;
    batch_->trust = parts_.trust;
    batch_->paths = c.paths;
    take_in_ = {};
    take_in_.running = true;
    take_in_.started = parts_.clock.now();
    came_rows_.clear();
    came_.keep({});
    notice_ = {};
    parts_.tasks.start(find_packets(parts_.files, batch_, [this](Taken taken) { took(std::move(taken)); }));
}

void DeskSession::act(const CancelTakeIn&) {
    if (take_in_.running) take_in_.cancelled = true;
}

void DeskSession::took(Taken taken) {
    for (const ledger::Receipt& receipt : taken.receipts) {
        take_in_.count(receipt);
        if (came_rows_.size() < kMostShown) came_rows_.push_back(receipt_row(receipt));
    }
    take_in_.total = batch_->packets.size();
    take_in_.bytes_total = 0;
    for (const std::uint64_t size : batch_->sizes) take_in_.bytes_total += size;
    if (!taken.receipts.empty()) {
        const std::uint64_t made = came_.made;
        came_.keep(came_rows_);
        came_.made = made;  // more of the same rows
    }
    if (taken.error) {
        note(unexpected(*taken.error), {});
        return end_batch();
    }
    if (take_in_.cancelled || batch_->next >= batch_->packets.size()) return end_batch();
    parts_.tasks.start(take_next(batch_, [this](Taken more) { took(std::move(more)); }));
}

void DeskSession::end_batch() {
    const bool found = !batch_->packets.empty();
    batch_.reset();
    take_in_.running = false;
    if (notice_.text.empty())
        notice_ = {!found               ? "There was no packet in what was handed in."
                   : take_in_.cancelled ? "Cancelled: " + take_in_.outcome_words() + ", the rest was left."
                                        : take_in_.outcome_words() + ".",
                   !found || take_in_.refused + take_in_.failed > 0};
    load();
}

}  // namespace cotter::desk
