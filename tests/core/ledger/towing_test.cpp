// What the ledger says about towing: the same as the phone, for as long as it counts, and never on a stranger's word.
#include "tests/core/ledger/towing_bench.h"

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/judge/judge_job.h"
#include "core/store/sql.h"

using namespace cotter;
using namespace cotter::test;
using namespace cotter::ledger;

namespace {

constexpr std::int64_t kDay = 86'400;

const char* const kNothing = "nothing found against it";

std::string outcome_of(const TowLine& tow) {
    return std::string(name_of(tow.outcome));
}

std::int64_t waiting(LedgerBench& bench) {
    return good(bench.ledger->fleet_counts()).waiting;
}

// What the phone says of these visits, the newest last.
Summary on_the_phone(const std::vector<Job>& visits, const LedgerBench& bench) {
    return judge_job(visits.back(), bench.judging.limits, {std::span(visits).first(visits.size() - 1), bench.clock.at});
}

void check_same(const TowLine& tow, const Summary& phone) {
    CHECK(outcome_of(tow) == name_of(phone.tow.outcome));
    CHECK(tow.says == one_line(phone.answer, 800));
    CHECK(tow.looked_at == phone.tow.looked_at);
    CHECK(tow.of == phone.tow.of);
    CHECK(tow.essential_open == phone.tow.essential_open);
    CHECK(tow.trip_check_due == phone.tow.trip_check_due);
    CHECK(tow.runs_out == phone.tow.runs_out);
}

}  // namespace

TEST_CASE("ledger towing: lists, the trailer's page and a search say what the phone says of the same visits") {
    on_each_engine([](LedgerBench& bench) {
        const AnswerYard first = bad_visit("2026-03-02", 1);
        AnswerYard second = disc_yard(kYardDay, 2);
        second.leave_out(PointId::wheel_torque);
        second.all_good();
        take(bench, first);
        check_same(tow_of(bench), on_the_phone({first.job()}, bench));
        take(bench, second);
        const Summary phone = on_the_phone({first.job(), second.job()}, bench);
        check_same(tow_of(bench), phone);
        const TrailerLine trailer = the_trailer(bench);
        check_same(*good(bench.ledger->trailer(trailer.key)).trailer.tow, phone);
        const auto hits = good(bench.ledger->search({}));
        REQUIRE(hits.size() == 2);
        for (const Hit& hit : hits) check_same(hit.tow.value(), phone);
        CHECK_FALSE(trailer.tow->reason.empty());
        CHECK(trailer.tow->says.find(trailer.tow->reason) != std::string::npos);
    });
}

TEST_CASE("ledger towing: visits taken in in any order give the phone's answer") {
    on_each_engine([](LedgerBench& bench) {
        const OfficeShape shape{3, 0};
        ReceiveOptions options;
        options.trust = good(parse_allowed_signers(office_signers()));
        for (const int number : {7, 1, 4, 3, 6, 0, 8, 2, 5})
            bench.receive({bench.put(office_packet(number, shape, bench.photos))}, options);
        const auto trailers = good(bench.ledger->trailers(10, 0));
        REQUIRE(trailers.size() == 3);
        for (const TrailerLine& trailer : trailers) {
            std::vector<Job> visits;
            for (int number = 0; number < 9; ++number)
                if (Job job = office_job(number, shape); job.only<Trailer>()->unit == trailer.unit)
                    visits.push_back(std::move(job));
            REQUIRE(visits.size() == 3);
            check_same(trailer.tow.value(), on_the_phone(visits, bench));
        }
    });
}

