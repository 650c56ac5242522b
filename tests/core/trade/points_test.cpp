// The points table holds together: complete, in order, and every row can be answered.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

#include "core/trade/point.h"
#include "core/trade/reading_spec.h"

using namespace cotter;

TEST_CASE("the table has each point once, in the order of the ids") {
    const auto ids = names(PointId{});
    REQUIRE(all_points().size() == ids.size());
    REQUIRE(ids.size() == 88);
    for (std::size_t i = 0; i < ids.size(); ++i) {
        CAPTURE(ids[i]);
        CHECK(static_cast<std::size_t>(all_points()[i].id) == i);
        CHECK(&point(static_cast<PointId>(i)) == &all_points()[i]);
        CHECK(find_point(ids[i]) == &all_points()[i]);
    }
    CHECK(find_point("brk") == nullptr);
}

TEST_CASE("the id of each entry stands once in its list, and each has words") {
    std::size_t entries = 0;
    for (const TradePoint& p : all_points()) {
        CAPTURE(p.title);
        std::set<std::string_view> seen;
        for (const LookEntry& entry : p.entries) {
            CAPTURE(entry.id);
            CHECK(seen.insert(entry.id).second);
            CHECK_FALSE(entry.text.empty());
            CHECK(find_entry(p, entry.id) == &entry);
            ++entries;
        }
        CHECK(p.entries.empty() == (p.list == ListKind::none));
        CHECK(p.ask.empty() == (p.list == ListKind::none));
        // A fault that is no fault, or a lamp whose darkness does not matter, would be a yes.
        for (const LookEntry& entry : p.entries)
            if (p.list != ListKind::choice) CHECK(entry.grade != Grade::serviceable);
        if (p.list == ListKind::choice) {
            CHECK(std::any_of(p.entries.begin(), p.entries.end(),
                              [](const LookEntry& e) { return e.grade == Grade::serviceable; }));
            // What is computed takes a fact from its list; its readings judge it.
            CHECK((p.computed || std::any_of(p.entries.begin(), p.entries.end(),
                                             [](const LookEntry& e) { return e.grade > Grade::watch; })));
        }
    }
    CHECK(entries > 150);
    CHECK(find_entry(point(PointId::tire_face), "no such thing") == nullptr);
}

TEST_CASE("each point has a rule, a title and a way to be answered") {
    std::set<std::string_view> titles;
    for (const TradePoint& p : all_points()) {
        CAPTURE(p.title);
        CHECK((p.applies != nullptr));
        CHECK(titles.insert(p.title).second);
        CHECK((p.list != ListKind::none || !p.readings.empty() || p.level || p.torque || p.bearing || p.timed ||
               p.plate || p.computed));
        // What becomes essential by work has to say by which.
        if (p.importance == Importance::essential_after_work) CHECK((p.essential_when != nullptr));
        if (p.keeps_outside) CHECK(p.reach == Reach::outside);
    }
}

TEST_CASE("a source from memory is never taken for one that was read") {
    for (const TradePoint& p : all_points()) {
        CAPTURE(p.title);
        if (p.law.text.empty()) CHECK(p.law.evidence == Evidence::memory);
        for (const LookEntry& entry : p.entries)
            if (entry.law.text.empty()) CHECK(entry.law.evidence == Evidence::memory);
    }
    CHECK(point(PointId::tire_tread).law.evidence == Evidence::read);
    CHECK(point(PointId::disc_rotor).law.evidence == Evidence::memory);
    CHECK(point(PointId::frame_guard).law.evidence == Evidence::partly);
    // "Not for highway use" is forbidden by the inspection's list, not by the rule on tires.
    const LookEntry* marked = find_entry(point(PointId::tire_id), "not-highway");
    REQUIRE(marked != nullptr);
    CHECK(marked->law.text == "49 CFR part 396, Appendix A, 10b");
    CHECK(marked->law.evidence == Evidence::partly);
}

TEST_CASE("the placard's section follows the trailer's rating") {
    Trailer trailer;
    trailer.gvwr = *make_amount("10000", "[lb_av]");
    const Layout layout{&trailer, nullptr, nullptr};
    const TradePoint& placard = point(PointId::plate_tire);
    CHECK(law_at(placard, layout).text == "49 CFR 571.110 S4.3.5");
    trailer.gvwr = *make_amount("10001", "[lb_av]");
    CHECK(law_at(placard, layout).text == "49 CFR 571.120 S5.3");
    CHECK(law_at(placard, layout).evidence == Evidence::memory);
    CHECK(law_at(point(PointId::tire_tread), layout).text == "49 CFR 393.75(c)");
}
