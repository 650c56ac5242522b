// What is bought, and on what unit. The unit of sale follows the parts trade: a kit for a corner, friction parts for an
// axle, fluids by what the maker says the unit takes.
#include <algorithm>

#include "core/base/text.h"
#include "core/quote/needs.h"
#include "core/quote/words.h"

namespace cotter {

namespace {

using enum ReplacedBy;

// Order matters: the first rule that fits counts, so special names stand before general ones. An item without words is
// named by the table of defects only.
constexpr ReplaceRule kRules[] = {
    {"guide pin|pad hardware|pin kit|clip", "pad hardware kit", wheel, Basis::corners, false, "clips|guide pins",
     "a kit of pins and clips for each wheel"},
    {"hardware|return spring|brake spring|shoe spring", "shoe hardware kit", wheel, Basis::corners, false, "",
     "springs and adjuster for each wheel"},
    {"pads|pad", "brake pads", axle, Basis::corners, true, "", "friction parts of both sides of an axle together"},
    {"shoes|shoe|lining", "brake shoes", axle, Basis::corners, true, "",
     "friction parts of both sides of an axle together"},
    {"rotor|disc", "rotors", axle, Basis::corners, true, "", "rotors of both sides of an axle together"},
    {"drum", "drums", axle, Basis::corners, true, "", "drums of both sides of an axle together"},
    {"magnet", "brake magnets", axle, Basis::corners, true, "", "magnets of both sides of an axle together"},
    {"caliper", "calipers", wheel, Basis::corners, false, "", "one alone is possible"},
    {"hub oil", "hub oil", volume, Basis::volume, false, "", "enter what the hubs take, by the axle maker"},
    {"hub grease|bearing grease", "hub grease", volume, Basis::volume, false, "",
     "enter what the hubs take, by the axle maker"},
    {"", "hub lubricant", volume, Basis::volume, false, "",
     "oil or grease is not known yet; enter what the hubs take, by the axle maker"},
    {"brake fluid|hydraulic fluid", "brake fluid", volume, Basis::volume, false, "",
     "the whole system when mixed or contaminated; enter its volume, lines and units, two to three times over"},
    {"bearing|cone|cup", "bearing set", wheel, Basis::corners, false, "inner cone and cup|outer cone and cup",
     "cones and cups, inner and outer together"},
    {"seal", "hub seal", wheel, Basis::corners, false, "", "a new seal whenever the hub was off"},
    {"wear sleeve", "wear sleeve", wheel, Basis::corners, false, "", "where the seal has cut a groove"},
    {"cap gasket|cap o-ring", "hub cap gasket", wheel, Basis::corners, false, "", "for each wheel"},
    {"grease cap", "grease cap", wheel, Basis::pieces, false, "", "for each wheel"},
    {"cap plug", "hub cap plug", wheel, Basis::pieces, false, "", "for each wheel"},
    {"", "hub cap screws", piece, Basis::pieces, false, "", "count them"},
    {"hub cap|cap", "hub cap", wheel, Basis::corners, false, "gasket", "for each wheel"},
    {"cotter|keeper|lock washer|spindle lock", "spindle locks", wheel, Basis::corners, false, "", "never used twice"},
    {"", "spindle repair", piece, Basis::pieces, false, "", "quoted by the axle maker or an axle shop"},
    {"", "hubs", wheel, Basis::corners, false, "", "for each wheel"},
    {"banjo", "banjo washers", wheel, Basis::corners, false, "", "never used twice; two at each fitting"},
    {"", "caliper bracket bolts", piece, Basis::pieces, false, "", "of the maker's grade"},
    {"backing plate", "backing plate assembly", wheel, Basis::corners, false, "", "for each wheel, left or right"},
    {"", "magnet lever arms", wheel, Basis::corners, false, "", "for each wheel, left or right"},
    {"splice", "sealed splices", piece, Basis::pieces, false, "", "two for each magnet, one for each joint"},
    {"", "wire", trailer, Basis::length, false, "", "measure the run"},
    {"stud", "wheel studs", piece, Basis::pieces, false, "", "of the hub's own size and length"},
    {"wheel nut|lug nut", "wheel nuts", piece, Basis::pieces, false, "", "right for stud and wheel"},
    {"wheel bolt|lug bolt", "wheel bolts", piece, Basis::pieces, false, "", "right for hub and wheel"},
    {"", "wheels", piece, Basis::pieces, false, "", "one"},
    {"hose", "flex hoses", axle, Basis::corners, false, "", "the hoses of both sides of an axle"},
    {"tyre|tire", "tyres", axle, Basis::pieces, true, "", "a pair for an axle; dual wheels matched two a corner"},
    {"valve stem", "valve stems", wheel, Basis::pieces, false, "", "a new one with each tire"},
    {"fitting", "brake line fittings", piece, Basis::pieces, false, "", "count them"},
    {"", "brake line clips", piece, Basis::pieces, false, "", "count them"},
    {"line|pipe", "brake line", trailer, Basis::length, false, "", "measure the run"},
    {"", "reservoir caps", piece, Basis::pieces, false, "", "one"},
    {"", "reservoirs", piece, Basis::pieces, false, "", "one"},
    {"", "overrun cables", axle, Basis::corners, false, "", "the cables of both sides of an axle"},
    {"chamber", "air brake chambers", wheel, Basis::corners, false, "", "one alone is possible, of the same type"},
    {"slack", "slack adjusters", wheel, Basis::corners, false, "", "one alone is possible, of the same type"},
    {"", "clevis pins and cotters", wheel, Basis::corners, false, "", "never used twice"},
    {"", "springs", axle, Basis::corners, false, "", "springs of both sides of an axle together"},
    {"u-bolt", "U-bolts", piece, Basis::pieces, false, "nuts|washers", "with new nuts and washers"},
    {"shackle|bushing", "suspension bolts and bushings", axle, Basis::corners, false, "nuts", "a kit for an axle"},
    {"equali", "equalizers", piece, Basis::pieces, false, "", "count them"},
    {"chain", "safety chains", piece, Basis::pieces, false, "hooks|anchor bolts", "the pair"},
    {"", "chain hooks", piece, Basis::pieces, false, "", "count them"},
    {"coupler bolt", "coupler bolts", piece, Basis::pieces, false, "", "graded"},
    {"coupler", "couplers", piece, Basis::pieces, false, "graded bolts", "one"},
    {"ball", "hitch balls", piece, Basis::pieces, false, "", "one, of the coupler's size and rating"},
    {"jack", "tongue jacks", piece, Basis::pieces, false, "graded bolts", "one"},
    {"battery", "breakaway battery", piece, Basis::pieces, false, "", "one"},
    {"breakaway", "breakaway switches", piece, Basis::pieces, false, "cable", "switch and cable together"},
    {"fuse", "fuses", piece, Basis::pieces, false, "", "of the rating on the holder"},
    {"lamp|reflector", "lamps and reflectors", piece, Basis::pieces, false, "", "count them"},
    {"torsion", "torsion axles", piece, Basis::pieces, false, "", "one, by an axle shop"},
    {"axle beam", "axle beams", piece, Basis::pieces, false, "", "one, by an axle shop"},
    {"", "frame bolts", piece, Basis::pieces, false, "", "graded"},
    {"", "frame repair", piece, Basis::pieces, false, "", "quoted by a specialist"},
};

}  // namespace

std::span<const ReplaceRule> replace_rules() {
    return kRules;
}

const ReplaceRule* rule_for(std::string_view component) {
    const std::string name = item_key(component);
    for (const ReplaceRule& rule : kRules)
        if (item_key(rule.item) == name) return &rule;
    for (const ReplaceRule& rule : kRules)
        if (has_word(name, rule.words)) return &rule;
    return nullptr;
}

Need need_by_hand(const std::string& item) {
    Need need;
    need.item = item;
    need.by_hand = true;
    const ReplaceRule* rule = rule_for(item);
    need.wanted = rule == nullptr ? pieces(0) : extent_of(rule->basis, 0);
    if (rule == nullptr) return need;
    need.rule = rule->rule;
    need.matched = rule->matched;
    need.must_include = listed_words(rule->must_include);
    need.note = rule->because;
    return need;
}

}  // namespace cotter
