// See gallery.h.
#include "tests/app/gallery.h"

#include <array>

#include <fmt/format.h>

#include "app/ui/text.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

// A picture made of numbers: bands and a grid, so that its borders and its whole can be seen.
Bytes test_picture(int width, int height) {
    Bytes rgb;
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x) {
            const bool line = x % 32 == 0 || y % 32 == 0 || x == width - 1 || y == height - 1;
            rgb.push_back(static_cast<std::uint8_t>(line ? 40 : 90 + 120 * x / width));
            rgb.push_back(static_cast<std::uint8_t>(line ? 40 : 120 + 60 * y / height));
            rgb.push_back(static_cast<std::uint8_t>(line ? 40 : 130));
        }
    return rgb;
}

}  // namespace

void Gallery::serve_pictures() {
    for (const PictureWish& wish : pictures_.take_wanted()) {
        if (wish.id == "never") {
            pictures_.missing(wish.id);
            continue;
        }
        const int width = wish.longest_px;
        const int height = wish.longest_px * 3 / 4;
        static_cast<void>(pictures_.put(wish, width, height, test_picture(width, height)));
    }
}

void Gallery::frame(UiContext& ui) {
    switch (page_) {
        case GalleryPage::start:
            start(ui);
            break;
        case GalleryPage::corner:
            corner(ui);
            break;
        case GalleryPage::choices:
            choices(ui);
            break;
        case GalleryPage::words:
            fields(ui);
            break;
        case GalleryPage::photos:
            photos(ui);
            break;
        case GalleryPage::empty:
            empty(ui);
            break;
        case GalleryPage::busy:
            busy(ui);
            break;
    }
    sheets(ui);
    serve_pictures();
}

void Gallery::start(UiContext& ui) {
    const ScreenSpec spec{"start",
                          {"Jobs", "NUR-07, deck trailer, two axles", "saved 08:14", true, true, true, true, true},
                          {{{"Take in", "in"}, Tone::quiet, Icon::none, true, false},
                           {{"New job", "new"}, Tone::strong, Icon::plus, true, true}},
                          {},
                          false};
    const ScreenAnswer answer = screen(ui, spec, [&] {
        heading(ui, "Under way");
        if (row(ui, {"NUR-07 deck trailer", "job-1"},
                {"Greenacre nursery, gravel yard", "8 of 24 shots", Grade::do_not_tow}))
            page_ = GalleryPage::corner;
        if (row(ui, {"Axle 2 left", "a2l"},
                {"wheel on, cap, lining still to be photographed before the work begins", {}, Grade::repair}))
            tapped("a2l");
        if (row(ui, {"Axle 1 right", "a1r"}, {"complete", "3.2 mm", Grade::watch})) tapped("a1r");
        if (row(ui, {"Axle 1 left", "a1l"}, {"complete", "7.10 mm", Grade::serviceable})) tapped("a1l");
        if (row(ui, {"Drawbar", "drawbar"}, {"coupler, chains, jack", "", {}, Icon::camera, true, true}))
            tapped("drawbar");
        if (row(ui, {"Lights and wiring", "lights"},
                {"needs the towing vehicle", "", {}, Icon::sheet, false, false, false}))
            tapped("lights");
        for (int i = 0; i < rows; ++i) {
            const std::string key = fmt::format("old-{}", i);
            if (row(ui, {fmt::format("Visit {}", i + 1), key},
                    {"handed over", fmt::format("2026-05-{:02}", i % 28 + 1), {}}))
                tapped(key);
        }
        heading(ui, "This trailer");
        fact(ui, "Unit", "NUR-07");
        fact(ui, "Axles", "2 × 3,200 kg, electric over hydraulic disc brakes");
        fact(ui, "Unladen weight as on the data plate", "1,180 kg");
    });
    if (answer.tapped(1)) keypad_open_ = true;
    if (answer.tapped(0)) tapped("take in");
    if (answer.tap == ScreenTap::help) help_open_ = true;
    if (answer.tap == ScreenTap::back) tapped("back");
    if (answer.tap == ScreenTap::undo) tapped("undo");
}

