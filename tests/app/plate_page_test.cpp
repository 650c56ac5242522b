// The plate page by taps, from the first start on an empty book: every field, in every unit, every choice, 'not known'.
#include <doctest/doctest.h>

#include "app/views/plate_view.h"
#include "tests/app/taps.h"

using namespace cotter;

namespace {

struct PlateBench : Taps {
    explicit PlateBench(const char* count = "One") {
        begin();
        axles(count, "Single", "Hydraulic drum", "Grease");
        to_plan();
        touch("Plate and use");
        REQUIRE(route().screen == Screen::plate);
    }
    [[nodiscard]] PlateData data() {
        PlateData out;
        out.trailer = trailer();
        out.visit = visit();
        return out;
    }
    // What the page shows of a field.
    [[nodiscard]] FormRow shown(const std::string& id) {
        for (const PlateGroup& group : plate_view(session()).groups)
            for (const FormRow& r : group.rows)
                if (r.field.id == id) return r;
        FAIL(id);
        return {};
    }
    void open(const PlateSection& section) {
        if (section.title != "Trailer" || !log().find(section.title).empty()) touch(section.title);
    }
};

std::string_view label_of(std::string_view ucum) {
    const Unit* unit = find_unit(ucum);
    REQUIRE(unit != nullptr);
    return unit->label;
}

void enter_amount(PlateBench& bench, const FormField& field) {
    if (field.id == "model year") {  // a year alone is one
        bench.amount(field.label, "7");
        CHECK(bench.shown(field.id).value.empty());
        bench.amount(field.label, "2019");
        CHECK(bench.shown(field.id).value == "2019");
        return;
    }
    for (const std::string& unit : field.units) {
        bench.touch(field.label);
        if (field.units.size() > 1) bench.touch(std::string(label_of(unit)));
        bench.key("7");
        CHECK(bench.shown(field.id).value == fmt::format("7 {}", label_of(unit)));
    }
}

void enter_choices(PlateBench& bench, const FormField& field) {
    for (std::size_t i = 0; i < field.choices.size(); ++i) {
        bench.choose(field.label, field.choices[i]);
        CHECK(bench.shown(field.id).choice == i);
        CHECK(bench.shown(field.id).value == field.choices[i]);
    }
}

void say_not_known(PlateBench& bench, const FormField& field) {
    bench.not_known(field.label);
    CHECK(bench.shown(field.id).not_known);
    CHECK(bench.shown(field.id).value.empty());
    CHECK(bench.log().shows("not known"));
    const auto& all = bench.trailer().not_known;
    CHECK(std::count(all.begin(), all.end(), not_known_id(field.id)) == 1);
}

void enter_words(PlateBench& bench, const FormField& field) {
    const std::string text = field.id == "built" ? "2019-04" : field.id == "region" ? "US-TX" : "ABC 1";
    bench.words(field.label, text);
    CHECK(bench.shown(field.id).value == text);
}

void enter(PlateBench& bench, const FormField& field) {
    CAPTURE(field.id);
    CHECK(bench.shown(field.id).value.empty() != (field.id == "brake 1" || field.id == "hub 1"));
    switch (field.form) {
        case FormKind::amount:
            return enter_amount(bench, field);
        case FormKind::choice:
            return enter_choices(bench, field);
        case FormKind::words:
            return enter_words(bench, field);
        case FormKind::yes:
            bench.touch(field.label);
            CHECK(bench.shown(field.id).choice.has_value());
            bench.touch(field.label);
            CHECK_FALSE(bench.shown(field.id).choice.has_value());
            bench.touch(field.label);
    }
}

}  // namespace

