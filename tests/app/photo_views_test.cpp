// The words for findings, the doubts about a photo, the file picker's list. No screen.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "app/views/folder_list.h"
#include "app/views/intake_view.h"
#include "app/views/photo_view.h"
#include "core/base/text.h"
#include "core/trade/components.h"
#include "tests/support/memory_files.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

Shot shot_at(int n, const Place& place, Slot slot, Stage stage, const char* taken) {
    Shot shot;
    shot.id = {*Uuid::parse("00000000-0000-4000-8000-0000000000" + std::to_string(10 + n))};
    shot.place = place;
    shot.slot = slot;
    shot.stage = stage;
    shot.photo.sharpness = 0.05;
    shot.photo.mean_light = 0.45;
    shot.photo.width = 4000;
    shot.photo.height = 3000;
    if (*taken != '\0') shot.photo.taken = *Instant::parse(taken);
    return shot;
}

Trailer trailer_of(BrakeKind brake, HubKind hub, Suspension suspension = Suspension::leaf) {
    Trailer trailer;
    Axle axle;
    axle.brake = brake;
    axle.hub = hub;
    axle.suspension = suspension;
    trailer.axles = {axle};
    return trailer;
}

}  // namespace

TEST_CASE("every slot has usual findings, few enough to be read, and each is in its component's list") {
    for (std::size_t i = 0; i < names(Slot{}).size(); ++i) {
        const auto slot = static_cast<Slot>(i);
        CAPTURE(name_of(slot));
        for (const Place& place : {kLeft, Place::at(Station::drawbar), Place::at(Station::trailer)}) {
            const auto usual = usual_findings(slot, {}, place);
            CHECK(usual.size() >= 4);
            CHECK(usual.size() <= 10);
            for (std::size_t n = 0; n < usual.size(); ++n) {
                CAPTURE(usual[n].component);
                CAPTURE(usual[n].defect);
                const auto defects = defects_of(usual[n].component, {}, place);
                CHECK(std::find(defects.begin(), defects.end(), usual[n].defect) != defects.end());
                CHECK(std::count(usual.begin(), usual.end(), usual[n]) == 1);
            }
        }
    }
}

TEST_CASE("a drum brake is offered no rotor, a grease hub no oil, and each slot that is wanted still has findings") {
    for (const BrakeKind brake : {BrakeKind::hydraulic_disc, BrakeKind::hydraulic_drum, BrakeKind::electric_drum})
        for (const HubKind hub : {HubKind::oil_bath, HubKind::grease})
            for (const Suspension suspension : {Suspension::leaf, Suspension::torsion}) {
                const Trailer trailer = trailer_of(brake, hub, suspension);
                const Layout layout{&trailer, nullptr, nullptr};
                CAPTURE(name_of(brake));
                CAPTURE(name_of(hub));
                for (const Slot slot : slots_of(layout, kLeft)) {
                    CAPTURE(name_of(slot));
                    const auto usual = usual_findings(slot, layout, kLeft);
                    CHECK(usual.size() >= 2);
                    for (const FindingWords& words : usual) {
                        CAPTURE(words.component);
                        CAPTURE(words.defect);
                        const bool disc = brake == BrakeKind::hydraulic_disc, oil = hub == HubKind::oil_bath;
                        if (!disc) CHECK((words.component != "rotor" && words.component != "caliper"));
                        if (disc) CHECK((words.component != "drum" && words.component != "shoes"));
                        if (brake != BrakeKind::electric_drum) CHECK(words.component != "brake magnet");
                        if (!oil) CHECK((words.component != "hub oil" && words.defect != "oil thrown over the wheel"));
                        if (oil) CHECK((words.component != "grease cap" && words.component != "hub grease"));
                        if (suspension == Suspension::torsion) CHECK(words.component != "spring");
                    }
                }
                const auto all = components_for(Slot::other, layout, kLeft);
                const auto has = [&](std::string_view name) {
                    return std::find(all.begin(), all.end(), name) != all.end();
                };
                CHECK(has("rotor") == (brake == BrakeKind::hydraulic_disc));
                CHECK(has("hub oil") == (hub == HubKind::oil_bath));
                CHECK(has("grease cap") == (hub == HubKind::grease));
                CHECK(has("tyre"));
                const auto defects = defects_of("hub", layout, kLeft);
                CHECK((std::find(defects.begin(), defects.end(), "oil thrown over the wheel") != defects.end()) ==
                      (hub == HubKind::oil_bath));
            }
}