void Gallery::corner(UiContext& ui) {
    const ScreenSpec spec{
        "corner",
        {"Axle 1, right", "NUR-07, before the work", "not saved: the disk is full", false, true, true, false, true},
        {{{"Add a finding", "finding"}, Tone::strong, Icon::plus, true, true}},
        {"Finding removed: worn inner pad", "Undo"},
        false};
    const ScreenAnswer answer = screen(ui, spec, [&] {
        caution(ui, "Before you lift",
                "Chock the wheels of the other axle on both sides, set stands under the frame, and never trust the "
                "jack alone.");
        for (const Grade grade : {Grade::serviceable, Grade::watch, Grade::repair, Grade::do_not_tow})
            grade_plate(ui, grade);
        remark(ui, "Confirm with the maker",
               "3.2 mm is common practice for this kind of pad; nobody has entered the maker's own limit.");
        paragraph(ui, "Smallest reading 3.2 mm against a limit of 3.2 mm: at the limit.");
        paragraph(ui, "shop limit, entered 2026-05-14 by R. Alder", true);
        button(ui, {"Why?", "why"});
        wide_button(ui, {"Take the photo again, the wear mark cannot be seen", "again"},
                    {Tone::quiet, Icon::camera, true, false, 0});
        wide_button(ui, {"Remove this finding", "remove"}, {Tone::danger, Icon::close, true, false, 0});
        wide_button(ui, {"Sign off", "sign"}, {Tone::strong, Icon::pin, false, false, 0});
    });
    if (answer.tap == ScreenTap::back) page_ = GalleryPage::start;
    if (answer.tap == ScreenTap::toast) tapped("toast undo");
}

void Gallery::choices(UiContext& ui) {
    const ScreenSpec spec{"choices",
                          {"What is wrong?", "", "", true, true, false, false, false},
                          {{{"Skip", "skip"}, Tone::quiet, Icon::none, true, false},
                           {{"Mark", "mark"}, Tone::quiet, Icon::camera, true, false},
                           {{"Save", "save"}, Tone::strong, Icon::check, true, true}},
                          {},
                          false};
    const ScreenAnswer answer = screen(ui, spec, [&] {
        heading(ui, "Defect");
        const std::array labels{"worn",  "cracked",       "scored",  "leaking",
                                "loose", "blued by heat", "missing", "contaminated with grease or brake fluid"};
        std::vector<ChipSpec> specs;
        for (const char* label : labels) specs.push_back({Name(label), on_[label], true, {}});
        if (const auto i = chips(ui, "defect", specs)) on_[labels[*i]] = !on_[labels[*i]];
        heading(ui, "Grade");
        if (const auto grade = grade_choice(ui, "grade", static_cast<Grade>(grade_))) grade_ = static_cast<int>(*grade);
        heading(ui, "Unit");
        const std::array units{ChipSpec{"mm", unit_ == 0, true, {}}, ChipSpec{"in", unit_ == 1, true, {}}};
        if (const auto i = one_of(ui, "unit", units)) unit_ = static_cast<int>(*i);
        const std::array sides{ChipSpec{"roadside and curbside", unit_ == 0, true, {}},
                               ChipSpec{"nearside and offside", unit_ == 1, true, {}},
                               ChipSpec{"left and right", unit_ == 2, true, {}}};
        if (const auto i = one_of(ui, "sides", sides)) unit_ = static_cast<int>(*i);
        heading(ui, "For this job");
        if (toggle(ui, {"Keep the position in photos", "position"}, on_["position"],
                   "Off: the packet says nothing about where they were taken."))
            on_["position"] = !on_["position"];
        if (toggle(ui, {"Left hand", "left"}, look_.thumb == Thumb::left))
            look_.thumb = look_.thumb == Thumb::left ? Thumb::right : Thumb::left;
        toggle(ui, {"Sign with the key of this device", "key"}, true, "There is no key yet.", false);
    });
    if (answer.tapped(2)) tapped("save");
    if (answer.tap == ScreenTap::back) page_ = GalleryPage::start;
}

void Gallery::fields(UiContext& ui) {
    const ScreenSpec spec{"words",
                          {"Note", "Axle 1, right", "", true, true, false, false, false},
                          {{{"Done", "done"}, Tone::strong, Icon::none, true, true}},
                          {},
                          false};
    const ScreenAnswer answer = screen(ui, spec, [&] {
        const FieldAnswer note = text_field(ui, {"What you saw", "note"}, {note_, "", "", TextKind::note});
        if (note.text) note_ = *note.text;
        const FieldAnswer name = text_field(ui, {"Customer", "customer"}, {short_note_, "who brought it", ""});
        if (name.text) short_note_ = *name.text;
        text_field(ui, {"Vehicle identification number", "vin"},
                   {"1T9DE2028", "", "17 characters are needed, these are 9"});
        text_field(ui, {"Order", "order"}, {"fixed after sign-off", "", "", TextKind::plain, 200, false});
    });
    if (answer.tap == ScreenTap::back) page_ = GalleryPage::start;
    if (answer.tapped(0)) tapped("done");
}

