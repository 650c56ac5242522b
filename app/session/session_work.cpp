// What the session has done beside the screen: photos taken in, the packet made. See session.h.
#include <algorithm>

#include <fmt/format.h>

#include "app/session/session.h"
#include "core/base/text.h"

namespace cotter {

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
    if (!work_) work_ = RunningWork{"Taking in photos", "", 0, 0};
    work_->total += c.paths.size();
    if (c.paths.size() < 2) return queue(c);
    ordering_ += 1;
    work_->detail = "looking at their times";
    long_work().order(c.paths, [this, c](std::vector<std::string> paths) {
        TakePhotos in_order = c;
        in_order.paths = std::move(paths);
        ordered(in_order);
        came();
    });
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
    long_work().take_in(intake_.front().paths.front(), [this, from = intake_.front()](Result<PhotoRef> photo) {
        photo_came(from, std::move(photo));
        came();
    });
}

void Session::photo_came(const TakePhotos& from, Result<PhotoRef> photo) {
    if (!intake_.empty()) intake_.pop_front();
    if (work_) work_->done += 1;
    if (photo) {
        Shot shot;
        shot.place = from.place;
        shot.slot = from.slot;
        shot.stage = from.stage;
        shot.photo = std::move(*photo);
        shot.original_name = one_line(base_name(from.paths.front()), 250);
        if (intake_job_ != job_.id())
            not_taken_.push_back(one_line(base_name(from.paths.front()), 80) +
                                 ": another job was opened meanwhile; take it in again there");
        else if (holds_photo(job_, shot.photo.sha256))
            not_taken_.push_back(one_line(base_name(from.paths.front()), 80) + ": it is in this job already");
        else
            keep_shot(std::move(shot), from.show);
    } else {
        not_taken_.push_back(one_line(photo.error().line(), 400));
        tell(photo.error());
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
    work_ = RunningWork{"Making the packet", fmt::format("{} photos", job_.all<Shot>().size()), 0, 0};
    long_work().pack({job_, judge_->earlier(job_), std::move(earlier), settings_.paper, packet_folder()},
                     [this, job = job_.id()](Result<Packed> packed) {
                         packet_came(job, std::move(packed));
                         came();
                     });
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
