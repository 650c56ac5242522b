// The rules of what is replaced together, and needs from findings.
#include "core/quote/needs.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/base/text.h"

namespace cotter {

namespace {

using enum ReplacedBy;

// Order matters: the first rule that fits counts, so special names stand before general ones.
constexpr ReplaceRule kRules[] = {
    {"guide pin|hardware|pin kit|clip", "pad hardware kit", wheel, Basis::corners, false, "clips|guide pins",
     "a kit of pins and clips for each wheel"},
    {"pads|pad", "brake pads", axle, Basis::corners, true, "", "friction parts of both sides of an axle together"},
    {"shoes|shoe|lining", "brake shoes", axle, Basis::corners, true, "",
     "friction parts of both sides of an axle together"},
    {"rotor|disc", "rotors", axle, Basis::corners, true, "", "rotors of both sides of an axle together"},
    {"drum", "drums", axle, Basis::corners, true, "", "drums of both sides of an axle together"},
    {"magnet", "brake magnets", axle, Basis::corners, true, "", "magnets of both sides of an axle together"},
    {"return spring|brake spring|shoe spring", "brake springs", axle, Basis::corners, true, "",
     "springs of both sides of an axle together"},
    {"caliper", "calipers", axle, Basis::corners, false, "guide pins|banjo washers",
     "usually both sides of an axle; one alone is possible"},
    {"hub oil", "hub oil", volume, Basis::volume, false, "", "enter what the hubs take, by the axle maker"},
    {"brake fluid|hydraulic fluid", "brake fluid", volume, Basis::volume, false, "",
     "the whole system when mixed or contaminated; enter its volume"},
    {"bearing|cone|cup", "bearing set", wheel, Basis::corners, false, "inner cone and cup|outer cone and cup",
     "cones and cups, inner and outer together"},
    {"seal", "hub seal", wheel, Basis::corners, false, "", "a new seal whenever the hub was off"},
    {"cap gasket|cap o-ring", "hub cap gasket", wheel, Basis::corners, false, "", "for each wheel"},
    {"hub cap|cap", "hub cap", wheel, Basis::corners, false, "gasket", "for each wheel"},
    {"cotter|keeper|lock washer", "spindle locks", wheel, Basis::corners, false, "", "never used twice"},
    {"banjo", "banjo washers", wheel, Basis::corners, false, "", "never used twice"},
    {"stud|wheel nut|lug nut", "wheel studs and nuts", piece, Basis::pieces, false, "",
     "those at the hub that are damaged; count them"},
    {"hose", "flex hoses", axle, Basis::corners, false, "banjo washers", "the hoses of both sides of an axle"},
    {"tyre|tire", "tyres", axle, Basis::pieces, true, "", "a pair for an axle; dual wheels matched two a corner"},
    {"line|pipe", "brake line", trailer, Basis::length, false, "fittings", "measure the run"},
    {"battery", "breakaway battery", piece, Basis::pieces, false, "", "one"},
};

bool holds_word(std::string_view text, std::string_view words) {
    while (!words.empty()) {
        const auto bar = std::min(words.find('|'), words.size());
        if (text.find(words.substr(0, bar)) != std::string_view::npos) return true;
        words.remove_prefix(std::min(bar + 1, words.size()));
    }
    return false;
}

std::vector<std::string> listed(std::string_view words) {
    std::vector<std::string> out;
    while (!words.empty()) {
        const auto bar = std::min(words.find('|'), words.size());
        out.emplace_back(words.substr(0, bar));
        words.remove_prefix(std::min(bar + 1, words.size()));
    }
    return out;
}

bool calls_for_something(const Finding& f, const NeedScope& scope) {
    const bool graded =
        f.grade == Grade::repair || f.grade == Grade::do_not_tow || (scope.watch && f.grade == Grade::watch);
    return graded && (scope.settled || f.outcome == Outcome::open);
}

// Whole axles where the rule says so; an inner or outer wheel counts as its corner.
std::vector<Place> spread(const std::set<Place>& places, ReplacedBy rule) {
    std::set<Place> out;
    for (const Place& place : places) {
        if (!place.is_corner()) {
            out.insert(place);
            continue;
        }
        out.insert(Place::corner(place.axle, place.side));
        if (rule == axle) {
            out.insert(Place::corner(place.axle, Side::left));
            out.insert(Place::corner(place.axle, Side::right));
        }
    }
    return {out.begin(), out.end()};
}

// A tyre for each wheel: two at a corner with dual wheels.
int wheels_at(const Job& job, const Place& corner) {
    const Trailer* trailer = job.only<Trailer>();
    const auto at = static_cast<std::size_t>(corner.axle) - 1;
    const bool dual = trailer != nullptr && at < trailer->axles.size() && trailer->axles[at].wheels == Wheels::dual;
    return dual ? 2 : 1;
}

Extent wanted(const Job& job, const ReplaceRule& rule, const std::vector<Place>& places) {
    const auto at_corners =
        static_cast<int>(std::count_if(places.begin(), places.end(), [](const Place& p) { return p.is_corner(); }));
    if (rule.basis == Basis::corners) return corners(at_corners);
    if (rule.basis != Basis::pieces) return extent_of(rule.basis, 0);
    int count = 0;
    for (const Place& place : places) count += rule.rule == axle && place.is_corner() ? wheels_at(job, place) : 1;
    return pieces(count);
}

struct Group {
    const ReplaceRule* rule = nullptr;
    std::vector<Id<Finding>> findings;
    std::set<Place> places;
};

std::map<std::string, Group> grouped(const Job& job, const NeedScope& scope) {
    std::map<std::string, Group> out;
    for (const Finding& f : job.all<Finding>()) {
        if (!calls_for_something(f, scope)) continue;
        const ReplaceRule* rule = rule_for(f.component);
        Group& group = out[rule != nullptr ? std::string(rule->item) : item_key(f.component)];
        group.rule = rule;
        group.findings.push_back(f.id);
        group.places.insert(f.place);
    }
    return out;
}

Need need_of(const Job& job, const std::string& item, const Group& group) {
    Need need;
    need.item = item;
    need.findings = group.findings;
    if (group.rule == nullptr) {
        need.places = {group.places.begin(), group.places.end()};
        need.wanted = pieces(static_cast<int>(need.places.size()));
        need.note = "no rule says what is replaced with it";
        return need;
    }
    need.rule = group.rule->rule;
    need.places = spread(group.places, group.rule->rule);
    need.wanted = wanted(job, *group.rule, need.places);
    need.matched = group.rule->matched;
    need.must_include = listed(group.rule->must_include);
    need.note = group.rule->because;
    return need;
}

int touched(std::span<const Need> needs, bool axles) {
    std::set<Place> seen;
    for (const Need& need : needs) {
        if (need.left_out) continue;
        for (const Place& place : need.places)
            if (place.is_corner()) seen.insert(Place::corner(place.axle, axles ? Side::left : place.side));
    }
    return static_cast<int>(seen.size());
}

}  // namespace

std::span<const ReplaceRule> replace_rules() {
    return kRules;
}

const ReplaceRule* rule_for(std::string_view component) {
    const std::string name = item_key(component);
    for (const ReplaceRule& rule : kRules)
        if (holds_word(name, rule.words)) return &rule;
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
    need.must_include = listed(rule->must_include);
    need.note = rule->because;
    return need;
}

std::vector<Need> derive_needs(const Job& job, const NeedScope& scope, const QuoteStamp& stamp, Random& random) {
    std::vector<Need> out;
    for (const auto& [item, group] : grouped(job, scope)) {
        Need need = need_of(job, item, group);
        const auto& all = job.all<Need>();
        const auto old = std::find_if(all.begin(), all.end(),
                                      [&](const Need& n) { return item_key(n.item) == item_key(need.item); });
        if (old != all.end() && (old->by_hand || (old->findings == need.findings && old->places == need.places)))
            continue;
        need.id = old != all.end() ? old->id : Id<Need>{Uuid::random(random)};
        need.left_out = old != all.end() && old->left_out;
        need.at = stamp.at;
        need.by = stamp.by;
        out.push_back(std::move(need));
    }
    return out;
}

int corners_touched(std::span<const Need> needs) {
    return touched(needs, false);
}

int axles_touched(std::span<const Need> needs) {
    return touched(needs, true);
}

}  // namespace cotter
