// What the session has done beside the screen: photos taken in, the packet made. See session.h.
#include <algorithm>

#include <fmt/format.h>

#include "app/session/photo_order.h"
#include "app/session/session.h"
#include "core/base/text.h"
#include "core/book/replay.h"
#include "core/packet/pack_rules.h"
#include "core/packet/signature.h"
#include "core/photo/probe.h"

namespace cotter {

// Reads one photo and puts it into the vault; the session makes a shot of it.
class PhotoTask final : public Task {
public:
    PhotoTask(Session& session, TakePhotos from)
        : session_(session), files_(session.parts_.files), vault_(*session.vault_), from_(std::move(from)) {}

    bool step() override {
        stored_ = take();
        return true;
    }
    void done() override { session_.photo_came(from_, std::move(stored_)); }

private:
    Result<Stored> take() {
        const std::string& path = from_.paths.front();
        auto bytes = read_file(files_, path, kMostPhotoBytes);
        if (!bytes) return unexpected(bytes.error());
        auto stored = vault_.take_in(*bytes);
        if (!stored) return unexpected(context(stored.error(), base_name(path)));
        return stored;
    }

    Session& session_;
    Files& files_;
    PhotoVault& vault_;
    TakePhotos from_;
    Result<Stored> stored_ = fail(Errc::cancelled, "not begun");
};

// Finds out when each of several photos was taken, one a step, and gives them back in that order.
class OrderTask final : public Task {
public:
    OrderTask(Session& session, TakePhotos from)
        : session_(session), files_(session.parts_.files), from_(std::move(from)) {}

    bool step() override {
        seen_.push_back(photo_when(files_, from_.paths[seen_.size()]));
        return seen_.size() == from_.paths.size();
    }
    void done() override {
        from_.paths = in_order(std::move(seen_));
        session_.ordered(from_);
    }

private:
    Session& session_;
    Files& files_;
    TakePhotos from_;
    std::vector<PhotoWhen> seen_;
};

// Packs a copy of the job.
class PacketTask final : public Task {
public:
    PacketTask(Session& session, std::vector<PacketFacts> earlier)
        : session_(session),
          parts_(session.parts_),
          vault_(*session.vault_),
          job_(session.job_),
          visits_(session.judge_->earlier(session.job_)),
          paper_(session.settings_.paper),
          earlier_(std::move(earlier)),
          book_folder_(session.folder_),
          out_(session.packet_folder()) {}

    bool step() override {
        packed_ = make();
        return true;
    }
    void done() override { session_.packet_came(job_.id(), std::move(packed_)); }

private:
    Result<Packed> make() {
        COTTER_TRY(parts_.files.make_folders(out_));
        COTTER_ASSIGN(const auto key,
                      DeviceKey::load_or_make(parts_.files, parts_.random, join_path(book_folder_, "device_key"),
                                              "cotter device key"));
        COTTER_ASSIGN(const PackRules rules, load_pack_rules(parts_.files, parts_.share));
        const PackTools tools{parts_.files,
                              parts_.workers,
                              vault_,
                              key,
                              rules.font,
                              rules.font_bold,
                              parts_.software,
                              rules.judging.limits,
                              rules.judging.inspection,
                              rules.rechecks,
                              paper_};
        return pack(tools, job_, earlier_, out_, visits_);
    }

