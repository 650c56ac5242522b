// The price shelf: offers that are remembered across jobs. See session.h.
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
    drafts_.offer.reset();
    if (fresh && has_job()) commit(changes_of(job_, PutOffer{taken_into_job(offer, s.at, s.by, s.random)}, s));
}

void Session::act(const ForgetOffer& c) {
    if (const auto gone = book_->shelf()->forget(c.offer); !gone) return tell(gone.error());
    list_shelf();
    tell("the offer was taken off the shelf; jobs keep theirs");
}

}  // namespace cotter