void Gallery::photos(UiContext& ui) {
    const ScreenSpec spec{"photos",
                          {"Shots", "Axle 1, right", "saved 08:16", true, true, false, false, true},
                          {{{"Take a photo", "shoot"}, Tone::strong, Icon::camera, true, true}},
                          {},
                          false};
    screen(ui, spec, [&] {
        const std::array shots{
            TileSpec{{"Wheel on", "s1"}, "before", "p1", {}, Icon::camera, false, true},
            TileSpec{{"Cap", "s2"}, "", "p2", Grade::watch, Icon::camera, false, true},
            TileSpec{{"Lining", "s3"}, "2 findings", "never", Grade::do_not_tow, Icon::camera, false, true},
            TileSpec{{"Rotor face", "s4"}, "still to take", "", {}, Icon::camera, true, true},
            TileSpec{{"Seal side", "s5"}, "not accessible", "", {}, Icon::camera, false, false}};
        if (const auto i = tiles(ui, "shots", shots)) tapped(std::string(shots[*i].name.key));
        heading(ui, "Tasks");
        const std::array tasks{TileSpec{{"Survey", "t1"}, "8 of 24", "", {}, Icon::camera, false, true},
                               TileSpec{{"Quote", "t2"}, "", "", {}, Icon::sheet, false, true}};
        if (const auto i = tiles(ui, "tasks", tasks)) tapped(std::string(tasks[*i].name.key));
        heading(ui, "One");
        if (photo(ui, {"The whole photo", "whole"}, "p1", 220)) tapped("whole");
        const Rect area = take_space(room(), 200);
        const AreaInput input = free_area(ui, {"Photo to mark", "mark"}, area);
        zoom_ *= input.zoom;
        draw_picture_part(ui, "p2", area, {0, 0, 1, 1});
        if (input.tapped) tapped(fmt::format("mark {:.0f},{:.0f}", input.tapped->x, input.tapped->y));
        if (input.drag_ended)
            tapped(fmt::format("drew {:.0f},{:.0f} to {:.0f},{:.0f}", input.start.x, input.start.y, input.at.x,
                               input.at.y));
        if (input.long_pressed) tapped("held");
        scroll_strip(ui, "strip", 64, [&] {
            for (int i = 0; i < 9; ++i) {
                const std::string key = fmt::format("strip {}", i);
                if (i > 0) same_line();
                if (button_at(ui, {fmt::format("{}", i + 1), key}, {}, take_space(72, 64))) tapped(key);
            }
        });
    });
}

void Gallery::empty(UiContext& ui) {
    const ScreenSpec spec{"empty", {"Jobs", "", "", true, false, false, false, true}, {}, {}, false};
    screen(ui, spec, [&] {
        if (empty_state(ui, "No job yet",
                        "A job is one visit to one trailer. Everything you record stays on this device.",
                        {"Begin the first job", "first"}))
            tapped("first");
    });
}

void Gallery::busy(UiContext& ui) {
    const ScreenSpec spec{"busy", {"Packet", "NUR-07", "", true, true, false, false, false}, {}, {}, false};
    screen(ui, spec, [&] {
        if (progress(ui, "pack", {"Packing 24 photos", "photo 7 of 24", 0.29F, true})) tapped("cancel");
        progress(ui, "sign", {"Looking for the stick", "", -1, false});
    });
}

void Gallery::sheets(UiContext& ui) {
    if (keypad_open_) {
        const KeypadAnswer answer = keypad_sheet(ui, "keypad", keypad_);
        if (answer == KeypadAnswer::done) tapped("keyed " + keypad_.points()[0]);
        if (answer != KeypadAnswer::none) keypad_open_ = false;
    }
    if (!help_open_) return;
    const SheetSpec spec{
        "help", "How a grade is chosen", {{{"Understood", "ok"}, Tone::strong, Icon::check, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        paragraph(ui, "Take the worst of what you found. A reading at its limit is at least 'watch'.");
        caution(ui, "Do not tow",
                "A cracked disc, a loose bearing or a leak at the brake line: the trailer stays where it is.");
    });
    if (answer.closed || answer.action) help_open_ = false;
}

}  // namespace cotter
