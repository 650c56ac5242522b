// See settings_screen.h.
#include "app/screens/settings_screen.h"

#include <functional>

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/screens/words_field.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

// One page's drawing: each part changes a copy of the settings and hands it in.
class SettingsPage {
public:
    SettingsPage(UiContext& ui, const SettingsView& view, Commands& out) : ui_(ui), view_(view), out_(out) {}

    void looks() {
        heading(ui_, "Looks");
        choose<ThemeKind>("theme", {"Sun: bright", "Lantern: dark"}, &Settings::theme);
        paragraph(ui_, "Size of the words");
        choose<TypeSize>("type", {"1", "1½", "2"}, &Settings::type);
        paragraph(ui_, "The thumb that taps");
        choose<Thumb>("thumb", {"Right", "Left"}, &Settings::thumb);
        paragraph(ui_, fmt::format("The sides of a trailer: {}", view_.sides_example));
        choose<SideWords>("sides", {"Left and right", "Roadside and curbside", "Nearside and offside"},
                          &Settings::sides);
    }

    void names() {
        heading(ui_, "Who does the work");
        words({"Your name", "technician"}, "as it stands in the packet", &Settings::technician);
        words({"Company", "company"}, "may stay empty", &Settings::company);
    }

    void wrenches() {
        heading(ui_, "Torque wrenches");
        for (std::size_t i = 0; i < view_.wrenches.size(); ++i) wrench(i);
        if (wide_button(ui_, {"Add a wrench", "add wrench"}, {Tone::quiet, Icon::plus, true, false, 0}))
            put([](Settings& s) { s.wrenches.emplace_back(); });
    }

    void storage() {
        if (view_.storage.empty()) return;
        heading(ui_, "Storage of this device");
        for (const std::string& line : view_.storage) paragraph(ui_, line);
    }

    void paper() {
        heading(ui_, "Paper");
        paragraph(ui_, "The report is laid out for");
        choose<Paper>("paper", {"A4", "US Letter"}, &Settings::paper);
    }

    void folders() {
        if (!view_.folders) return;
        heading(ui_, "Folders");
        words({"Photos are looked for in", "photo folder"}, "the folder of the camera", &Settings::photo_folder);
        if (toggle(ui_, {"Watch it", "watch"}, view_.settings.watch_photos, "New photos show up on 'Add photos'"))
            put([](Settings& s) { s.watch_photos = !s.watch_photos; });
        words({"Packets go to", "packet folder"}, view_.packet_folder, &Settings::packet_folder);
    }

private:
    void put(const std::function<void(Settings&)>& change) {
        Settings settings = view_.settings;
        change(settings);
        out_.push_back(PutSettings{std::move(settings)});
    }

    template <class E>
    void choose(std::string_view key, const std::vector<std::string_view>& labels, E Settings::*field) {
        std::vector<ChipSpec> specs;
        for (std::size_t i = 0; i < labels.size(); ++i)
            specs.push_back({{labels[i]}, static_cast<std::size_t>(view_.settings.*field) == i, true, {}});
        if (const auto tapped = one_of(ui_, key, specs)) put([&](Settings& s) { s.*field = static_cast<E>(*tapped); });
    }

    void words(const Name& name, const std::string& hint, std::string Settings::*field) {
        words_field(
            ui_, name, {view_.settings.*field, hint, "", TextKind::plain, 500}, view_.drafts,
            [&](const std::string& text) { put([&](Settings& s) { s.*field = text; }); }, out_);
    }

    void wrench(std::size_t i) {
        const Wrench& there = view_.settings.wrenches[i];
        const WrenchRow& row = view_.wrenches[i];
        const std::string id_key = fmt::format("wrench id {}", i);  // wrenches have no other key while unnamed
        const std::string day_key = fmt::format("wrench day {}", i);
        const std::string gone_key = fmt::format("wrench gone {}", i);
        words_field(
            ui_, {"Its number", id_key}, {there.id, "as engraved", "", TextKind::plain, 60}, view_.drafts,
            [&](const std::string& text) { put([&](Settings& s) { s.wrenches[i].id = text; }); }, out_);
        const WordsDraft* draft = view_.drafts.words();
        const bool typing = draft != nullptr && draft->field == day_key && !draft->text.empty();
        const bool bad = typing && !Date::parse(draft->text);
        words_field(
            ui_, {"Calibrated on", day_key},
            {row.calibrated, "2026-05-14", bad ? "Year, month, day: 2026-05-14" : "", TextKind::plain, 10},
            view_.drafts, [&](const std::string& text) { put([&](Settings& s) { date_into(s.wrenches[i], text); }); },
            out_);
        paragraph(ui_, row.due, true);
        const std::string remove = there.id.empty() ? "Remove this wrench" : "Remove " + there.id;
        if (button(ui_, {remove, gone_key}, {Tone::danger, Icon::erase, true, false, 0}))
            put([&](Settings& s) { s.wrenches.erase(s.wrenches.begin() + static_cast<std::ptrdiff_t>(i)); });
    }

    // A date that is none leaves the one there was.
    static void date_into(Wrench& wrench, const std::string& text) {
        const auto date = Date::parse(text);
        if (date) wrench.calibrated = *date;
        if (text.empty()) wrench.calibrated.reset();
    }

    UiContext& ui_;
    const SettingsView& view_;
    Commands& out_;
};

}  // namespace

void draw_settings(UiContext& ui, const SettingsView& view, Commands& out) {
    SettingsPage page(ui, view, out);
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "settings"), [&] {
        page.looks();
        page.names();
        page.wrenches();
        page.folders();
        page.paper();
        page.storage();
    });
    answer_chrome(answer, out);
}

}  // namespace cotter
