// The app without its screen: the open book, where the user is, what was begun; commands in, plain views out.
// No ImGui, no SDL; one thread. Long work goes to the TaskRunner and comes back through it.
#pragma once

#include <cstdint>
#include <deque>
#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "app/command.h"
#include "app/device.h"
#include "app/long_work.h"
#include "app/session/changes.h"
#include "app/session/drafts_kept.h"
#include "app/session/job_judge.h"
#include "app/session/state.h"
#include "app/session/work_data.h"
#include "app/tasks.h"
#include "core/base/ports.h"
#include "core/book/book.h"
#include "core/packet/pack.h"
#include "core/photo/vault.h"

namespace cotter {

// What the session works with; all of it outlives it.
struct SessionParts {
    Files& files;
    Clock& clock;
    Random& random;
    Workers& workers;
    TaskRunner& tasks;
    std::string share;              // the program's own data
    std::string software;           // "Cotter 0.1.0"
    Device* device = nullptr;       // nullptr: a disk and nothing else
    LongWork* elsewhere = nullptr;  // who does the long work; nullptr: this process, through `tasks`
    bool verify = false;            // the book's pages are looked through first; a damaged book does not open
};

// One line for the user about the last command.
struct Notice {
    std::string text;
    bool error = false;
    bool can_undo = false;
};

// What runs beside the screen.
struct RunningWork {
    std::string doing;   // "Taking in photos"
    std::string detail;  // "3 of 12"
    std::size_t done = 0, total = 0;
};

class Session {
public:
    // Opens or makes the book in `folder` and goes where the user was. Fails as Book::open does.
    [[nodiscard]] static Result<std::unique_ptr<Session>> open(const SessionParts& parts, const std::string& folder);

    void apply(const Command& command);
    // Once a frame: takes back finished work. True when something changed.
    bool collect();
    // Reads what it judges and leads by, which a job opened later would wait for; once. For a moment of rest.
    void read_rules();

    // ---- for views ----
    // Another number after every change of what is below, but for the clock.
    [[nodiscard]] std::uint64_t revision() const { return revision_; }
    [[nodiscard]] const Nav& nav() const { return nav_; }
    [[nodiscard]] const Route& route() const { return nav_.top(); }
    [[nodiscard]] const Settings& settings() const { return settings_; }
    [[nodiscard]] const Drafts& drafts() const { return drafts_.open(); }           // the open job's
    [[nodiscard]] const Drafts& app_drafts() const { return drafts_.of_no_job(); }  // the settings'
    [[nodiscard]] const Job& job() const { return job_; }                           // an empty one when none is open
    [[nodiscard]] bool has_job() const { return !job_.id().nil(); }
    [[nodiscard]] const std::vector<JobSummary>& jobs() const { return jobs_; }  // newest first
    // What is to be said of towing for a job of that list; nullopt: not worked out yet.
    [[nodiscard]] std::optional<Towing> answer_of(const JobId& job) const;
    [[nodiscard]] bool answers_to_come() const { return to_come_; }  // collect() works them out, one a frame
    [[nodiscard]] bool can_undo() const { return undoable_ > 0; }
    [[nodiscard]] std::uint64_t steps() const { return steps_; }  // changes to jobs since the start
    [[nodiscard]] bool can_redo() const { return redoable_ > 0; }
    [[nodiscard]] const std::optional<Notice>& notice() const { return notice_; }
    [[nodiscard]] const std::optional<Instant>& saved_at() const { return saved_at_; }
    [[nodiscard]] const std::string& not_saved() const { return not_saved_; }  // why the last change is not on disk
    [[nodiscard]] const std::string& keeping_trouble() const { return keeping_trouble_; }  // the device's
    [[nodiscard]] bool at_rest() const { return device().kept() >= written_; }  // the last change would survive
    [[nodiscard]] bool shows_help() const { return help_open_; }
    [[nodiscard]] bool asks_reason() const { return waiting_.has_value(); }
    [[nodiscard]] const std::optional<RunningWork>& work() const { return work_; }
    [[nodiscard]] const std::vector<std::string>& not_taken() const { return not_taken_; }  // photos, and why
    [[nodiscard]] const std::optional<Packed>& packed() const { return packed_; }      // of the open job, this time
    [[nodiscard]] const std::vector<PacketMade>& packets() const { return packets_; }  // of the open job, oldest first
    [[nodiscard]] Instant now() const { return parts_.clock.now(); }
    [[nodiscard]] std::string packet_folder() const;
    [[nodiscard]] const SessionParts& parts() const { return parts_; }
    [[nodiscard]] PhotoVault& vault() { return *vault_; }
    [[nodiscard]] Device& device() const { return *device_; }
    [[nodiscard]] const std::vector<Offer>& shelf() const { return shelf_; }  // newest seen first
    [[nodiscard]] const std::vector<std::string>& offers_refused() const { return offers_refused_; }  // lines of a file
    // The open job judged, as of the last change to it; what it holds is made when it is asked for.
    [[nodiscard]] JobJudge& judge() const { return *judge_; }
    [[nodiscard]] const TowAnswer& towing() const { return summary().tow; }
    [[nodiscard]] const Summary& summary() const { return judge_->summary(job_, now()); }
    // Empty when they could not be read.
    [[nodiscard]] const WorkBook& work_book() const { return work_data_->book(); }
    [[nodiscard]] const FluidTable& fluids() const { return work_data_->fluids(); }
    [[nodiscard]] const RecheckRules& recheck_rules() const { return work_data_->rechecks(); }
    // The newest earlier visit to the open job's trailer; nullptr when the book has none.
    [[nodiscard]] const Job* last_visit() const { return judge_->last_visit(job_); }

private:
    explicit Session(const SessionParts& parts, std::string folder);
    Result<> start();