TEST_CASE("of every component that findings name it is known where it exists") {
    const auto components = components_for(Slot::other, {}, kLeft);
    CHECK(components.size() > 40);
    for (const std::string_view component : components) {
        CAPTURE(component);
        CHECK(find_component(component) != nullptr);
    }
}

TEST_CASE("a component stands once in the list, those of the slot first; an unknown one has defects too") {
    const auto components = components_for(Slot::seal_side, {}, kLeft);
    CHECK(components.front() == "seal");
    CHECK(std::set(components.begin(), components.end()).size() == components.size());
    CHECK(defects_of("winch", {}, kLeft).size() > 3);
    CHECK(remedies_for("winch").empty());
    CHECK_FALSE(remedies_for("rotor").empty());
}

TEST_CASE("every slot can be chosen at some place of a disc-braked trailer, and each place ends with 'other'") {
    Trailer trailer = trailer_of(BrakeKind::hydraulic_disc, HubKind::oil_bath);
    trailer.actuation = Actuation::electric_over_hydraulic;
    const Layout layout{&trailer, nullptr, nullptr};
    std::set<Slot> all;
    for (const Place& place : {kLeft, Place::at(Station::drawbar), Place::at(Station::actuator),
                               Place::at(Station::frame), Place::at(Station::lights), Place::at(Station::trailer)}) {
        const auto slots = slots_of(layout, place);
        CHECK(slots.back() == Slot::other);
        CHECK(std::set(slots.begin(), slots.end()).size() == slots.size());
        all.insert(slots.begin(), slots.end());
    }
    CHECK(all.size() == names(Slot{}).size());
    trailer.axles.front().brake = BrakeKind::electric_drum;
    const auto drum = slots_of(layout, kLeft);
    for (const Slot slot : {Slot::caliper, Slot::rotor_face, Slot::rotor_edge, Slot::guide_pin, Slot::hose_line})
        CHECK(std::find(drum.begin(), drum.end(), slot) == drum.end());
}

TEST_CASE("a blurred, dark or glaring photo is doubted, a good one is not") {
    Job job;
    Shot shot = shot_at(1, kLeft, Slot::cap, Stage::before, "2026-05-14T08:00:00-05:00");
    CHECK(photo_warnings(job, shot).empty());
    shot.photo.sharpness = 0.002;
    shot.photo.mean_light = 0.05;
    shot.photo.bright_share = 0.4;
    const auto doubts = photo_warnings(job, shot);
    REQUIRE(doubts.size() == 3);
    CHECK(doubts[0].title == "Blurred");
    CHECK(doubts[1].title == "Dark");
    CHECK(doubts[2].title == "Glare");
}

TEST_CASE("a photo taken hours from the others of its corner and stage is doubted") {
    Job job;
    const Shot early = shot_at(1, kLeft, Slot::cap, Stage::before, "2026-05-14T08:00:00-05:00");
    Shot late = shot_at(2, kLeft, Slot::brake, Stage::before, "2026-05-14T13:30:00-05:00");
    job.all<Shot>() = {early, late};
    REQUIRE(photo_warnings(job, late).size() == 1);
    CHECK(photo_warnings(job, late)[0].text.find("5 h 30 min after") != std::string::npos);
    CHECK(photo_warnings(job, early)[0].text.find("5 h 30 min before") != std::string::npos);
    late.stage = Stage::after;  // the work lies between
    job.all<Shot>()[1] = late;
    CHECK(photo_warnings(job, late).empty());
    late.stage = Stage::before;
    late.place = Place::corner(2, Side::left);
    job.all<Shot>()[1] = late;
    CHECK(photo_warnings(job, late).empty());
}