TEST_CASE("ledger towing: 'nothing found against it' reads 'cannot tell' once it has run out, without a new packet") {
    on_each_engine([](LedgerBench& bench) {
        take(bench, good_visit());
        const TowLine at_first = tow_of(bench);
        CHECK(outcome_of(at_first) == kNothing);
        REQUIRE(at_first.runs_out);
        CHECK(at_first.runs_out->unix_s > bench.clock.at.unix_s);
        CHECK(at_first.runs_out->unix_s <= bench.clock.at.unix_s + kDay);  // tread and tires are looked at each day
        bench.clock.at.unix_s = at_first.runs_out->unix_s - 1;
        CHECK(outcome_of(tow_of(bench)) == kNothing);
        CHECK(good(bench.ledger->renew_answers(10)) == 0);

        bench.clock.at.unix_s = at_first.runs_out->unix_s;
        FleetAsk nothing;
        nothing.outcomes.push_back(TowOutcome::nothing_against);
        CHECK(good(bench.ledger->fleet(nothing)).empty());
        CHECK(good(bench.ledger->count(nothing)) == 0);
        CHECK_FALSE(the_trailer(bench).tow);
        CHECK_FALSE(good(bench.ledger->search({}))[0].tow);
        CHECK(good(bench.ledger->fleet_counts()).of[static_cast<std::size_t>(TowOutcome::nothing_against)] == 0);
        CHECK(waiting(bench) == 1);
        CHECK(outcome_of(*good(bench.ledger->trailer(the_trailer(bench).key)).trailer.tow) == "cannot tell");

        const TowLine later = renewed(bench);
        CHECK(outcome_of(later) == "cannot tell");
        CHECK(later.trip_check_due);
        CHECK(waiting(bench) == 0);
        CHECK(good(bench.ledger->fleet_counts()).trip_check_due == 1);
        CHECK(good(bench.ledger->receipts(10, 0)).size() == 1);
    });
}

TEST_CASE("ledger towing: a packet by a key that nobody accepted may forbid and never permits") {
    on_each_engine([](LedgerBench& bench) {
        AnswerYard half = disc_yard("2026-05-13", 1);
        half.leave_out(PointId::wheel_torque);
        half.all_good();
        take(bench, half);
        const TowLine before = tow_of(bench);
        CHECK(outcome_of(before) == "cannot tell");
        AnswerYard stranger = good_visit(kYardDay, 2);
        stranger.change_visit([](Visit& v) { v.technician = "N. Body"; });
        take(bench, stranger, {"N. Body"});
        CHECK(outcome_of(tow_of(bench)) == "cannot tell");
        CHECK(tow_of(bench).essential_open >= before.essential_open);
        CHECK(tow_of(bench).looked_at <= before.looked_at);
        AnswerYard worse = bad_visit(kYardDay, 3);
        worse.change_visit([](Visit& v) { v.technician = "N. Body"; });
        take(bench, worse, {"N. Body"});
        CHECK(outcome_of(tow_of(bench)) == "do not tow");
        CHECK(tow_of(bench).reason.find("one missing") != std::string::npos);
    });
}

TEST_CASE("ledger towing: a stranger's packet with fewer axles takes nothing out of what must be known") {
    on_each_engine([](LedgerBench& bench) {
        AnswerYard half = disc_yard("2026-05-13", 1);
        half.leave_out(PointId::wheel_torque, "axle2-left");
        half.all_good();
        take(bench, half);
        const TowLine before = tow_of(bench);
        CHECK(outcome_of(before) == "cannot tell");
        AnswerYard stranger({an_axle(BrakeKind::hydraulic_disc)}, Actuation::surge, kYardDay, 2);
        stranger.all_good();
        stranger.change_visit([](Visit& v) { v.technician = "N. Body"; });
        take(bench, stranger, {"N. Body"});
        CHECK(outcome_of(tow_of(bench)) == "cannot tell");
        CHECK(tow_of(bench).of >= before.of);
    });
}

TEST_CASE("ledger towing: without a trust list a key permits nothing until a person accepts it") {
    on_each_engine([](LedgerBench& bench) {
        take(bench, good_visit(), {kTechnician, false});
        CHECK(outcome_of(tow_of(bench)) == "cannot tell");
        CHECK(tow_of(bench).reason.find("signer") != std::string::npos);
        const auto packets = good(bench.ledger->trailer(the_trailer(bench).key)).packets;
        CHECK_FALSE(packets[0].accepted);
        good(bench.ledger->accept_key(packets[0].technician, packets[0].signer));
        CHECK(waiting(bench) == 1);
        CHECK(outcome_of(renewed(bench)) == kNothing);
        CHECK(good(bench.ledger->trailer(the_trailer(bench).key)).packets[0].accepted);
    });
}

TEST_CASE("ledger towing: once the trust list vouches for a key, what it signed before counts as well") {
    on_each_engine([](LedgerBench& bench) {
        take(bench, good_visit(kYardDay, 1), {kTechnician, false});
        CHECK(outcome_of(tow_of(bench)) == "cannot tell");
        AnswerYard other = good_visit(kYardDay, 2);
        other.change_trailer([](Trailer& t) {
            t.vin.clear();
            t.unit = "OTH-01";
        });
        take(bench, other);
        CHECK(waiting(bench) == 1);
        while (good(bench.ledger->renew_answers(10)) > 0) continue;
        FleetAsk nothing;
        nothing.outcomes.push_back(TowOutcome::nothing_against);
        CHECK(good(bench.ledger->count(nothing)) == 2);
    });
}