    // Commands about the app.
    void act(const GoTo& c);
    void act(const GoInstead& c);
    void act(const GoBack& c);
    void act(const GoBackIfDone& c);
    void act(const OpenJob& c);
    void act(const StartJob& c);
    void act(const UndoStep& c);
    void act(const RedoStep& c);
    void act(const DismissNotice& c);
    void act(const ShowHelp& c);
    void act(const GiveReason& c);
    void act(const PutSettings& c);
    void act(const NameTechnician& c);
    void act(const KeepDrafts& c);
    void act(const TakePhotos& c);
    void act(const CancelWork& c);
    void act(const ExportPacket& c);
    void act(const KeepOffer& c);
    void act(const ForgetOffer& c);
    void act(const TakeOffers& c);
    void act(const WriteOffers& c);
    void act(const PickFiles& c);
    void act(const HandOut& c);
    void act(const PutStepMark& c);  // asks the procedures first
    void act(const PutFinding& c);
    void act(const PutShot& c);      // says which findings went with it
    void act(const AnswerQuote& c);  // its draft goes when it is kept
    void act(const SignJob& c);      // not past an answer that nobody acknowledged
    // Those that change the job.
    template <JobCommand C>
    void act(const C& c) {
        commit(changes_of(job_, c, stamp()));
    }

    [[nodiscard]] Stamp stamp() const;
    void commit(const Result<Changes>& changes, const std::string& reason = {});
    void took(Result<Job> job, int undo_by);  // the book's answer to a step
    void have_job(Job job);
    void look_at_drafts();  // those of the open job and the shown page
    void load_job(const JobId& id);
    void take_over_drafts();
    void forget_job();
    void tell_moved(const Finding& before, const Place& to);
    void name_jobs();
    bool name_job(const JobId& id);
    void count_steps();
    void list_jobs();
    bool answer_next();
    void list_shelf();
    bool look_at_device();  // true when what it has kept is another than last seen
    void keep_state();      // where we are and what was begun, onto the disk
    void tell(std::string text, bool error = false, bool can_undo = false) {
        failed_ = failed_ || error;
        notice_ = Notice{std::move(text), error, can_undo};
    }
    void tell(const Error& error) { tell(error.line(), true); }

    // Beside the screen (session_work.cpp).
    void ordered(const TakePhotos& c);  // their times are known now
    void queue(const TakePhotos& c);
    void next_photo();
    void photo_came(const TakePhotos& from, Result<PhotoRef> photo);
    void came();
    void keep_shot(Shot shot, bool show);
    void packet_came(const JobId& job, Result<Packed> packed);
    [[nodiscard]] LongWork& long_work() { return parts_.elsewhere != nullptr ? *parts_.elsewhere : *work_here_; }

    SessionParts parts_;
    std::string folder_;
    std::unique_ptr<Book> book_;
    std::unique_ptr<PhotoVault> vault_;
    std::unique_ptr<LongWork> work_here_;
    std::unique_ptr<Device> plain_ = std::make_unique<Device>();
    Device* device_ = nullptr;
    std::unique_ptr<JobJudge> judge_;
    std::unique_ptr<WorkData> work_data_;
    Settings settings_;
    Nav nav_;
    DraftsKept drafts_;
    AppState state_kept_;  // as it is on the disk
    Job job_;
    std::vector<JobSummary> jobs_;
    int frames_ = 0;  // counted up to where the list's answers begin, so that the first pages do not wait for them
    bool to_come_ = false;
    std::vector<Offer> shelf_;
    std::vector<PacketMade> packets_;
    std::optional<Packed> packed_;
    std::uint64_t steps_ = 0;
    std::size_t undoable_ = 0, redoable_ = 0;
    std::optional<Notice> notice_;
    bool failed_ = false;  // the last command that was to do something was not carried out, or waits
    std::optional<Instant> saved_at_;
    std::string not_saved_;
    std::string keeping_trouble_;  // the device's, as last seen
    std::uint64_t written_ = 0;    // the device's number of the last change
    std::uint64_t kept_ = 0;       // ... of what is safe, as last seen
    bool help_open_ = false;
    std::optional<Changes> waiting_;           // a change to a signed-off job that lacks its reason
    int ordering_ = 0;                         // intakes whose photos' times are being looked at
    JobId intake_job_;                         // the job that they are for
    std::deque<TakePhotos> intake_;            // one photo each
    std::vector<std::string> not_taken_;       // of this intake, a line each
    std::vector<std::string> offers_refused_;  // of the file taken last, a line each
    std::optional<RunningWork> work_;
    std::uint64_t revision_ = 1;
};

}  // namespace cotter
