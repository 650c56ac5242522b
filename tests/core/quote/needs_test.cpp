// What findings call for: the defect decides, what always goes with a part comes along, and what nobody knows is asked.
#include <doctest/doctest.h>

#include <map>

#include "core/quote/called_for.h"
#include "core/quote/called_table.h"
#include "core/quote/choose.h"
#include "tests/core/quote/shop.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

class StepRandom final : public Random {
public:
    void fill(std::span<std::uint8_t> out) override {
        for (std::uint8_t& byte : out) byte = next_++;
    }

private:
    std::uint8_t next_ = 1;
};

const Place kLeft = Place::corner(1, Side::left), kRight = Place::corner(1, Side::right);

// A job of the sample trailer, two axles, with these brakes, hubs and findings.
struct Bench {
    Job job = sample_job();
    int next = 50;

    explicit Bench(HubKind hub = HubKind::grease, BrakeKind brake = BrakeKind::electric_drum, int studs = 5) {
        job.all<Finding>().clear();
        job.all<Need>().clear();
        for (Axle& axle : job.all<Trailer>()[0].axles) {
            axle.hub = hub;
            axle.brake = brake;
            axle.studs = studs;
        }
    }
    Bench& found(const char* component, const char* defect, Place place = kLeft, Grade grade = Grade::repair) {
        Finding f = sample_finding();
        f.id = {numbered(next++)};
        f.component = component;
        f.defect = defect;
        f.place = place;
        f.grade = grade;
        job.all<Finding>().push_back(f);
        return *this;
    }
    [[nodiscard]] std::vector<Need> needs() const {
        StepRandom random;
        return derive_needs(job, {}, stamp(), random);
    }
    // "hub seal 1 corner"; an amount that a person is asked for reads "wire ?".
    [[nodiscard]] std::map<std::string, std::string> list() const {
        std::map<std::string, std::string> out;
        for (const Need& need : needs())
            out[need.item] = need.wanted.amount.number.value() == 0 ? "?" : extent_text(need.wanted);
        return out;
    }
    [[nodiscard]] Need need(const std::string& item) const {
        for (const Need& need : needs())
            if (need.item == item) return need;
        FAIL(item, " is not needed");
        return {};
    }
};

using List = std::map<std::string, std::string>;

}  // namespace

TEST_CASE("A35: a spalled bearing brings the set, seal, lock and lubricant of its one hub") {
    CHECK(Bench(HubKind::grease).found("bearing", "spalled").list() == List{{"bearing set", "1 corner"},
                                                                            {"hub seal", "1 corner"},
                                                                            {"spindle locks", "1 corner"},
                                                                            {"hub grease", "?"}});
    const Bench oil = Bench(HubKind::oil_bath).found("bearing", "spalled");
    CHECK(oil.list() == List{{"bearing set", "1 corner"},
                             {"hub seal", "1 corner"},
                             {"spindle locks", "1 corner"},
                             {"hub cap gasket", "1 corner"},
                             {"hub oil", "?"}});
    CHECK(oil.need("bearing set").places == std::vector{kLeft});
    CHECK(oil.need("bearing set").must_include == std::vector<std::string>{"inner cone and cup", "outer cone and cup"});
}

TEST_CASE("needs: a bearing with too much play buys no bearing") {
    CHECK(Bench().found("bearing", "too much end play").list() ==
          List{{"spindle locks", "1 corner"}, {"hub grease", "?"}});
}

TEST_CASE("A36: a chafed magnet lead is one sealed splice, and no magnets") {
    CHECK(Bench().found("brake magnet", "lead chafed").list() == List{{"sealed splices", "1 piece"}, {"wire", "?"}});
    CHECK(Bench().found("brake magnet", "open circuit").list() ==
          List{{"brake magnets", "2 corners"}, {"sealed splices", "4 pieces"}});
    CHECK(Bench().found("brake magnet", "low current").list().empty());
}

