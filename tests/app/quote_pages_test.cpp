// The pages about prices, by hand from finding to signature: needs, offers, quotes, why one is dearer, the answer.
#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>

#include "app/driver/audit.h"
#include "app/views/compare_view.h"
#include "app/views/customer_view.h"
#include "app/views/hand_over_view.h"
#include "app/views/quote_view.h"
#include "app/views/shelf_view.h"
#include "core/quote/answer.h"
#include "tests/app/app_bench.h"

using namespace cotter;

namespace {

struct QuoteBench : AppBench {
    explicit QuoteBench(Point at = {412, 915}) : AppBench(at) { start_tandem(); }

    void put_finding(const char* component, const char* defect, Grade grade) {
        FindingDraft draft;
        draft.place = Place::corner(1, Side::left);
        draft.component = component;
        draft.defect = defect;
        draft.grade = grade;
        apply(PutFinding{draft});
    }
    void put_offer(const char* supplier, const char* item, int covered, std::int64_t price, int days) {
        Offer offer;
        offer.supplier = supplier;
        offer.title = item;
        offer.covers = {{item, corners(covered)}};
        offer.price = price;
        offer.lead_days = days;
        apply(KeepOffer{offer});
    }
    // Worn pads and a leaking seal, two suppliers for each: one cheap and slow, one dear and at once.
    void put_prices() {
        put_finding("brake pad", "worn", Grade::repair);
        put_finding("hub seal", "leaks", Grade::do_not_tow);
        put_offer("Feldrain Parts (invented)", "brake pads", 2, 6'950, 3);
        put_offer("Corner Counter (invented)", "brake pads", 1, 4'400, 0);
        put_offer("Feldrain Parts (invented)", "hub seal", 1, 1'150, 3);
        put_offer("Corner Counter (invented)", "hub seal", 1, 1'900, 0);
    }
    void work_out() {
        apply(DeriveNeeds{});
        apply(DraftQuotes{terms_of(session().settings().shop, clock.at.local_date())});
    }
    const Quote& quote(Aim aim) {
        for (const Quote& q : job().all<Quote>())
            if (q.aim == aim && q.state != QuoteState::changed) return q;
        FAIL("no such quote");
        return job().all<Quote>().front();
    }
    void go(Screen screen, const std::string& record = {}) {
        apply(GoTo{{screen, {}, record}});
        host->stage().happened();
        hands->settle();
    }
    void pass_audit() {
        const auto found = audit(log(), size.x, size.y);
        CHECK_MESSAGE(found.empty(), (found.empty() ? std::string() : found.front()));
    }
};

}  // namespace

TEST_CASE("from findings to quotes: needs, then one quote for each aim, dearest and soonest apart") {
    QuoteBench bench;
    bench.put_prices();
    CHECK(bench.session().shelf().size() == 4);
    CHECK(bench.job().all<Offer>().size() == 4);
    bench.go(Screen::quotes);
    REQUIRE(bench.tap("Take from the findings"));
    const auto needed = [&](const char* item) {
        const auto& needs = bench.job().all<Need>();
        return std::any_of(needs.begin(), needs.end(), [&](const Need& n) { return n.item == item; });
    };
    REQUIRE((needed("brake pads") && needed("hub seal")));
    bench.pass_audit();
    REQUIRE(bench.tap("Work out"));
    CHECK(bench.quote(Aim::cheapest).total_high == 6'950 + 1'150);
    CHECK(bench.quote(Aim::soonest).total_high == 2 * 4'400 + 1'900);
    CHECK(bench.quote(Aim::soonest).ready_days == 0);
    bench.apply(UndoStep{});
    CHECK(bench.job().all<Quote>().empty());
}

TEST_CASE("a need is left out and taken in again; nothing is bought for it meanwhile") {
    QuoteBench bench;
    bench.put_prices();
    bench.apply(DeriveNeeds{});
    const auto seal = std::find_if(bench.job().all<Need>().begin(), bench.job().all<Need>().end(),
                                   [](const Need& n) { return n.item == "hub seal"; });
    REQUIRE(seal != bench.job().all<Need>().end());
    const Need before = *seal;
    bench.apply(LeaveOutNeed{before.id, true});
    CHECK(bench.job().find(before.id)->left_out);
    CHECK(bench.job().find(before.id)->wanted == before.wanted);
    bench.apply(DeriveNeeds{});
    CHECK(bench.job().find(before.id)->left_out);
    bench.work_out();
    CHECK(bench.quote(Aim::cheapest).total_high == 6'950);
    bench.apply(LeaveOutNeed{before.id, false});
    CHECK(bench.job().find(before.id)->wanted == before.wanted);
    CHECK_FALSE(bench.job().find(before.id)->by_hand);
}

TEST_CASE("the number of a need is changed with the keypad and stays as it was said") {
    QuoteBench bench;
    bench.put_prices();
    bench.apply(DeriveNeeds{});
    bench.go(Screen::quotes);
    REQUIRE(bench.tap("Hub seal"));
    REQUIRE(bench.tap("Change the number"));
    REQUIRE(bench.tap("4"));
    REQUIRE(bench.tap("Done"));
    const auto& needs = bench.job().all<Need>();
    CHECK(std::any_of(needs.begin(), needs.end(),
                      [](const Need& n) { return n.item == "hub seal" && n.by_hand && n.wanted == corners(4); }));
    bench.apply(DraftQuotes{});
    CHECK(bench.quote(Aim::cheapest).total_high == 6'950 + 4 * 1'150);
}

TEST_CASE("drafts are worked out anew in place; an offered quote stays, a change of it is a new version") {
    QuoteBench bench;
    bench.put_prices();
    bench.work_out();
    const Quote first = bench.quote(Aim::cheapest);
    bench.apply(OfferQuote{first.id});
    REQUIRE(bench.job().find(first.id)->state == QuoteState::offered);
    CHECK_FALSE(bench.job().find(first.id)->fingerprint.empty());
    const Id<Quote> soonest = bench.quote(Aim::soonest).id;
    bench.put_offer("Third (invented)", "brake pads", 2, 1'000, 0);
    bench.apply(DraftQuotes{});
    CHECK(bench.job().find(first.id)->total_high == first.total_high);
    CHECK(bench.quote(Aim::soonest).id == soonest);
    CHECK(bench.quote(Aim::soonest).total_high == 1'000 + 1'900);
    bench.apply(RenewQuote{first.id});
    CHECK(bench.job().find(first.id)->state == QuoteState::changed);
    CHECK(bench.quote(Aim::cheapest).version == 2);
    bench.apply(RemoveQuote{first.id});
    CHECK(bench.job().find(first.id) != nullptr);
}

TEST_CASE("why one is dearer: the reasons shown add up to the difference") {
    QuoteBench bench;
    bench.put_prices();
    bench.work_out();
    bench.go(Screen::compare);
    const CompareView view = compare_view(bench.session());
    CHECK(view.a == bench.quote(Aim::soonest).id.text());
    CHECK(view.headline == "Soonest is 26.00 dearer than cheapest");
    CHECK(view.sum == "107.00 − 81.00 = +26.00");
    REQUIRE(view.reasons.size() == 2);
    CHECK(view.reasons[0].amount == "+18.50");
    CHECK(view.reasons[1].amount == "+7.50");
    bench.pass_audit();
    bench.apply(GoInstead{{Screen::compare, {}, view.a + " " + view.a}});
    CHECK_FALSE(compare_view(bench.session()).problem.empty());
}

TEST_CASE("the customer offers, answers line by line, signs; a killed app comes back to the half-given answer") {
    QuoteBench bench;
    bench.put_prices();
    bench.work_out();
    const Id<Quote> id = bench.quote(Aim::cheapest).id;
    bench.go(Screen::customer, id.text());
    CHECK_FALSE(bench.log().shows("Answer and sign"));
    REQUIRE(bench.tap("Offer this price"));
    REQUIRE(bench.job().find(id)->state == QuoteState::offered);
    REQUIRE(bench.tap("Yes", 1));
    REQUIRE(bench.tap("No", 2));
    bench.pass_audit();
    bench.close();
    bench.reopen();
    bench.show();
    bench.hands->settle();
    CHECK(customer_view(bench.session()).answer.accepted == std::vector<int>{1});
    CHECK(customer_view(bench.session()).danger == "Do not tow: Hub seal: leaks");
    REQUIRE(bench.tap("Answer and sign"));
    bench.pass_audit();
    Drafts drafts = bench.session().drafts();
    drafts.answer->name = "M. Grün";
    drafts.answer->signature = {{{{0.1, 0.5}, {0.4, 0.2}}}};
    bench.apply(KeepDrafts{drafts});
    bench.host->stage().happened();
    bench.hands->settle();
    REQUIRE(bench.tap("That is my answer"));
    REQUIRE(bench.job().all<Decision>().size() == 2);
    const Decision& yes = bench.job().all<Decision>()[0];
    CHECK(yes.said == Said::accepted);
    CHECK(yes.lines == std::vector<int>{1});
    CHECK(yes.name == "M. Grün");
    CHECK(yes.signature.size() == 1);
    CHECK(yes.fingerprint == bench.job().find(id)->fingerprint);
    CHECK(declined_lines(bench.job()).size() == 1);
    REQUIRE(hand_over_view(bench.session()).told.size() == 1);
    CHECK(hand_over_view(bench.session()).told[0].find("declined by M. Grün") != std::string::npos);
    CHECK_FALSE(bench.session().drafts().answer.has_value());
}

TEST_CASE("an answer without a name, without lines, or to a draft is refused") {
    QuoteBench bench;
    bench.put_prices();
    bench.work_out();
    AnswerDraft answer;
    answer.quote = bench.quote(Aim::cheapest).id.text();
    answer.accepted = {1};
    answer.name = "M. Grün";
    bench.apply(AnswerQuote{answer});
    CHECK(bench.job().all<Decision>().empty());
    bench.apply(OfferQuote{bench.quote(Aim::cheapest).id});
    answer.name.clear();
    bench.apply(AnswerQuote{answer});
    CHECK(bench.job().all<Decision>().empty());
    answer.name = "M. Grün";
    answer.accepted.clear();
    bench.apply(AnswerQuote{answer});
    CHECK(bench.job().all<Decision>().empty());
    CHECK(bench.session().notice()->error);
}

TEST_CASE("an offer is entered by taps and keypad, kept on the shelf and taken into the job") {
    QuoteBench bench;
    bench.put_finding("brake pad", "worn", Grade::repair);
    bench.apply(DeriveNeeds{});
    bench.put_offer("Feldrain Parts (invented)", "hub seal", 1, 1'150, 3);
    bench.go(Screen::quotes);
    REQUIRE(bench.tap("Add an offer"));
    bench.pass_audit();
    REQUIRE(bench.tap("brake pads"));
    REQUIRE(bench.tap("2 corners"));
    REQUIRE(bench.tap("Feldrain Parts (invented)"));
    REQUIRE(bench.tap("One pack"));
    for (const char* key : {"6", "9", ".", "5"}) REQUIRE(bench.tap(key));
    REQUIRE(bench.tap("Done"));
    REQUIRE(bench.tap("Keep this offer"));
    REQUIRE(bench.session().shelf().size() == 2);
    REQUIRE(bench.job().all<Offer>().size() == 2);
    CHECK(bench.job().all<Offer>()[1].price == 6'950);
    CHECK(bench.job().all<Offer>()[1].covers[0].extent == corners(2));
    CHECK(bench.session().route().screen == Screen::quotes);
    CHECK_FALSE(bench.session().drafts().offer.has_value());
}

TEST_CASE("the shelf says how old a price is; an old one is to be asked again") {
    QuoteBench bench;
    bench.put_offer("Feldrain Parts (invented)", "hub seal", 1, 1'150, 3);
    bench.clock.at.unix_s += 100 * 86'400;
    const ShelfView view = shelf_view(bench.session());
    REQUIRE(view.rows.size() == 1);
    CHECK(view.rows[0].old);
    CHECK(view.rows[0].in_job);
    bench.go(Screen::shelf);
    bench.pass_audit();
    bench.apply(ForgetOffer{view.rows[0].offer.id});
    CHECK(bench.session().shelf().empty());
    CHECK(bench.job().all<Offer>().size() == 1);
}

TEST_CASE("an offer that was entered by mistake is taken out of the job by a tap, unless a quote buys from it") {
    QuoteBench bench;
    bench.put_offer("Feldrain Parts (invented)", "hub seal", 1, 1'150, 3);
    bench.go(Screen::shelf);
    const std::string title = shelf_view(bench.session()).in_job.at(0).title;
    const auto tap_in_job = [&] { REQUIRE(bench.tap(title, 2)); };  // the first one is the shelf's
    tap_in_job();
    bench.pass_audit();
    REQUIRE(bench.tap("Take it out of this job"));
    CHECK(bench.job().all<Offer>().empty());
    CHECK(bench.session().shelf().size() == 1);
    REQUIRE(bench.tap("Undo"));
    REQUIRE(bench.job().all<Offer>().size() == 1);
    bench.put_finding("hub seal", "leaks", Grade::repair);
    bench.apply(DeriveNeeds{});
    bench.apply(DraftByHand{{}, {1}});
    bench.go(Screen::shelf);
    CHECK(shelf_view(bench.session()).in_job.at(0).quote == "by hand");
    tap_in_job();
    CHECK(bench.log().shows("The quote 'by hand' buys from it."));
    REQUIRE(bench.log().find("Take it out of this job").size() == 1);
    CHECK_FALSE(bench.log().find("Take it out of this job")[0]->enabled);
}

TEST_CASE("packs by hand make a quote of their own; nothing chosen is refused") {
    QuoteBench bench;
    bench.put_prices();
    bench.apply(DeriveNeeds{});
    bench.apply(DraftByHand{{}, {0, 0, 0, 0}});
    CHECK(bench.job().all<Quote>().empty());
    bench.apply(DraftByHand{{}, {1, 0, 0, 1}});
    CHECK(bench.quote(Aim::by_hand).total_high == 6'950 + 1'900);
}

TEST_CASE("something needed without a finding is added by chip or by word, with its number") {
    QuoteBench bench;
    bench.go(Screen::quotes);
    REQUIRE(bench.tap("Add something needed"));
    bench.pass_audit();
    REQUIRE(bench.tap("calipers"));
    REQUIRE(bench.tap("How much of it?"));
    REQUIRE(bench.tap("2"));
    REQUIRE(bench.tap("Done"));
    REQUIRE(bench.job().all<Need>().size() == 1);
    const Need& need = bench.job().all<Need>()[0];
    CHECK(need.item == "calipers");
    CHECK(need.by_hand);
    CHECK(need.wanted == corners(2));
    CHECK(need.findings.empty());
}

TEST_CASE("a change that is refused leaves the user on the page") {
    QuoteBench bench;
    bench.put_prices();
    bench.work_out();
    bench.go(Screen::quotes);
    const Id<Quote> id = bench.quote(Aim::cheapest).id;
    bench.go(Screen::quote, id.text());
    bench.apply(OfferQuote{id});
    bench.apply(RemoveQuote{id});
    bench.apply(GoBackIfDone{});
    CHECK(bench.session().notice()->error);
    CHECK(bench.session().route().screen == Screen::quote);
    bench.apply(RenewQuote{id});
    bench.apply(GoBackIfDone{});
    CHECK(bench.session().route().screen == Screen::quotes);
    bench.go(Screen::offer);
    Offer without_supplier;
    without_supplier.title = "brake pads";
    bench.apply(KeepOffer{without_supplier});
    bench.apply(GoBackIfDone{});
    CHECK(bench.session().route().screen == Screen::offer);
}

TEST_CASE("the shelf goes to a CSV file and comes back from it; lines that do not read are said") {
    QuoteBench bench;
    bench.put_offer("Feldrain Parts (invented)", "hub seal", 1, 1'150, 3);
    bench.put_offer("Corner Counter (invented)", "brake pads", 2, 6'950, 0);
    bench.apply(WriteOffers{});
    const std::string path = join_path(bench.session().packet_folder(), "price-shelf_2026-05-14.csv");
    CAPTURE(path);
    CHECK(bench.session().notice()->text.find(path) != std::string::npos);
    const Bytes written = read_file(*bench.files, path, 1 << 20).value();
    const std::vector<Offer> before = bench.session().shelf();
    for (const Offer& offer : before) bench.apply(ForgetOffer{offer.id});
    REQUIRE(bench.session().shelf().empty());
    bench.apply(TakeOffers{path});
    CHECK_FALSE(bench.session().notice()->error);
    REQUIRE(bench.session().shelf().size() == 2);
    CHECK(bench.session().shelf()[0].price + bench.session().shelf()[1].price == 8'100);

    const std::string bad = join_path(bench.session().packet_folder(), "bad.csv");
    std::string text(as_text(written));
    text += "Third,hub seal,1 corners of hub seal,abc,USD\r\n";
    REQUIRE(replace_file(*bench.files, bad, as_bytes(text)));
    bench.apply(TakeOffers{bad});
    REQUIRE(bench.session().offers_refused().size() == 1);
    CHECK(bench.session().offers_refused()[0].starts_with("Line 4: "));
    bench.go(Screen::offers_file);
    bench.pass_audit();
    bench.apply(TakeOffers{"/nowhere.csv"});
    CHECK(bench.session().notice()->error);
}
