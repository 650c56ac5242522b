// Needs from findings: what each calls for, joined by item.
#include "core/quote/needs.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/quote/called_for.h"
#include "core/quote/words.h"

namespace cotter {

namespace {

bool calls_for_something(const Finding& f, const NeedScope& scope) {
    const bool graded =
        f.grade == Grade::repair || f.grade == Grade::do_not_tow || (scope.watch && f.grade == Grade::watch);
    return graded && (scope.settled || f.outcome == Outcome::open);
}

// What all findings together say of one item.
struct Group {
    const ReplaceRule* rule = nullptr;
    std::vector<Id<Finding>> findings;
    std::map<Place, int> each;  // at each place; 0: asked
    std::set<Place> stud_places;
    std::vector<std::string_view> notes;

    void add(const CalledPart& part, const Finding& finding) {
        rule = part.item;
        if (findings.empty() || !(findings.back() == finding.id)) findings.push_back(finding.id);
        if (!part.note.empty() && std::find(notes.begin(), notes.end(), part.note) == notes.end())
            notes.push_back(part.note);
        for (const Place& place : part.places) {
            const auto [it, fresh] = each.emplace(place, part.each);
            // One finding that does not know the number leaves the place's number unknown.
            if (!fresh) it->second = it->second == 0 || part.each == 0 ? 0 : std::max(it->second, part.each);
            if (part.by_studs) stud_places.insert(place);
        }
    }
};

int studs_of(const Job& job, const Place& place) {
    const Trailer* trailer = job.only<Trailer>();
    const auto at = static_cast<std::size_t>(place.axle) - 1;
    return trailer != nullptr && place.is_corner() && at < trailer->axles.size() ? trailer->axles[at].studs : 0;
}

// Each finding names one stud.
int bad_studs(const Job& job, const Group& group, const Place& place) {
    int bad = 0;
    for (const Id<Finding>& id : group.findings) {
        const Finding* f = job.find(id);
        const bool here = f != nullptr && f->place.axle == place.axle && f->place.side == place.side;
        if (here && item_key(f->component).find("stud") != std::string::npos) ++bad;
    }
    return bad;
}

// 0 when the number at any place is not known.
int count_of(const Job& job, const Group& group) {
    int sum = 0;
    for (const auto& [place, each] : group.each) {
        const bool studs = group.stud_places.count(place) != 0;
        const int here = studs && each > 0 ? studs_called(bad_studs(job, group, place), studs_of(job, place)) : each;
        if (here == 0) return 0;
        sum += here;
    }
    return sum;
}

std::map<std::string, Group> grouped(const Job& job, const NeedScope& scope) {
    std::map<std::string, Group> out;
    for (const Finding& f : job.all<Finding>()) {
        if (!calls_for_something(f, scope)) continue;
        for (const CalledPart& part : called_for(job, f))
            out[part.item != nullptr ? std::string(part.item->item) : item_key(f.component)].add(part, f);
    }
    return out;
}

std::string note_of(const Group& group) {
    if (group.rule == nullptr) return "no rule says what is replaced with it";
    std::string out(group.rule->because);
    for (const std::string_view note : group.notes) out += (out.empty() ? "" : "; ") + std::string(note);
    return out;
}

Need need_of(const Job& job, const std::string& item, const Group& group) {
    Need need;
    need.item = item;
    need.findings = group.findings;
    for (const auto& [place, each] : group.each) need.places.push_back(place);
    need.note = note_of(group);
    if (group.rule == nullptr) {
        need.wanted = pieces(0);
        return need;
    }
    need.rule = group.rule->rule;
    need.wanted = extent_of(group.rule->basis, count_of(job, group));
    need.matched = group.rule->matched;
    need.must_include = listed_words(group.rule->must_include);
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

// The same derivation as before: kept as it is, with what a person has chosen since.
bool unchanged(const Need& old, const Need& fresh) {
    return old.findings == fresh.findings && old.places == fresh.places && old.wanted == fresh.wanted;
}

// Derived by an older rule, from findings that call for other items today: nothing is bought for it any more, or the
// same part would be bought twice.
bool superseded(const Need& old, const std::map<std::string, Group>& groups) {
    if (old.by_hand || old.left_out || old.findings.empty()) return false;
    if (std::any_of(groups.begin(), groups.end(),
                    [&](const auto& group) { return item_key(group.first) == item_key(old.item); }))
        return false;
    return std::all_of(old.findings.begin(), old.findings.end(), [&](const Id<Finding>& id) {
        return std::any_of(groups.begin(), groups.end(), [&](const auto& group) {
            const auto& of = group.second.findings;
            return std::find(of.begin(), of.end(), id) != of.end();
        });
    });
}

}  // namespace

std::vector<Need> derive_needs(const Job& job, const NeedScope& scope, const QuoteStamp& stamp, Random& random) {
    std::vector<Need> out;
    const auto groups = grouped(job, scope);
    const auto& all = job.all<Need>();
    for (const auto& [item, group] : groups) {
        Need need = need_of(job, item, group);
        const auto old = std::find_if(all.begin(), all.end(),
                                      [&](const Need& n) { return item_key(n.item) == item_key(need.item); });
        if (old != all.end() && (old->by_hand || unchanged(*old, need))) continue;
        need.id = old != all.end() ? old->id : Id<Need>{Uuid::random(random)};
        need.left_out = old != all.end() && old->left_out;
        need.at = stamp.at;
        need.by = stamp.by;
        out.push_back(std::move(need));
    }
    for (const Need& old : all) {
        if (!superseded(old, groups)) continue;
        Need need = old;
        need.left_out = true;
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
