// The price shelf in the book's own file.
#include <fmt/format.h>

#include "core/book/book.h"
#include "core/store/sqlite.h"
#include "core/quote/exact.h"
#include "core/quote/shelf.h"
#include "core/survey/json.h"

namespace cotter {

namespace {

Result<> check_offer(const Offer& offer) {
    const auto refuse = [&](const char* what) { return fail(Errc::refused, what, offer.title); };
    if (offer.id.nil()) return refuse("the offer has no id");
    if (offer.supplier.empty() || offer.title.empty()) return refuse("an offer names its supplier and what is offered");
    for (const std::int64_t amount : {offer.price, offer.core, offer.freight})
        if (amount < 0 || amount > kLargestAmount) return refuse("a price is below zero or too large");
    if (!offer.seen) return refuse("it is not said on which day the price was seen");
    const std::string json = record_json(Record{offer});
    const auto again = record_from_json(RecordKind::offer, json);
    if (!again || !(*again == Record{offer})) return refuse("the offer holds a value that cannot be written down");
    return {};
}

class BookShelf final : public PriceShelf {
public:
    explicit BookShelf(Sqlite& db) : db_(db) {}

    Result<> keep(const std::vector<Offer>& offers) override {
        COTTER_ASSIGN(Transaction transaction, Transaction::begin(db_));
        for (Offer offer : offers) {
            offer.shot.reset();
            COTTER_TRY(check_offer(offer));
            COTTER_TRY(
                db_.run("INSERT INTO shelf(id, seen, body) VALUES(?, ?, ?) ON CONFLICT(id) DO UPDATE SET "
                        "seen=excluded.seen, body=excluded.body",
                        {offer.id.text(), offer.seen->text(), record_json(Record{offer})}));
        }
        return transaction.commit();
    }

    Result<> forget(const Id<Offer>& offer) override {
        COTTER_ASSIGN(const auto there, db_.integer("SELECT count(*) FROM shelf WHERE id=?", {offer.text()}));
        if (there == 0) return fail(Errc::not_found, "there is no such offer on the shelf", offer.text());
        return db_.run("DELETE FROM shelf WHERE id=?", {offer.text()});
    }

    Result<std::vector<Offer>> all() override {
        std::vector<Offer> out;
        COTTER_ASSIGN(Statement rows, db_.query("SELECT id, body FROM shelf ORDER BY seen DESC, id"));
        for (;;) {
            COTTER_ASSIGN(const bool more, rows.next());
            if (!more) return out;
            auto record = record_from_json(RecordKind::offer, rows.text(1));
            if (!record)
                return fail(Errc::damaged, fmt::format("an offer cannot be understood ({})", record.error().line()),
                            "shelf " + rows.text(0), "put back the last good copy");
            out.push_back(std::move(std::get<Offer>(*record)));
        }
    }

private:
    Sqlite& db_;
};

}  // namespace

std::unique_ptr<PriceShelf> Book::shelf() {
    return std::make_unique<BookShelf>(*db_);
}

}  // namespace cotter