TEST_CASE("ledger towing: a revision changes the answer, either way") {
    on_each_engine([](LedgerBench& bench) {
        const std::string first = take(bench, good_visit());
        CHECK(outcome_of(tow_of(bench)) == kNothing);
        const std::string second = take(bench, bad_visit(), {kTechnician, true, 2, first});
        CHECK(outcome_of(tow_of(bench)) == "do not tow");
        take(bench, good_visit(), {kTechnician, true, 3, second});
        CHECK(outcome_of(tow_of(bench)) == kNothing);
    });
}

TEST_CASE("ledger towing: a held revision that forbids counts until a person chooses the packet shown") {
    on_each_engine([](LedgerBench& bench) {
        const std::string mine = take(bench, good_visit());
        const std::string theirs = take(bench, bad_visit(), {"a stranger", true, 2, mine});
        CHECK(bench.told[0].arrival == Arrival::held);
        CHECK(outcome_of(tow_of(bench)) == "do not tow");
        good(bench.ledger->choose(mine));
        CHECK(outcome_of(tow_of(bench)) == kNothing);
        take(bench, bad_visit(), {"a stranger", true, 3, theirs});  // nobody has looked at this one yet
        CHECK(outcome_of(tow_of(bench)) == "do not tow");
    });
}

TEST_CASE("ledger towing: of two packets that contradict each other the one not shown may forbid until one is chosen") {
    on_each_engine([](LedgerBench& bench) {
        const std::string mine = take(bench, good_visit());
        take(bench, bad_visit());
        CHECK(bench.told[0].arrival == Arrival::conflict);
        CHECK(outcome_of(tow_of(bench)) == "do not tow");
        good(bench.ledger->choose(mine));
        CHECK(outcome_of(tow_of(bench)) == kNothing);
    });
}

TEST_CASE("ledger towing: other rules are asked anew, and what the old ones said is not shown meanwhile") {
    on_each_engine([](LedgerBench& bench) {
        const AnswerYard yard = good_visit();
        take(bench, yard);
        CHECK(outcome_of(tow_of(bench)) == kNothing);
        bench.open();
        CHECK(waiting(bench) == 0);  // the same rules
        const std::vector<Limit> other = other_limits(bench);
        bench.rules.limits = other;
        bench.open();
        CHECK_FALSE(the_trailer(bench).tow);
        CHECK(waiting(bench) == 1);
        const TowLine by_others = renewed(bench);
        CHECK(outcome_of(by_others) ==
              name_of(answer_towing(yard.job(), {}, other, bench.clock.at, State::now).outcome));
        CHECK(outcome_of(by_others) != kNothing);
        bench.rules.limits = bench.judging.limits;
        bench.open();
        CHECK(outcome_of(renewed(bench)) == kNothing);
    });
}

TEST_CASE("ledger towing: a ledger from before has its answers made at the first look") {
    on_each_engine([](LedgerBench& bench) {
        take(bench, good_visit());
        SqlDb& db = bench.ledger->db();
        good(db.script("DROP TABLE towing; UPDATE setting SET value='1' WHERE name='version'"));
        if (db.engine() == SqlEngine::sqlite) good(db.script("PRAGMA user_version=1"));
        bench.open();
        CHECK_FALSE(the_trailer(bench).tow);
        CHECK(waiting(bench) == 1);
        CHECK(outcome_of(renewed(bench)) == kNothing);
        bench.open();
        CHECK(waiting(bench) == 0);
    });
}

TEST_CASE("ledger towing: answers are made anew a few at a time, and a clock set back makes them again") {
    on_each_engine([](LedgerBench& bench) {
        const OfficeShape shape{7, 0};
        for (int i = 0; i < 7; ++i) bench.put(office_packet(i, shape, bench.photos));
        REQUIRE(bench.receive().taken == 7);
        CHECK(waiting(bench) == 0);
        const std::vector<Limit> other = other_limits(bench);
        bench.rules.limits = other;
        bench.open();
        CHECK(waiting(bench) == 7);
        CHECK(good(bench.ledger->renew_answers(3)) == 3);
        CHECK(waiting(bench) == 4);
        CHECK(good(bench.ledger->renew_answers(3)) == 3);
        CHECK(good(bench.ledger->renew_answers(3)) == 1);
        CHECK(good(bench.ledger->renew_answers(3)) == 0);
        bench.clock.at.unix_s -= 30 * kDay;
        CHECK(waiting(bench) == 7);
        CHECK_FALSE(good(bench.ledger->fleet({}))[0].tow);
        bench.ledger.reset();  // before what its rules rest on
    });
}

