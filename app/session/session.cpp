// Opening, commands, commits, and what is kept between starts. See session.h.
#include "app/session/session.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/session/work_here.h"

namespace cotter {

Session::Session(const SessionParts& parts, std::string folder) : parts_(parts), folder_(std::move(folder)) {
    device_ = parts_.device != nullptr ? parts_.device : plain_.get();
}

Result<std::unique_ptr<Session>> Session::open(const SessionParts& parts, const std::string& folder) {
    std::unique_ptr<Session> session(new Session(parts, folder));
    COTTER_TRY(session->start());
    return session;
}

Result<> Session::start() {
    COTTER_ASSIGN(book_, Book::open(parts_.files, folder_, OpenMode::create));
    if (parts_.verify) COTTER_TRY(book_->verify_pages());
    vault_ = std::make_unique<PhotoVault>(parts_.files, parts_.workers, folder_);
    COTTER_TRY(vault_->sweep());
    work_here_ = std::make_unique<WorkHere>(
        WorkPlace{parts_.files, parts_.random, parts_.workers, *vault_, parts_.share, parts_.software, folder_},
        parts_.tasks);
    judge_ = std::make_unique<JobJudge>(parts_.files, parts_.share, *book_);
    work_data_ = std::make_unique<WorkData>(parts_.files, parts_.share);
    settings_ = load_settings(parts_.files, folder_);
    state_kept_ = load_state(parts_.files, folder_);
    for (const Drafts& drafts : state_kept_.kept_drafts) drafts_.keep(drafts);
    list_jobs();
    list_shelf();
    const auto id = Uuid::parse(state_kept_.job);
    if (id) load_job({*id});
    take_over_drafts();
    nav_ = has_job() ? Nav(state_kept_.stack) : Nav();
    look_at_drafts();
    return {};
}

void Session::apply(const Command& command) {
    revision_ += 1;
    if (!std::holds_alternative<KeepDrafts>(command) && !std::holds_alternative<GoBackIfDone>(command)) {
        notice_.reset();
        failed_ = false;
    }
    std::visit([this](const auto& c) { act(c); }, command);
    keep_state();
}

bool Session::collect() {
    const bool kept = look_at_device();
    const bool came = parts_.tasks.collect();
    if (came) keep_state();
    const bool answered = answer_next();
    if (came || kept || answered) revision_ += 1;
    return came || kept || answered;
}

// One job of the yard book that has no answer yet, the newest first.
bool Session::answer_next() {
    constexpr int kFirstFrames = 2;
    to_come_ = false;
    if (!nav_.at_bottom()) return false;
    const auto open = [&](const JobSummary& job) { return judge_->answer(job.id, now()) == nullptr; };
    const auto next = std::find_if(jobs_.begin(), jobs_.end(), open);
    to_come_ = next != jobs_.end();
    if (!to_come_ || frames_++ < kFirstFrames) return false;
    judge_->make_answer(next->id, now());
    return true;
}

std::optional<Towing> Session::answer_of(const JobId& job) const {
    const Towing* known = judge_->answer(job, now());
    return known == nullptr ? std::nullopt : std::optional(*known);
}

// Long work may answer at any time between frames, not only where tasks are collected.
void Session::came() {
    revision_ += 1;
    keep_state();
}

bool Session::look_at_device() {
    const std::uint64_t kept = device_->kept();
    std::string trouble = device_->keeping_trouble();
    if (kept == kept_ && trouble == keeping_trouble_) return false;
    kept_ = kept;
    keeping_trouble_ = std::move(trouble);
    return true;
}

Stamp Session::stamp() const {
    const std::string by = settings_.technician.empty() ? std::string(kUnnamed) : settings_.technician;
    return {parts_.clock.now(), by, parts_.random};
}

std::string Session::packet_folder() const {
    return settings_.packet_folder.empty() ? join_path(folder_, "packets") : settings_.packet_folder;
}

// ---- where to ----

void Session::act(const GoTo& c) {
    nav_.go(c.route);
}
void Session::act(const GoInstead& c) {
    nav_.replace(c.route);
}
void Session::act(const GoBack&) {
    nav_.back();
    if (nav_.at_bottom()) list_jobs();
}

void Session::act(const GoBackIfDone&) {
    if (!failed_) act(GoBack{});
}

void Session::act(const OpenJob& c) {
    load_job(c.job);
    if (!has_job()) return;
    nav_.home();
    const bool known = job_.only<Trailer>() != nullptr;
    nav_.go({known ? Screen::plan : Screen::identify, {}, {}});
}

void Session::act(const StartJob&) {
    forget_job();
    const Stamp s = stamp();
    Edit edit;
    const Changes changes = opening_changes(settings_, s);
    edit.job = std::get<Visit>(std::get<Put>(changes.front()).record).id;
    edit.at = s.at;
    edit.by = s.by;
    edit.changes = changes;
    took(book_->commit(edit), 0);
    if (!has_job()) return;
    list_jobs();
    nav_.home();
    nav_.go({Screen::identify, {}, {}});
    read_rules();
}

void Session::act(const DismissNotice&) {
    notice_.reset();
}

void Session::act(const ShowHelp& c) {
    help_open_ = c.open;
}

void Session::act(const PutSettings& c) {
    const bool first_name = settings_.technician.empty() && !c.settings.technician.empty();
    settings_ = c.settings;
    if (const auto saved = save_settings(parts_.files, folder_, settings_); !saved) return tell(saved.error());
    if (first_name) name_jobs();
}

void Session::act(const KeepDrafts& c) {
    drafts_.keep(c.drafts);
}

void Session::act(const PickFiles& c) {
    device_->pick(c.what);
}

void Session::act(const HandOut& c) {
    device_->hand_out(c.path);
}

// ---- the job ----

void Session::commit(const Result<Changes>& changes, const std::string& reason) {
    if (!changes) return tell(changes.error());
    if (!has_job()) return tell("no job is open", true);
    if (job_.signed_off() && reason.empty()) {
        if (!waiting_) waiting_.emplace();  // photos come one by one while the reason is being asked for
        waiting_->insert(waiting_->end(), changes->begin(), changes->end());
        failed_ = true;  // not carried out before its reason is there
        return;
    }
    const Stamp s = stamp();
    took(book_->commit({job_.id(), s.at, s.by, reason, *changes}), 1);
}

void Session::act(const PutFinding& c) {
    const auto id = Uuid::parse(c.draft.id);
    const Finding* there = id ? job_.find(Id<Finding>{*id}) : nullptr;
    const std::optional<Finding> before = there == nullptr ? std::nullopt : std::optional(*there);
    const auto changes = changes_of(job_, c, stamp());
    commit(changes);
    if (before && !failed_) tell_moved(*before, c.draft.place);
    if (!c.stay || !changes) return;
    auto& draft = drafts_.open().finding;
    draft = c.draft;  // when it was not saved it is still there to be tried again
    const auto& finding = std::get<Finding>(std::get<Put>(changes->front()).record);
    if (waiting_) {
        draft.reset();
    } else if (job_.find(finding.id) != nullptr) {
        draft->id = finding.id.text();
        draft->points.clear();  // its mark is in the job
    }
    keep_state();
}

void Session::act(const GiveReason& c) {
    if (!waiting_) return;
    const Changes changes = *std::exchange(waiting_, std::nullopt);
    if (c.reason.empty()) return tell("nothing was changed");
    commit(changes, c.reason);
}

void Session::took(Result<Job> job, int undo_by) {
    if (!job) {
        not_saved_ = job.error().what;
        return tell(job.error());
    }
    if (job->id() == job_.id())
        judge_->job_changed();
    else
        judge_->job_left();
    have_job(std::move(*job));
    packed_.reset();
    not_saved_.clear();
    saved_at_ = parts_.clock.now();
    written_ = device_->written();
    steps_ += 1;
    if (undo_by > 0) {
        undoable_ += 1;
        redoable_ = 0;
    }
}

// The only place where the open job becomes another: its drafts go with it.
void Session::have_job(Job job) {
    job_ = std::move(job);
    look_at_drafts();
}

void Session::look_at_drafts() {
    drafts_.switch_to(has_job() ? job_.id().text() : std::string{}, route());
}

void Session::act(const UndoStep&) {
    if (!can_undo()) return tell("there is nothing to undo");
    const Stamp s = stamp();
    auto job = book_->undo(job_.id(), s.at, s.by);
    const bool done = job.has_value();
    took(std::move(job), 0);
    if (!done) return;
    undoable_ -= 1;
    redoable_ += 1;
    tell("the last step was taken back");
}

void Session::act(const RedoStep&) {
    if (!can_redo()) return tell("there is nothing to do again");
    const Stamp s = stamp();
    auto job = book_->redo(job_.id(), s.at, s.by);
    const bool done = job.has_value();
    took(std::move(job), 0);
    if (!done) return;
    undoable_ += 1;
    redoable_ -= 1;
    tell("the step was done again");
}

void Session::load_job(const JobId& id) {
    forget_job();
    auto job = book_->load(id);
    if (!job) return tell(job.error());
    have_job(std::move(*job));
    if (auto made = book_->packets(id)) packets_ = std::move(*made);
    count_steps();
    read_rules();
}

// Without them the rest of the app still serves.
void Session::read_rules() {
    (void)judge_->reg();
    if (const auto& trouble = work_data_->trouble()) {
        tell(*trouble);
        revision_ += 1;
    }
}

// Drafts as programs before kept them, of whatever job: the open one gets those that name a record of its own.
void Session::take_over_drafts() {
    const OldDrafts old = sort_old_drafts(state_kept_.drafts, job_);
    if (!(old.fitting == Drafts{})) {
        Drafts mine = old.fitting;
        mine.job = drafts_.open().job;
        drafts_.keep(std::move(mine));
    }
    if (!old.left.empty())
        tell("not saved, as it is not known of which job it was: " + old.left + "; enter it again where it belongs");
}

void Session::forget_job() {
    judge_->job_left();
    have_job({});
    packets_.clear();
    packed_.reset();
    saved_at_.reset();
    not_saved_.clear();
    waiting_.reset();
    undoable_ = redoable_ = 0;
}

// From the journal, once when a job is opened; afterwards they are counted.
void Session::count_steps() {
    const auto steps = book_->journal(job_.id());
    if (!steps) return tell(steps.error());
    UndoStacks stacks;
    for (std::size_t i = 1; i < steps->size(); ++i)
        (void)stacks.take((*steps)[i].seq, (*steps)[i].kind, (*steps)[i].target.value_or(0));
    undoable_ = stacks.undo.size();
    redoable_ = stacks.redo.size();
}

void Session::list_jobs() {
    auto jobs = book_->jobs();
    if (!jobs) return tell(jobs.error());
    jobs_ = std::move(*jobs);
    // What was done at the open one may have changed what is said of every visit to its trailer.
    const Trailer* trailer = job_.only<Trailer>();
    std::vector<JobId> touched{job_.id()};
    for (const JobSummary& job : jobs_)
        if (trailer != nullptr && (job.unit.empty() || job.unit == trailer->unit)) touched.push_back(job.id);
    judge_->forget_answers(touched);
}

void Session::keep_state() {
    look_at_drafts();
    AppState state{has_job() ? job_.id().text() : std::string{}, nav_.stack(), drafts_.all(), {}};
    if (state == state_kept_) return;
    if (const auto saved = save_state(parts_.files, folder_, state); !saved) {
        not_saved_ = saved.error().what;
        return tell(saved.error());
    }
    state_kept_ = std::move(state);
}

}  // namespace cotter
