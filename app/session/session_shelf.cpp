// The price shelf: offers that are remembered across jobs. See session.h.
#include <fmt/format.h>

#include "app/session/session.h"
#include "core/quote/shelf.h"

namespace cotter {

void Session::list_shelf() {
    auto all = book_->shelf()->all();
    if (!all) return tell(all.error());
    shelf_ = std::move(*all);
}

void Session::act(const KeepOffer& c) {
    const Stamp s = stamp();
    Offer offer = c.offer;
    const bool fresh = offer.id.nil();
    if (fresh) offer.id = s.new_id<Offer>();
    if (!offer.seen) offer.seen = s.at.local_date();
    offer.at = s.at;
    offer.by = s.by;
    if (const auto kept = book_->shelf()->keep({offer}); !kept) return tell(kept.error());
    list_shelf();
    drafts_.open().offer.reset();
    if (fresh && has_job()) commit(changes_of(job_, PutOffer{taken_into_job(offer, s.at, s.by, s.random)}, s));
}

void Session::act(const TakeOffers& c) {
    constexpr std::uint64_t kLargest = 32u << 20;
    offers_refused_.clear();
    const auto bytes = read_file(parts_.files, c.path, kLargest);
    if (!bytes) return tell(bytes.error());
    const Stamp s = stamp();
    const auto read = offers_from_csv(as_text(*bytes), s.at, s.by, s.random);
    if (!read) return tell(context(read.error(), base_name(c.path)));
    for (const CsvProblem& problem : read->problems)
        offers_refused_.push_back(fmt::format("Line {}: {}", problem.line, problem.what));
    if (const auto kept = book_->shelf()->keep(read->offers); !kept) return tell(kept.error());
    list_shelf();
    const std::size_t taken = read->offers.size(), left = read->problems.size();
    tell(fmt::format("{} {} taken onto the shelf{}", taken, taken == 1 ? "offer" : "offers",
                     left == 0 ? "" : fmt::format(", {} {} not", left, left == 1 ? "line was" : "lines were")),
         taken == 0);
}

// Beside the packets, as both are for other programs.
void Session::act(const WriteOffers&) {
    if (shelf_.empty()) return tell("the shelf is empty", true);
    const std::string folder = packet_folder();
    const std::string path = join_path(folder, fmt::format("price-shelf_{}.csv", now().local_date().text()));
    const std::string csv = offers_to_csv(shelf_);
    auto done = parts_.files.make_folders(folder);
    if (done) done = replace_file(parts_.files, path, as_bytes(csv));
    if (!done) return tell(done.error());
    if (device_->picks()) return device_->hand_out(path);
    tell(fmt::format("{} {} written to {}", shelf_.size(), shelf_.size() == 1 ? "offer" : "offers", path));
}

void Session::act(const AnswerQuote& c) {
    commit(changes_of(job_, c, stamp()));
    if (!failed_) drafts_.open().answer.reset();
}

void Session::act(const ForgetOffer& c) {
    if (const auto gone = book_->shelf()->forget(c.offer); !gone) return tell(gone.error());
    list_shelf();
    tell("the offer was taken off the shelf; jobs keep theirs");
}

}  // namespace cotter
