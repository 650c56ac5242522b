// What the user has chosen once for all jobs; kept beside the book. Plain values.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/ui/theme.h"
#include "core/base/amount.h"
#include "core/base/fields.h"
#include "core/base/time.h"
#include "core/report/paper.h"

namespace cotter {

constexpr auto names(ThemeKind) {
    return name_list("sun", "lantern");
}
constexpr auto names(TypeSize) {
    return name_list("regular", "large", "largest");
}
constexpr auto names(Thumb) {
    return name_list("right", "left");
}

// How screens call the two sides of a trailer; data says left and right.
enum class SideWords { left_right, roadside_curbside, nearside_offside };
constexpr auto names(SideWords) {
    return name_list("left and right", "roadside and curbside", "nearside and offside");
}

// A torque wrench the technician owns.
struct Wrench {
    std::string id;  // as engraved
    std::optional<Date> calibrated;

    bool operator==(const Wrench&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.may("calibrated", s.calibrated);
    }
};

// What the shop asks for its own work. Nothing is preset: a rate that nobody entered is not charged.
struct ShopTerms {
    std::string currency = "USD";
    std::string tax_name = "Tax";
    Number tax_percent;
    std::int64_t hour_rate = 0;  // minor units
    Number hours_trailer;        // set-up, once
    Number hours_corner;         // for each corner that is touched
    std::int64_t second_call_out = 0;
    int valid_days = 0;  // how long an offer binds; 0: no last day

    bool operator==(const ShopTerms&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.may("currency", s.currency);
        f.may("tax_name", s.tax_name);
        f.may("tax_percent", s.tax_percent);
        f.may("hour_rate", s.hour_rate);
        f.may("hours_trailer", s.hours_trailer);
        f.may("hours_corner", s.hours_corner);
        f.may("second_call_out", s.second_call_out);
        f.may("valid_days", s.valid_days);
    }
};

struct Settings {
    ThemeKind theme = ThemeKind::sun;
    TypeSize type = TypeSize::regular;
    Thumb thumb = Thumb::right;
    SideWords sides = SideWords::left_right;
    std::string technician;
    std::string company;
    std::vector<Wrench> wrenches;
    std::string photo_folder;     // where photos are looked for first
    bool watch_photos = false;    // new pictures in that folder are offered by themselves
    std::string packet_folder;    // where packets go; empty: beside the book
    Paper paper = Paper::letter;  // of the report
    ShopTerms shop;
    bool owner = false;  // an owner's own look: plain words, no hub is opened

    bool operator==(const Settings&) const = default;
    [[nodiscard]] Appearance look() const { return {theme, type, thumb}; }
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.may("theme", s.theme);
        f.may("type", s.type);
        f.may("thumb", s.thumb);
        f.may("sides", s.sides);
        f.may("technician", s.technician);
        f.may("company", s.company);
        f.may("wrenches", s.wrenches);
        f.may("photo_folder", s.photo_folder);
        f.may("watch_photos", s.watch_photos);
        f.may("packet_folder", s.packet_folder);
        f.may("paper", s.paper);
        f.may("owner", s.owner);
        f.may("shop", s.shop);
    }
};

}  // namespace cotter
