// The open ledger as the desk's screens see it: where the user is, the lists of the pages, what runs beside. Commands
// change it, screens are drawn from it. No ImGui. The app's thread only.
#pragma once

#include <memory>
#include <optional>

#include "app/desk/desk_command.h"
#include "app/desk/list.h"
#include "app/desk/renewal.h"
#include "app/desk/take_in.h"
#include "app/desk/trailer_view.h"
#include "core/ledger/ledger.h"

namespace cotter::desk {

// All of it outlives the session, but for what is moved in.
struct DeskParts {
    Files& files;
    Clock& clock;
    TaskRunner& tasks;
    std::unique_ptr<ledger::Ledger> ledger;
    OpenAnother another;  // the same ledger once more, for work beside the screen
    ledger::TrustList trust;
    std::string share;         // where the fonts are
    std::string lists_folder;  // where lists are written to
    std::string software;      // "Cotter 0.1.0"
};

// What the last thing done came to.
struct Notice {
    std::string text;
    bool bad = false;
};

class DeskSession {
public:
    // Fails as the ledger's first answers do.
    [[nodiscard]] static Result<std::unique_ptr<DeskSession>> open(DeskParts parts);

    void apply(const Command& command);
    void collect();  // once a frame: what came from beside

    [[nodiscard]] const Route& route() const { return stack_.back(); }
    [[nodiscard]] Page bottom() const { return stack_.front().page; }  // what the shown page was come to from
    [[nodiscard]] bool at_bottom() const { return stack_.size() == 1; }
    [[nodiscard]] const ledger::Counts& counts() const { return counts_; }
    [[nodiscard]] std::int64_t doubtful() const { return doubtful_; }  // jobs
    [[nodiscard]] const Notice& notice() const { return notice_; }
    // Why the page shown could not be read; empty: it was. Its lists are no answer then, and must not be shown.
    [[nodiscard]] const std::string& unread() const { return unread_; }
    [[nodiscard]] bool reached() const { return reached_; }  // the ledger, when it was last asked: counts() are of then
    [[nodiscard]] Date today() const { return parts_.clock.now().local_date(); }

    // The list of the page shown, or of its part; nullptr where there is none.
    [[nodiscard]] const List* list() const { return const_cast<DeskSession*>(this)->shown_list(); }
    [[nodiscard]] const AskFleet& asked_fleet() const { return fleet_asked_; }
    [[nodiscard]] const ledger::FleetCounts& fleet_counts() const { return fleet_counts_; }
    // Until the first of the answers about towing shown runs out, and the page is read again; nothing: none does.
    [[nodiscard]] std::optional<double> seconds_to_end() const;
    [[nodiscard]] const AskRegister& asked() const { return asked_; }
    [[nodiscard]] const ledger::JobLine* job_at(std::size_t row) const;  // of the register; nullptr: not there yet
    [[nodiscard]] const AskDue& asked_due() const { return due_asked_; }
    [[nodiscard]] const Trailer* trailer() const { return trailer_ ? &*trailer_ : nullptr; }
    [[nodiscard]] const Compared* compared() const { return compared_ ? &*compared_ : nullptr; }
    [[nodiscard]] const TakeInState& take_in() const { return take_in_; }
    [[nodiscard]] const std::string& lists_folder() const { return parts_.lists_folder; }
    [[nodiscard]] PhotoVault& photos() { return parts_.ledger->photos(); }
    // The trailer that a row of a list leads to; empty: none.
    [[nodiscard]] std::string trailer_of(const std::string& row_key) const;

private:
    explicit DeskSession(DeskParts parts);
    void act(const GoTo& c);
    void act(const GoBack&);
    void act(const ShowPart& c);
    void act(const AskFleet& c);
    void act(const AskRegister& c);
    void act(const AskDue& c);
    void act(const WantRows& c);
    void act(const SortList& c);
    void act(const NarrowList& c);
    void act(const ShowColumn& c);
    void act(const WriteList& c);
    void act(const TakeIn& c);
    void act(const CancelTakeIn&);
    void act(const AcceptKey& c);
    void act(const ChoosePacket& c);
    void act(const ReadAgain&) { load(); }
    void act(const DismissNotice&) { notice_ = {}; }

    [[nodiscard]] List* shown_list();
    void load();  // the page shown, from the ledger
    void could_not_read(const Error& error);
    [[nodiscard]] Result<> try_load();
    [[nodiscard]] Result<> load_fleet();
    [[nodiscard]] Result<> load_register();
    [[nodiscard]] Result<> load_trailer(const std::string& key);
    [[nodiscard]] Result<> load_compared();
    [[nodiscard]] Result<> load_due();
    [[nodiscard]] Result<> load_orders();
    [[nodiscard]] Result<> load_failures();
    [[nodiscard]] Result<> load_receipts();
    [[nodiscard]] Result<> fetch(std::size_t page);  // of the paged list shown
    [[nodiscard]] Result<> fetch_fleet(std::size_t page);
    [[nodiscard]] ledger::FleetAsk fleet_ask() const;
    [[nodiscard]] ledger::SearchAsk search_ask() const;
    [[nodiscard]] bool shows_answers() const { return route().page == Page::trailers || route().page == Page::jobs; }
    [[nodiscard]] Result<> count_answers();
    [[nodiscard]] Result<> read_answers_again();
    void refresh_answers();
    void renew();
    void renewed(const Result<std::size_t>& made);
    [[nodiscard]] std::function<Result<Bytes>()> make_file(ListFile as);
    void took(Taken taken);
    void end_batch();
    void note(const Result<>& done, std::string good);

    DeskParts parts_;
    std::vector<Route> stack_{Route{}};
    ledger::Counts counts_;
    std::int64_t doubtful_ = 0;
    Notice notice_;
    std::string unread_;
    bool reached_ = true;
    AskFleet fleet_asked_;
    ledger::FleetCounts fleet_counts_;
    std::optional<Instant> next_end_;   // of the answers shown
    std::shared_ptr<Renewal> renewal_;  // while answers are made anew
    bool may_renew_ = true;             // this seat may write
    std::int64_t refreshed_s_ = 0;
    AskRegister asked_;
    AskDue due_asked_;
    List fleet_, jobs_, due_, orders_, failures_, receipts_, came_;
    std::map<std::size_t, std::vector<ledger::JobLine>> job_pages_;  // beside the register's rows
    std::vector<ledger::DueRow> due_rows_;
    std::vector<ledger::OrderRow> order_rows_;
    std::map<std::string, std::string> trailers_;  // of rows, by key
    std::optional<Trailer> trailer_;
    std::optional<Compared> compared_;
    TakeInState take_in_;
    std::shared_ptr<Batch> batch_;
    std::vector<TableRow> came_rows_;
};

}  // namespace cotter::desk