    Session& session_;
    SessionParts parts_;
    PhotoVault& vault_;
    Job job_;
    std::vector<Job> visits_;  // to the same trailer, before
    Paper paper_;
    std::vector<PacketFacts> earlier_;
    std::string book_folder_, out_;
    Result<Packed> packed_ = fail(Errc::cancelled, "not begun");
};

namespace {

bool holds_photo(const Job& job, const std::string& sha256) {
    return std::any_of(job.all<Shot>().begin(), job.all<Shot>().end(),
                       [&](const Shot& s) { return s.photo.sha256 == sha256; });
}

}  // namespace

void Session::act(const TakePhotos& c) {
    if (!has_job()) return tell("no job is open", true);
    if (!work_) not_taken_.clear();
    intake_job_ = job_.id();
    if (!work_) work_ = Work{"Taking in photos", "", 0, 0};
    work_->total += c.paths.size();
    if (c.paths.size() < 2) return queue(c);
    ordering_ += 1;
    work_->detail = "looking at their times";
    parts_.tasks.start(std::make_unique<OrderTask>(*this, c));
}

void Session::ordered(const TakePhotos& c) {
    if (ordering_ == 0) return;  // cancelled meanwhile
    ordering_ -= 1;
    queue(c);
}

void Session::queue(const TakePhotos& c) {
    const bool idle = intake_.empty();
    for (const std::string& path : c.paths) intake_.push_back({{path}, c.place, c.slot, c.stage, c.show});
    if (idle) next_photo();
}

void Session::next_photo() {
    if (intake_.empty()) {
        if (ordering_ == 0) work_.reset();
        return;
    }
    work_->detail = fmt::format("{} of {}", work_->done + 1, work_->total);
    parts_.tasks.start(std::make_unique<PhotoTask>(*this, intake_.front()));
}

void Session::photo_came(const TakePhotos& from, Result<Stored> stored) {
    if (!intake_.empty()) intake_.pop_front();
    if (work_) work_->done += 1;
    if (stored) {
        Shot shot;
        shot.place = from.place;
        shot.slot = from.slot;
        shot.stage = from.stage;
        shot.photo = photo_ref(*stored);
        shot.original_name = one_line(base_name(from.paths.front()), 250);
        if (intake_job_ != job_.id())
            not_taken_.push_back(one_line(base_name(from.paths.front()), 80) +
                                 ": another job was opened meanwhile; take it in again there");
        else if (holds_photo(job_, shot.photo.sha256))
            not_taken_.push_back(one_line(base_name(from.paths.front()), 80) + ": it is in this job already");
        else
            keep_shot(std::move(shot), from.show);
    } else {
        not_taken_.push_back(one_line(stored.error().line(), 400));
        tell(stored.error());
    }
    next_photo();
}

void Session::keep_shot(Shot shot, bool show) {
    const std::size_t before = job_.all<Shot>().size();
    commit(changes_of(job_, PutShot{std::move(shot)}, stamp()));
    if (!show || job_.all<Shot>().size() <= before || route().screen != Screen::intake) return;
    const Shot& kept = job_.all<Shot>().back();
    nav_.replace({Screen::photo, kept.place, kept.id.text()});
}

void Session::act(const CancelWork&) {
    const bool was_ordering = std::exchange(ordering_, 0) > 0;
    if (!intake_.empty()) intake_.erase(intake_.begin() + 1, intake_.end());  // the first is under way
    if (work_) work_->total = work_->done + intake_.size();
    if (was_ordering && intake_.empty()) work_.reset();
}

void Session::act(const ExportPacket&) {
    if (!has_job() || work_) return;
    std::vector<PacketFacts> earlier;
    for (const PacketMade& p : packets_)
        earlier.push_back({p.revision, p.content_sha256, p.tagmanifest_sha256, p.name});
    work_ = Work{"Making the packet", fmt::format("{} photos", job_.all<Shot>().size()), 0, 0};
    parts_.tasks.start(std::make_unique<PacketTask>(*this, std::move(earlier)));
}

void Session::packet_came(const JobId& job, Result<Packed> packed) {
    work_.reset();
    if (!packed) return tell(packed.error());
    if (!packed->unchanged) {
        const PacketFacts& f = packed->facts;
        const auto noted =
            book_->record_packet({job, f.revision, f.content_sha256, f.tagmanifest_sha256, f.name, parts_.clock.now()});
        if (!noted) return tell(noted.error());
    }
    if (job != job_.id()) return;
    if (auto made = book_->packets(job)) packets_ = std::move(*made);
    tell(packed->unchanged ? "nothing changed since this packet was made" : "the packet is made and checked");
    packed_ = std::move(*packed);
}

}  // namespace cotter
