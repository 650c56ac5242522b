// See components.h. Names are spelled as findings in packets hold them.
#include "core/trade/components.h"

#include <algorithm>
#include <array>

#include "core/trade/rules.h"

namespace cotter {

namespace {

using namespace applies;

// By the way through a trailer: wheel end from outside in, brake, lines, actuation, running gear, frame, electrics.
constexpr std::array kComponents{
    Component{"tyre", always},
    Component{"wheel", always},
    Component{"wheel nuts", always},
    Component{"wheel stud", studded_wheel},
    Component{"hub cap", oil_cap},
    Component{"hub oil", oil_hub},
    Component{"grease cap", grease_cap},
    Component{"hub grease", greased_hub},
    Component{"seal", always},
    Component{"bearing", always},
    Component{"spindle", always},
    Component{"hub", always},
    Component{"rotor", any_disc},
    Component{"drum", any_drum},
    Component{"shoes", any_drum},
    Component{"brake hardware", any_drum},
    Component{"brake magnet", electric_brake},
    Component{"pads", any_disc},
    Component{"caliper", any_disc},
    Component{"guide pin", any_disc},
    Component{"bracket bolts", any_disc},
    Component{"brake hose", fluid_or_air},
    Component{"brake line", fluid_or_air},
    Component{"brake fluid", hydraulic_brake},
    Component{"reservoir", hydraulic_brake},
    Component{"surge actuator", pushed},
    Component{"brake actuator", powered_unit},
    Component{"breakaway battery", electric_pull},
    Component{"breakaway switch", away_cable},
    Component{"coupler", always},
    Component{"safety chains", chains},
    Component{"jack", always},
    Component{"spring", sprung},
    Component{"shackles and equaliser", leaf_springs},
    Component{"U-bolts", sprung},
    Component{"torsion axle", torsion},
    Component{"axle beam", always},
    Component{"frame", always},
    Component{"plug", always},
    Component{"wiring", always},
    Component{"lamps and reflectors", always},
    Component{"data plate", always},
};

// Defects that only some of their component have.
struct DefectRule {
    std::string_view component, defect;
    AppliesRule where;
};
constexpr std::array kDefects{
    DefectRule{"hub", "oil thrown over the wheel", oil_hub},
    DefectRule{"hub", "grease thrown over the wheel", greased_hub},
    DefectRule{"hub grease", "pushed into the brake", braked},
    DefectRule{"caliper", "oil on it", oil_hub},
    DefectRule{"shoes", "oil or grease on them", braked},
};

// At a station a component exists when it does at any axle; a trailer without axles may have all of them.
bool may_be(AppliesRule where, const Layout& layout, const Place& place) {
    if (place.is_corner() || layout.trailer == nullptr || layout.trailer->axles.empty())
        return where(layout, place) != Applies::no;
    for (int axle = 1; axle <= static_cast<int>(layout.trailer->axles.size()); ++axle)
        if (where(layout, Place::corner(axle, Side::left)) != Applies::no) return true;
    return false;
}

}  // namespace

const Component* find_component(std::string_view name) {
    if (name == "tire") return find_component("tyre");
    if (name == "shackles and equalizer") return find_component("shackles and equaliser");
    const auto found = std::find_if(kComponents.begin(), kComponents.end(),
                                    [&](const Component& component) { return component.name == name; });
    return found == kComponents.end() ? nullptr : &*found;
}

bool can_be_found(std::string_view component, std::string_view defect, const Layout& layout, const Place& place) {
    const Component* known = find_component(component);
    if (known == nullptr) return true;
    if (!may_be(known->where, layout, place)) return false;
    return std::none_of(kDefects.begin(), kDefects.end(), [&](const DefectRule& rule) {
        return rule.component == known->name && rule.defect == defect && !may_be(rule.where, layout, place);
    });
}

}  // namespace cotter