TEST_CASE("the other stage is the same slot of the same place, the latest of them") {
    Job job;
    job.all<Shot>() = {shot_at(1, kLeft, Slot::cap, Stage::before, ""), shot_at(2, kLeft, Slot::cap, Stage::before, ""),
                       shot_at(3, kLeft, Slot::brake, Stage::before, "")};
    const Shot* before = other_stage(job, kLeft, Slot::cap, Stage::after);
    REQUIRE(before != nullptr);
    CHECK(before->id == job.all<Shot>()[1].id);
    CHECK(other_stage(job, kLeft, Slot::cap, Stage::before) == nullptr);
    CHECK(other_stage(job, Place::corner(1, Side::right), Slot::cap, Stage::after) == nullptr);
}

TEST_CASE("only a photo of nothing in particular of the whole trailer waits for its place") {
    CHECK(unplaced(shot_at(1, {}, Slot::other, Stage::before, "")));
    CHECK_FALSE(unplaced(shot_at(1, {}, Slot::whole, Stage::before, "")));
    CHECK_FALSE(unplaced(shot_at(1, kLeft, Slot::other, Stage::before, "")));
}

TEST_CASE("names from outside are made safe to show") {
    CHECK(safe_name("wheel.jpg") == "wheel.jpg");
    CHECK(safe_name("a\nb\x01.jpg") == "a?b?.jpg");
    CHECK(safe_name("gpj\xE2\x80\xAE"
                    "exe.jpg") == "gpj?exe.jpg");  // the character that turns the reading direction
    CHECK(safe_name("r\xC3\xA4"
                    "der.jpg") ==
          "r\xC3\xA4"
          "der.jpg");
    CHECK(is_utf8(safe_name("\xFF\xC3.jpg")));
    const std::string longest = safe_name(std::string(250, 'x') + ".jpeg");
    CHECK(longest.size() <= 70);
    CHECK(longest.ends_with(".jpeg"));
    std::string emoji;
    for (int i = 0; i < 60; ++i) emoji += "\xF0\x9F\x9B\x9E";
    CHECK(is_utf8(safe_name(emoji + ".png")));
}

TEST_CASE("a photo is known by its ending, whatever the case") {
    for (const char* name : {"a.jpg", "A.JPEG", "x.y.Png", "IMG.HEIC"}) CHECK(photo_name(name));
    for (const char* name : {"a.txt", "jpg", ".jpg", "a.jpg.exe", ""}) CHECK_FALSE(photo_name(name));
}

TEST_CASE("a folder's list has folders first, photos by name, and counts what it does not show") {
    MemoryFiles files;
    REQUIRE(files.make_folders("/cards/zz"));
    for (const char* name : {"b.jpg", "a.png", "notes.txt", ".hidden.jpg", "a###b.jpg"})
        REQUIRE(replace_file(files, std::string("/cards/") + name, as_bytes("12345")));
    const FolderList list = list_folder(files, "/cards", 0);
    REQUIRE(list.entries.size() == 4);
    CHECK(list.entries[0].folder);
    CHECK(list.entries[0].shown == "zz");
    CHECK(list.entries[1].key.find("###") == std::string::npos);
    CHECK(list.entries[2].shown == "a.png");
    CHECK(list.entries[3].shown == "b.jpg");
    CHECK(list.entries[3].path == "/cards/b.jpg");
    CHECK(list.others == 1);
    CHECK(list.error.empty());
    CHECK_FALSE(list_folder(files, "/nowhere", 0).error.empty());
}