TEST_CASE("every field of the plate page is entered by taps, in each of its units, and each of its choices") {
    PlateBench bench;
    std::size_t fields = 0;
    for (const PlateSection& section : plate_sections(bench.data())) {
        bench.open(section);
        for (const FormField& field : section.fields) {
            enter(bench, field);
            ++fields;
        }
    }
    CHECK(fields > 30);
    // It crosses state lines: asked of carriers alone.
    bench.touch("Use");
    bench.choose("Used by", "Carrier");
    bench.touch("It crosses state lines");
    CHECK(bench.visit().interstate);

    const Trailer& t = bench.trailer();
    CHECK(t.gvwr->text() == "7 kg");
    CHECK(t.built == "2019-04");
    CHECK(t.model_year == 2019);
    CHECK(t.actuation == Actuation::air);
    CHECK(t.coupler == CouplerKind::kingpin);
    CHECK(t.axles[0].suspension == Suspension::none);
    CHECK(t.axles[0].slides);
    CHECK(bench.visit().region == "US-TX");
    CHECK(bench.visit().role == VisitRole::mechanic);
    CHECK(bench.visit().load == Load::loaded);
    REQUIRE(bench.visit().tow.has_value());
    CHECK(bench.visit().tow->axles == 4);
    CHECK(bench.visit().tow->axle_weights->text() == "7 kg");
    CHECK(bench.visit().tow->ball_size->text() == "7 mm");
    // After a restart of the program it is all there.
    bench.reopen();
    CHECK(bench.trailer().axles[0].maker == "ABC 1");
}

TEST_CASE(
    "'not known' is an answer to every plate field that decides what is looked at, and is taken back by a value") {
    PlateBench bench;
    std::size_t said = 0;
    for (const PlateSection& section : plate_sections(bench.data())) {
        bench.open(section);
        for (const FormField& field : section.fields)
            if (field.not_known_counts) {
                CAPTURE(field.id);
                say_not_known(bench, field);
                ++said;
            }
    }
    CHECK(said > 10);
    CHECK(bench.session().summary().towing == Towing::cannot_tell);
    bench.touch("Trailer");
    bench.amount("GVWR", "7000", "lb");
    CHECK_FALSE(bench.shown("gvwr").not_known);
    CHECK(bench.trailer().gvwr->text() == "7000 lb");
}

TEST_CASE("an axle takes over what the first one has by one tap") {
    PlateBench bench("Two");
    bench.touch("Axle 1");
    bench.amount("GAWR", "3500", "lb");
    bench.choose("Suspension", "Leaf");
    bench.not_known("Cold pressure on the placard");
    bench.touch("Axle 2");
    bench.touch("Same as axle 1");
    CHECK(bench.trailer().axles[1].gawr->text() == "3500 lb");
    CHECK(bench.trailer().axles[1].suspension == Suspension::leaf);
    CHECK(bench.shown("pressure 2").not_known);
    CHECK(bench.trailer().axles[1] == bench.trailer().axles[0]);
}

TEST_CASE("what cannot be a date or a state is said in one line and not kept") {
    PlateBench bench;
    bench.touch("Built");
    bench.hands->type("04/19");
    CHECK(bench.log().shows("Year, or year and month: 2019-04"));
    bench.touch("Maker");
    CHECK(bench.trailer().built.empty());
}

TEST_CASE("axles nobody described have no brake and no hub by silence") {
    Taps bench;
    bench.begin();
    bench.touch("Two");
    for (const Axle& axle : bench.trailer().axles) {
        CHECK(axle.brake == BrakeKind::not_known);
        CHECK(axle.hub == HubKind::not_known);
    }
    bench.touch("None");
    CHECK(bench.trailer().axles[1].brake == BrakeKind::none);
}

TEST_CASE("what happened to the trailer is entered with its place and words, and taken away again") {
    PlateBench bench;
    bench.touch("What happened to it");
    CHECK(bench.route().screen == Screen::events);
    bench.touch("It hit something");
    bench.touch("Axle 1, left");
    bench.touch("In a few words");
    bench.hands->type("curb, at walking pace");
    bench.touch("Save");
    REQUIRE(bench.job().all<Event>().size() == 1);
    const Event event = bench.job().all<Event>()[0];
    CHECK(event.kind == EventKind::impact);
    CHECK(event.place == Place::corner(1, Side::left));
    CHECK(event.note == "curb, at walking pace");
    CHECK(bench.log().shows("curb, at walking pace"));
    for (const char* title : {"It was loaded", "It was unloaded", "It was coupled to another vehicle",
                              "It was overloaded", "A brake or hub overheated", "It was driven since the work"}) {
        bench.touch(title);
        bench.touch("Save");
    }
    CHECK(bench.job().all<Event>().size() == 7);
    CHECK(bench.job().all<Event>()[1].place == Place::at(Station::trailer));
    bench.touch("It was overloaded");  // the one that is entered stands first
    bench.touch("Remove");
    CHECK(bench.job().all<Event>().size() == 6);
}
