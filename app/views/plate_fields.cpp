// See plate_fields.h.
#include "app/views/plate_fields.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "app/views/chrome.h"

namespace cotter {

namespace {

// The field's name without its axle, and the axle (0: none).
std::pair<std::string_view, std::size_t> parts_of(const std::string& id) {
    const auto space = id.rfind(' ');
    if (space == std::string::npos || id.back() < '1' || id.back() > '4') return {id, 0};
    return {std::string_view(id).substr(0, space), static_cast<std::size_t>(id.back() - '0')};
}

Axle* axle_of(Trailer& trailer, std::size_t number) {
    return number == 0 || number > trailer.axles.size() ? nullptr : &trailer.axles[number - 1];
}

TowVehicle& tow_of(Visit& visit) {
    if (!visit.tow) visit.tow.emplace();
    return *visit.tow;
}

std::optional<Amount>* amount_of(PlateData& data, const std::string& id) {
    const auto [name, number] = parts_of(id);
    if (Axle* axle = axle_of(data.trailer, number)) {
        if (name == "gawr") return &axle->gawr;
        if (name == "pressure") return &axle->tire_pressure;
    }
    if (name == "gvwr") return &data.trailer.gvwr;
    if (name == "coupler rating") return &data.trailer.coupler_rating;
    if (name == "ball size") return &data.trailer.ball_size;
    if (name == "width") return &data.trailer.width;
    if (name == "length") return &data.trailer.length;
    if (name == "tow gvwr") return &tow_of(data.visit).gvwr;
    if (name == "tow weights") return &tow_of(data.visit).axle_weights;
    if (name == "hitch rating") return &tow_of(data.visit).hitch_rating;
    if (name == "ball rating") return &tow_of(data.visit).ball_rating;
    if (name == "tow ball") return &tow_of(data.visit).ball_size;
    return nullptr;
}

std::string* words_of(PlateData& data, const std::string& id) {
    const auto [name, number] = parts_of(id);
    if (Axle* axle = axle_of(data.trailer, number)) {
        if (name == "tire size") return &axle->tire_size;
        if (name == "axle maker") return &axle->maker;
        if (name == "axle model") return &axle->model;
    }
    if (name == "maker") return &data.trailer.maker;
    if (name == "kind") return &data.trailer.kind;
    if (name == "built") return &data.trailer.built;
    if (name == "region") return &data.visit.region;
    if (name == "guard exempt") return &data.trailer.guard_exempt;
    return nullptr;
}

// Enumerations whose 'not known' or 'not said' is not among the choices: that is a field not entered. `first` is the
// enumerator of the first choice.
template <class E>
std::optional<std::size_t> index_of(E value, E first) {
    const auto at = static_cast<std::size_t>(value), begin = static_cast<std::size_t>(first);
    return at < begin ? std::nullopt : std::optional(at - begin);
}
template <class E>
void set_index(E& value, std::optional<std::size_t> choice, E first, E none) {
    value = choice ? static_cast<E>(static_cast<std::size_t>(first) + *choice) : none;
}
// The labels from `first` on.
template <class E>
std::vector<std::string> labels_from(E first) {
    std::vector<std::string> out;
    const auto all = names(E{});
    for (auto i = static_cast<std::size_t>(first); i < all.size(); ++i) out.push_back(upper_first(all[i]));
    return out;
}

// Brakes and hubs as people choose them; their enumerations hold words of earlier packets too.
constexpr std::array kBrakes{BrakeKind::none,          BrakeKind::hydraulic_disc, BrakeKind::hydraulic_drum,
                             BrakeKind::electric_drum, BrakeKind::overrun,        BrakeKind::air_cam,
                             BrakeKind::air_wedge,     BrakeKind::air_disc};
constexpr std::array kHubs{HubKind::oil_bath, HubKind::grease, HubKind::semi_fluid_grease, HubKind::preset};
constexpr std::array kActuations{Actuation::none,
                                 Actuation::electric,
                                 Actuation::surge,
                                 Actuation::overrun,
                                 Actuation::electric_over_hydraulic,
                                 Actuation::air_over_hydraulic,
                                 Actuation::vacuum_over_hydraulic,
                                 Actuation::air};

template <class E, std::size_t N>
std::optional<std::size_t> among(const std::array<E, N>& all, E value) {
    const auto it = std::find(all.begin(), all.end(), value);
    return it == all.end() ? std::nullopt : std::optional(static_cast<std::size_t>(it - all.begin()));
}
template <class E, std::size_t N>
std::vector<std::string> labels_of(const std::array<E, N>& all) {
    std::vector<std::string> out;
    for (const E value : all) out.push_back(upper_first(name_of(value)));
    return out;
}

std::optional<std::size_t> axle_choice(const Axle& axle, std::string_view name) {
    if (name == "brake") return among(kBrakes, axle.brake);
    if (name == "hub") return among(kHubs, axle.hub);
    if (name == "fastening") return index_of(axle.fastening, Fastening::stud_piloted);
    if (name == "metal") return index_of(axle.wheel_metal, WheelMetal::steel);
    if (name == "suspension") return index_of(axle.suspension, Suspension::leaf);
    if (name == "lift") return axle.lift ? std::optional<std::size_t>(0) : std::nullopt;
    return axle.slides ? std::optional<std::size_t>(0) : std::nullopt;
}

void set_axle(Axle& axle, std::string_view name, std::optional<std::size_t> choice) {
    if (name == "brake") axle.brake = choice ? kBrakes[*choice] : BrakeKind::not_known;
    if (name == "hub") axle.hub = choice ? kHubs[*choice] : HubKind::not_known;
    if (name == "fastening") set_index(axle.fastening, choice, Fastening::stud_piloted, Fastening::not_known);
    if (name == "metal") set_index(axle.wheel_metal, choice, WheelMetal::steel, WheelMetal::not_known);
    if (name == "suspension") set_index(axle.suspension, choice, Suspension::leaf, Suspension::not_known);
    if (name == "lift") axle.lift = choice && !axle.lift;
    if (name == "slides") axle.slides = choice && !axle.slides;
}

void set_choice(PlateData& data, const std::string& id, std::optional<std::size_t> choice) {
    const auto [name, number] = parts_of(id);
    if (Axle* axle = axle_of(data.trailer, number)) return set_axle(*axle, name, choice);
    if (name == "actuation") data.trailer.actuation = choice ? std::optional(kActuations[*choice]) : std::nullopt;
    if (name == "coupler") set_index(data.trailer.coupler, choice, CouplerKind::ball, CouplerKind::not_known);
    if (name == "duty") set_index(data.visit.duty, choice, Duty::carrier, Duty::not_said);
    if (name == "load") set_index(data.visit.load, choice, Load::empty, Load::unknown);
    if (name == "role") set_index(data.visit.role, choice, VisitRole::owner, VisitRole::not_said);
    if (name == "interstate") data.visit.interstate = choice && !data.visit.interstate;
    if (name == "tow axles") {
        tow_of(data.visit).axles = choice ? static_cast<int>(*choice) + 2 : 0;
    }
}

// Which point a field answers, by its name without the axle.
struct Answers {
    std::string_view field;
    PointId point;
};
constexpr std::array kAnswers{
    Answers{"gvwr", PointId::plate_gvwr},        Answers{"built", PointId::plate_built},
    Answers{"model year", PointId::plate_built}, Answers{"actuation", PointId::plate_act},
    Answers{"coupler", PointId::plate_cpl},      Answers{"gawr", PointId::plate_gawr},
    Answers{"tire size", PointId::plate_tire},   Answers{"pressure", PointId::plate_tire},
    Answers{"brake", PointId::plate_axles},      Answers{"hub", PointId::plate_axles},
    Answers{"fastening", PointId::plate_axles},  Answers{"metal", PointId::plate_axles},
    Answers{"suspension", PointId::plate_axles}, Answers{"axle maker", PointId::plate_axle},
    Answers{"axle model", PointId::plate_axle},  Answers{"duty", PointId::use_duty},
    Answers{"region", PointId::use_duty},        Answers{"tow gvwr", PointId::use_tow},
};

FormField amount_field(std::string id, std::string label, std::vector<std::string> units, bool fractions = false) {
    FormField out{std::move(id), std::move(label), FormKind::amount, std::move(units), fractions, {}, {}, false};
    out.not_known_counts = plate_point(out.id).has_value();
    return out;
}
FormField choice_field(std::string id, std::string label, std::vector<std::string> choices) {
    FormField out{std::move(id), std::move(label), FormKind::choice, {}, false, std::move(choices), {}, false};
    out.not_known_counts = plate_point(out.id).has_value();
    return out;
}
FormField words_field_of(std::string id, std::string label, std::string hint) {
    return {std::move(id), std::move(label), FormKind::words, {}, false, {}, std::move(hint), false};
}
FormField yes_field(std::string id, std::string label, std::string hint) {
    return {std::move(id), std::move(label), FormKind::yes, {}, false, {}, std::move(hint), false};
}

const std::vector<std::string> kMass{"[lb_av]", "kg"};
const std::vector<std::string> kPressure{"[psi]", "kPa", "bar"};

PlateSection trailer_section() {
    return {
        "Trailer",
        {amount_field("gvwr", "GVWR", kMass), words_field_of("built", "Built", "2019-04, or the year alone"),
         amount_field("model year", "Model year", {"1"}), words_field_of("maker", "Maker", "as the plate has it"),
         words_field_of("kind", "Kind", "deck trailer, boat trailer"),
         amount_field("width", "Overall width, fenders counted", {"[in_i]", "m"}, true),
         amount_field("length", "Overall length", {"[ft_i]", "m"}),
         words_field_of("guard exempt", "No rear guard because", "low chassis, wheels back: empty if it needs one")}};
}

PlateSection coupling_section() {
    return {"Brakes and coupling",
            {choice_field("actuation", "The brakes are applied by", labels_of(kActuations)),
             choice_field("coupler", "Coupler", labels_from(CouplerKind::ball)),
             amount_field("coupler rating", "Coupler rating", kMass),
             amount_field("ball size", "Ball size it is made for", {"[in_i]", "mm"}, true)}};
}

PlateSection axle_section(std::size_t number, std::size_t count) {
    const auto id = [&](const char* name) { return fmt::format("{} {}", name, number); };
    return {count == 1 ? "Axle" : fmt::format("Axle {}", number),
            {amount_field(id("gawr"), "GAWR", kMass),
             words_field_of(id("tire size"), "Tire size on the placard", "ST235/80R16"),
             amount_field(id("pressure"), "Cold pressure on the placard", kPressure),
             choice_field(id("brake"), "Brake", labels_of(kBrakes)), choice_field(id("hub"), "Hub", labels_of(kHubs)),
             choice_field(id("fastening"), "Wheels fastened by", labels_from(Fastening::stud_piloted)),
             choice_field(id("metal"), "Wheels made of", labels_from(WheelMetal::steel)),
             choice_field(id("suspension"), "Suspension", labels_from(Suspension::leaf)),
             yes_field(id("lift"), "This axle can be lifted", ""),
             yes_field(id("slides"), "This axle slides along the frame", ""),
             words_field_of(id("axle maker"), "Axle tag: maker", ""),
             words_field_of(id("axle model"), "Axle tag: model", "")},
            number};
}

PlateSection use_section(const PlateData& data) {
    PlateSection out{"Use",
                     {choice_field("role", "Who looks at it", {"Its owner", "A mechanic"}),
                      choice_field("duty", "Used by", labels_from(Duty::carrier)),
                      words_field_of("region", "State or country", "US-TX, or DE"),
                      choice_field("load", "It stands here", labels_from(Load::empty))}};
    if (data.visit.duty == Duty::carrier)
        out.fields.push_back(yes_field("interstate", "It crosses state lines", "Federal rules bind it then"));
    return out;
}

PlateSection tow_section() {
    return {"Tow vehicle",
            {amount_field("tow gvwr", "GVWR", kMass), choice_field("tow axles", "Axles", {"2", "3", "4"}),
             amount_field("tow weights", "Weight on all its axles", kMass),
             amount_field("hitch rating", "Hitch rating", kMass), amount_field("ball rating", "Ball rating", kMass),
             amount_field("tow ball", "Ball size", {"[in_i]", "mm"}, true)}};
}

bool is_set(const PlateData& data, const FormField& field) {
    return !plate_value(data, field).empty();
}

// What cannot be a year of the plate is none.
int year_of(const std::optional<Amount>& amount) {
    const double value = amount ? amount->number.value() : 0;
    return value >= 1900 && value < 2200 ? static_cast<int>(value) : 0;
}

void known_again(PlateData& data, const FormField& field) {
    std::erase(data.trailer.not_known, not_known_id(field.id));
}

}  // namespace

std::vector<PlateSection> plate_sections(const PlateData& data) {
    std::vector<PlateSection> out{trailer_section(), coupling_section()};
    for (std::size_t i = 1; i <= data.trailer.axles.size(); ++i)
        out.push_back(axle_section(i, data.trailer.axles.size()));
    out.push_back(use_section(data));
    out.push_back(tow_section());
    return out;
}

std::optional<PointId> plate_point(const std::string& field) {
    const std::string_view name = parts_of(field).first;
    for (const Answers& a : kAnswers)
        if (a.field == name) return a.point;
    return std::nullopt;
}

std::string plate_field(std::string_view title, int axle) {
    if (title == point(PointId::tire_press).title) return fmt::format("pressure {}", axle);
    for (const Answers& a : kAnswers) {
        const TradePoint& answered = point(a.point);
        if (answered.title != title) continue;
        return answered.spot == Spot::axle ? fmt::format("{} {}", a.field, axle) : std::string(a.field);
    }
    return {};
}

// Several fields answer one point: each is held by its own name.
std::string not_known_id(const std::string& field) {
    const auto point = plate_point(field);
    return point ? fmt::format("{} {}", name_of(*point), field) : std::string();
}

std::optional<std::size_t> plate_choice(const PlateData& data, const FormField& field) {
    const auto [name, number] = parts_of(field.id);
    PlateData copy = data;
    if (const Axle* axle = axle_of(copy.trailer, number)) return axle_choice(*axle, name);
    if (name == "actuation") return data.trailer.actuation ? among(kActuations, *data.trailer.actuation) : std::nullopt;
    if (name == "coupler") return index_of(data.trailer.coupler, CouplerKind::ball);
    if (name == "duty") return index_of(data.visit.duty, Duty::carrier);
    if (name == "load") return index_of(data.visit.load, Load::empty);
    if (name == "role") return index_of(data.visit.role, VisitRole::owner);
    if (name == "interstate") return data.visit.interstate ? std::optional<std::size_t>(0) : std::nullopt;
    if (name == "tow axles" && data.visit.tow && data.visit.tow->axles >= 2 && data.visit.tow->axles <= 4)
        return static_cast<std::size_t>(data.visit.tow->axles - 2);
    return std::nullopt;
}

std::string plate_value(const PlateData& data, const FormField& field) {
    PlateData copy = data;
    switch (field.form) {
        case FormKind::amount: {
            if (field.id == "model year")
                return data.trailer.model_year > 0 ? std::to_string(data.trailer.model_year) : std::string();
            const auto* amount = amount_of(copy, field.id);
            return amount != nullptr && *amount ? (*amount)->text() : std::string();
        }
        case FormKind::words: {
            const std::string* words = words_of(copy, field.id);
            return words == nullptr ? std::string() : *words;
        }
        case FormKind::choice: {
            const auto choice = plate_choice(data, field);
            return choice && *choice < field.choices.size() ? field.choices[*choice] : std::string();
        }
        case FormKind::yes:
            break;
    }
    return plate_choice(data, field) ? "yes" : "";
}

bool plate_not_known(const PlateData& data, const FormField& field) {
    const auto& all = data.trailer.not_known;
    return field.not_known_counts && !is_set(data, field) &&
           std::find(all.begin(), all.end(), not_known_id(field.id)) != all.end();
}

PlateData with_amount(PlateData data, const FormField& field, const std::optional<Amount>& amount) {
    if (auto* there = amount_of(data, field.id)) *there = amount;
    if (field.id == "model year") data.trailer.model_year = year_of(amount);
    known_again(data, field);
    return data;
}

PlateData with_choice(PlateData data, const FormField& field, std::size_t choice) {
    set_choice(data, field.id, choice);
    known_again(data, field);
    return data;
}

PlateData with_words(PlateData data, const FormField& field, const std::string& words) {
    if (std::string* there = words_of(data, field.id)) *there = words;
    known_again(data, field);
    return data;
}

PlateData with_axle_like_first(PlateData data, std::size_t axle) {
    if (axle < 2 || axle > data.trailer.axles.size()) return data;
    data.trailer.axles[axle - 1] = data.trailer.axles.front();
    // What is not known of the first is not known of this one.
    auto& all = data.trailer.not_known;
    std::erase_if(all, [&](const std::string& id) { return parts_of(id).second == axle; });
    for (std::size_t i = 0, n = all.size(); i < n; ++i)
        if (parts_of(all[i]).second == 1) all.push_back(fmt::format("{} {}", parts_of(all[i]).first, axle));
    return data;
}

PlateData with_not_known(PlateData data, const FormField& field) {
    if (!field.not_known_counts) return data;
    if (field.form == FormKind::amount) data = with_amount(std::move(data), field, std::nullopt);
    if (field.form == FormKind::words) data = with_words(std::move(data), field, {});
    if (field.form == FormKind::choice) set_choice(data, field.id, std::nullopt);
    data.trailer.not_known.push_back(not_known_id(field.id));
    return data;
}

}  // namespace cotter