TEST_CASE("A37: a missing grease cap is one grease cap with its lock looked at, no hub cap and no gasket") {
    const Bench bench = Bench().found("grease cap", "missing");
    CHECK(bench.list() == List{{"grease cap", "1 piece"}});
    CHECK(bench.need("grease cap").note.find("look at the spindle lock") != std::string::npos);
    // An owner's walk calls every cap a hub cap.
    CHECK(Bench().found("hub cap", "wet, cracked or missing").list() == List{{"grease cap", "1 piece"}});
    CHECK(Bench(HubKind::oil_bath).found("hub cap", "cracked").list() ==
          List{{"hub cap", "1 corner"}, {"hub cap gasket", "1 corner"}, {"hub oil", "?"}});
    CHECK(Bench(HubKind::oil_bath).found("hub cap", "plug missing").list() == List{{"hub cap plug", "1 piece"}});
}

TEST_CASE("A38: loose nuts and one broken stud of five are three studs and three nuts") {
    const Bench bench = Bench().found("wheel nuts", "loose").found("wheel stud", "broken", kLeft, Grade::do_not_tow);
    CHECK(bench.list() == List{{"wheel nuts", "3 pieces"}, {"wheel studs", "3 pieces"}});
    CHECK(Bench().found("wheel nuts", "loose").list().empty());
    CHECK(Bench().found("wheel nuts", "one missing").list() == List{{"wheel nuts", "1 piece"}});
    CHECK(Bench().found("wheel nuts", "several missing").list() == List{{"wheel nuts", "?"}});
}

TEST_CASE("needs: studs by hub, never more than it has, never guessed") {
    CHECK(studs_called(1, 5) == 3);
    CHECK(studs_called(1, 0) == 3);
    CHECK(studs_called(2, 5) == 0);  // four when they stand side by side, else five
    CHECK(studs_called(2, 4) == 4);
    CHECK(studs_called(3, 8) == 8);
    CHECK(studs_called(3, 0) == 0);
    Bench three;
    for (int i = 0; i < 3; ++i) three.found("wheel stud", "broken");
    CHECK(three.list()["wheel studs"] == "5 pieces");
    CHECK(three.found("wheel stud", "stripped", kRight).list()["wheel studs"] == "8 pieces");
    // Of one hub it is not known, so of all of them it is not.
    CHECK(three.found("wheel stud", "stripped", kRight).list()["wheel studs"] == "?");
}

TEST_CASE("B38: shoes soaked by a leaking seal renew the axle's shoes and hardware, and the one seal") {
    for (const bool seal_named : {true, false}) {
        Bench bench;
        bench.found("shoes", "oil or grease on them", kRight);
        if (seal_named) bench.found("seal", "wet", kRight, Grade::do_not_tow);
        CHECK(bench.list() == List{{"brake shoes", "2 corners"},
                                   {"shoe hardware kit", "2 corners"},
                                   {"hub seal", "1 corner"},
                                   {"spindle locks", "1 corner"},
                                   {"hub grease", "?"}});
        CHECK(bench.need("hub seal").places == std::vector{kRight});
        CHECK(bench.need("brake shoes").places == std::vector{kLeft, kRight});
    }
    // A wheel cylinder may have leaked as well: a seal is not bought on suspicion.
    CHECK(Bench(HubKind::grease, BrakeKind::hydraulic_drum).found("shoes", "oil or grease on them").list() ==
          List{{"brake shoes", "2 corners"}, {"shoe hardware kit", "2 corners"}});
}

TEST_CASE("needs: what always goes with a part comes along") {
    const auto disc = [] { return Bench(HubKind::oil_bath, BrakeKind::hydraulic_disc); };
    CHECK(disc().found("rotor", "under its discard size").list() ==
          List{{"rotors", "2 corners"}, {"brake pads", "2 corners"}, {"pad hardware kit", "2 corners"}});
    CHECK(disc().found("caliper", "leaks").list() ==
          List{{"calipers", "1 corner"}, {"banjo washers", "1 corner"}, {"brake fluid", "?"}});
    CHECK(disc().found("caliper", "slide seized").list() == List{{"pad hardware kit", "1 corner"}});
    CHECK(disc().found("brake hose", "cracked").list() ==
          List{{"flex hoses", "2 corners"}, {"banjo washers", "2 corners"}, {"brake fluid", "?"}});
    CHECK(disc().found("brake line", "weeps").list() ==
          List{{"brake line", "?"}, {"brake line clips", "?"}, {"brake line fittings", "?"}, {"brake fluid", "?"}});
    CHECK(disc().found("seal", "wet").found("spindle", "groove under the seal").list()["wear sleeve"] == "1 corner");
    CHECK(Bench().found("brake hardware", "spring missing").list() == List{{"shoe hardware kit", "1 corner"}});
    CHECK(Bench().found("brake hardware", "backing plate worn").list() == List{{"backing plate assembly", "1 corner"}});
    CHECK(Bench().found("spring", "leaf broken").list() ==
          List{{"springs", "2 corners"}, {"suspension bolts and bushings", "2 corners"}, {"U-bolts", "?"}});
    CHECK(Bench().found("wheel", "cracked").list() == List{{"wheels", "1 piece"}, {"wheel nuts", "?"}});
    CHECK(Bench().found("safety chains", "missing", Place::at(Station::drawbar)).list() ==
          List{{"safety chains", "2 pieces"}});
}

