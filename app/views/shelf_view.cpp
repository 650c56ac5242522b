// See shelf_view.h.
#include "app/views/shelf_view.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/quote/exact.h"
#include "core/quote/shelf.h"

namespace cotter {

namespace {

bool same_offer(const Offer& a, const Offer& b) {
    return a.supplier == b.supplier && a.title == b.title && a.price == b.price && a.covers == b.covers &&
           a.seen == b.seen;
}

void add(std::vector<std::string>& list, const std::string& text, std::size_t most) {
    if (list.size() < most && !text.empty() && std::find(list.begin(), list.end(), text) == list.end())
        list.push_back(text);
}

std::string price_of(const Offer& offer) {
    return fmt::format("{} {}", money_text(offer.price), offer.currency);
}

// The quote of the job that buys from an offer.
std::string buyer_of(const Job& job, const Id<Offer>& offer) {
    for (const Quote& quote : job.all<Quote>())
        for (const QuoteLine& line : quote.lines)
            if (line.offer == offer) return quote.name;
    return {};
}

std::string missing_of(const Offer& offer) {
    if (offer.covers.empty() || offer.covers[0].item.empty()) return "Say what it is for.";
    if (offer.covers[0].extent.amount.number.value() <= 0) return "Say how much one pack covers.";
    if (offer.supplier.empty()) return "Say who sells it.";
    if (offer.price == 0) return "Enter its price.";
    return {};
}

}  // namespace

std::string covers_words(const Offer& offer) {
    std::string out;
    for (const Cover& cover : offer.covers)
        out += fmt::format("{}{} of {}", out.empty() ? "" : "; ", extent_text(cover.extent), cover.item);
    return out.empty() ? "does not say what it covers" : out;
}

ShelfView shelf_view(const Session& session) {
    const Job& job = session.job();
    const Date today = session.now().local_date();
    ShelfView view;
    view.chrome = chrome_of(session, "Price shelf", "Offers this device remembers");
    const std::vector<Offer>& in_job = job.all<Offer>();
    for (const Offer& offer : in_job)
        view.in_job.push_back({offer.id, upper_first(offer.title),
                               fmt::format("{}, {}", offer.supplier, covers_words(offer)), price_of(offer),
                               buyer_of(job, offer.id)});
    if (!session.device().picks()) view.folder = session.packet_folder();
    for (const Offer& offer : session.shelf()) {
        ShelfRow row;
        row.offer = offer;
        row.title = upper_first(offer.title);
        row.under = fmt::format("{}, {}, {}", offer.supplier, covers_words(offer), age_text(offer.seen, today));
        row.old = is_old(offer.seen, today);
        if (row.old) row.under += ": ask again";
        row.price = price_of(offer);
        row.in_job = std::any_of(in_job.begin(), in_job.end(), [&](const Offer& o) { return same_offer(o, offer); });
        view.rows.push_back(std::move(row));
    }
    return view;
}

OffersFileView offers_file_view(const Session& session) {
    OffersFileView view;
    view.chrome = chrome_of(session, "Offers from a file", "A CSV file, as a spreadsheet writes it");
    view.folder = parent_folder(parent_folder(session.packet_folder()));
    view.picks = session.device().picks();
    view.offset_min = session.now().offset_min;
    view.refused = session.offers_refused();
    return view;
}

bool csv_name(std::string_view name) {
    return ascii_lower(name).ends_with(".csv");
}

OfferView offer_view(const Session& session) {
    const Job& job = session.job();
    OfferView view;
    view.chrome = chrome_of(session, "An offer", "Who sells it, what it covers, what it costs");
    view.drafts = session.drafts();
    view.offer = view.drafts.offer.value_or(Offer{});
    if (!view.drafts.offer) view.offer.currency = session.settings().shop.currency;
    for (const Offer& o : session.shelf()) add(view.suppliers, o.supplier, 6);
    for (const Offer& o : job.all<Offer>()) add(view.suppliers, o.supplier, 6);
    for (const Need& need : job.all<Need>()) add(view.items, need.item, 12);
    if (view.items.empty())
        for (const ReplaceRule& rule : replace_rules()) add(view.items, std::string(rule.item), 8);
    const auto money = [](std::int64_t minor) { return minor == 0 ? std::string{} : money_text(minor); };
    view.price = money(view.offer.price);
    view.freight = money(view.offer.freight);
    view.core = money(view.offer.core);
    view.missing = missing_of(view.offer);
    return view;
}

}  // namespace cotter