TEST_CASE("ledger towing: what is dated ahead of the clock is looked at again a day later") {
    on_each_engine([](LedgerBench& bench) {
        take(bench, bad_visit("2026-05-20", 1));
        const TowLine tow = tow_of(bench);
        REQUIRE(tow.runs_out);
        CHECK(tow.runs_out->unix_s <= bench.clock.at.unix_s + kDay);
        bench.clock.at.unix_s += 6 * kDay;
        CHECK(outcome_of(renewed(bench)) == "do not tow");
    });
}

TEST_CASE(
    "ledger towing: records that cannot be read give 'cannot tell' with the reason, and hold up no other trailer") {
    on_each_engine([](LedgerBench& bench) {
        take(bench, good_visit());
        bench.put(office_packet(0, bench.shape, bench.photos));
        bench.receive();
        const std::string yard = good(bench.ledger->find_trailer("NUR-07"));
        good(
            bench.ledger->db().run("UPDATE document SET body=$1 WHERE fingerprint=(SELECT fingerprint FROM job WHERE "
                                   "trailer=$2)",
                                   {to_bytes("no deflated bytes"), yard}));
        good(bench.ledger->db().run("UPDATE towing SET rules='other'"));
        CHECK(good(bench.ledger->renew_answers(10)) == 2);
        CHECK(waiting(bench) == 0);
        for (const TrailerLine& trailer : good(bench.ledger->fleet({}))) {
            REQUIRE(trailer.tow);
            if (trailer.key != yard) continue;
            CHECK(outcome_of(*trailer.tow) == "cannot tell");
            CHECK(trailer.tow->says.find("cannot be read") != std::string::npos);
        }
    });
}

TEST_CASE("ledger towing: the gravest come first, and each outcome has its filter") {
    on_each_engine([](LedgerBench& bench) {
        const auto put = [&](AnswerYard yard, const char* unit) {
            yard.change_trailer([&](Trailer& t) {
                t.vin.clear();
                t.unit = unit;
            });
            take(bench, yard);
        };
        put(good_visit(kYardDay, 1), "FINE-1");
        put(bad_visit(kYardDay, 2), "STOP-2");
        AnswerYard repair = good_visit(kYardDay, 3);
        repair.find("axle1-left", "fender", "cracked", Grade::repair);
        put(repair, "MEND-3");
        AnswerYard half = disc_yard(kYardDay, 4);
        half.leave_out(PointId::wheel_torque);
        half.all_good();
        put(half, "HALF-4");
        const auto units = [&](const FleetAsk& ask) {
            std::string out;
            for (const TrailerLine& t : good(bench.ledger->fleet(ask))) out += t.unit + " ";
            CHECK(good(bench.ledger->count(ask)) == std::count(out.begin(), out.end(), ' '));
            return out;
        };
        CHECK(units({}) == "STOP-2 MEND-3 HALF-4 FINE-1 ");
        FleetAsk ask;
        ask.falling = true;
        CHECK(units(ask) == "FINE-1 HALF-4 MEND-3 STOP-2 ");
        ask.order = FleetOrder::unit;
        CHECK(units(ask) == "STOP-2 MEND-3 HALF-4 FINE-1 ");
        for (const auto& [outcome, unit] : {std::pair{TowOutcome::do_not_tow, "STOP-2 "},
                                            {TowOutcome::not_before_repair, "MEND-3 "},
                                            {TowOutcome::cannot_tell, "HALF-4 "},
                                            {TowOutcome::nothing_against, "FINE-1 "},
                                            {TowOutcome::nothing_from_outside, ""}}) {
            FleetAsk one;
            one.outcomes.push_back(outcome);
            CHECK(units(one) == unit);
            CHECK(good(bench.ledger->fleet_counts()).of[static_cast<std::size_t>(outcome)] == (*unit == 0 ? 0 : 1));
        }
        FleetAsk words;
        words.words = "stop 2";
        CHECK(units(words) == "STOP-2 ");
        words.words = "% OR 1=1";
        CHECK(units(words).empty());
        FleetAsk trip;
        trip.trip_check_due = true;
        CHECK(units(trip).empty());
    });
}