TEST_CASE("needs: tires by pair, by what is wrong with them, each with its stem") {
    CHECK(Bench().found("tyre", "cord showing").list() == List{{"tyres", "2 pieces"}, {"valve stems", "2 pieces"}});
    CHECK(Bench().found("tyre", "valve stem cracked").list() == List{{"valve stems", "1 piece"}});
    CHECK(Bench().found("tyre", "low or flat").list().empty());
    CHECK(why_no_part(Bench().job, Bench().found("tyre", "low or flat").job.all<Finding>()[0]) ==
          "find the cause first");
    Bench duals;
    duals.job.all<Trailer>()[0].axles[0].wheels = Wheels::dual;
    duals.found("tyre", "bulge", Place::corner(1, Side::left, Wheel::outer));
    CHECK(duals.list()["tyres"] == "2 pieces");
    CHECK(duals.need("tyres").places == std::vector{kLeft});
    Bench weak;
    weak.job.all<Trailer>()[0].axles[0].wheels = Wheels::dual;
    CHECK(weak.found("tyre", "too weak for the axle").list()["tyres"] == "4 pieces");
}

TEST_CASE("needs: what no table names is asked for, never one of it") {
    const Bench bench = Bench().found("ladder rack", "bent", Place::at(Station::frame));
    CHECK(bench.list() == List{{"ladder rack", "?"}});
    CHECK(Bench().found("lamps and reflectors", "lamp out", Place::at(Station::lights)).list() ==
          List{{"lamps and reflectors", "?"}, {"sealed splices", "?"}});
}

TEST_CASE("needs: an amount that is not known is left out of the price, and said") {
    const auto needs = Bench().found("seal", "wet").needs();
    const auto offers = std::vector{offer_of(200, "A", {{"hub seal", corners(1)}}, 1'150)};
    const auto choice = choose(needs, offers, Aim::cheapest, {});
    REQUIRE_MESSAGE(choice, (choice ? "" : choice.error().line()));
    CHECK(choice->missing == std::vector<std::string>{"hub grease: how much is not known, so it is not in the price",
                                                      "spindle locks: no offer covers it"});
}

TEST_CASE("needs: one that an older rule derived is left out once its findings call for other items") {
    Bench bench = Bench().found("grease cap", "missing");
    Need old = need_of(90, "hub cap", corners(1));
    old.findings = {bench.job.all<Finding>()[0].id};
    bench.job.all<Need>().push_back(old);
    CHECK(bench.need("hub cap").left_out);
    CHECK_FALSE(bench.need("grease cap").left_out);
    bench.job.all<Need>()[0].by_hand = true;
    CHECK(bench.needs().size() == 1);  // a person's own stays as it is
}

TEST_CASE("needs: every part of the table is an item with a rule of its own") {
    const auto check = [](const auto& rows) {
        for (const called::Row& row : rows)
            for (const called::Part& part : row.parts) {
                if (part.much == called::Much::none || part.item == "lubricant") continue;
                const ReplaceRule* rule = rule_for(part.item);
                CHECK_MESSAGE((rule != nullptr && rule->item == part.item), std::string(part.item));
            }
    };
    check(called::kHubRows);
    check(called::kBrakeRows);
    check(called::kOtherRows);
}
