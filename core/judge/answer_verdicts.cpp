// Verdicts and replies, and the looks that answer a point.
#include <algorithm>

#include "core/judge/answering.h"

namespace cotter::answering {

namespace {

RestsOn footing_of(std::string_view text) {
    const auto has = [&](std::string_view part) { return text.find(part) != std::string_view::npos; };
    if (text.empty()) return RestsOn::record;
    if (has("common practice")) return RestsOn::practice;
    if (text.starts_with("49 CFR 570")) return RestsOn::state_inspection;
    for (const std::string_view part : {"49 CFR 565", "49 CFR 567", "49 CFR 571", "49 CFR 574"})
        if (text.starts_with(part)) return RestsOn::build;
    return text.starts_with("49 CFR") || text.starts_with("29 CFR") ? RestsOn::law : RestsOn::state_law;
}

// The gravest entry of the list: what 'something is wrong' may mean when nobody said what.
Grade gravest(const TradePoint& point) {
    if (point.list == ListKind::none || point.entries.empty()) return Grade::do_not_tow;
    Grade worst = Grade::watch;
    for (const LookEntry& entry : point.entries) worst = std::max(worst, entry.grade);
    return worst;
}

Verdict of_entry(const TradePoint& point, const LookEntry& entry, const Layout& layout) {
    const Law law = entry.law.text.empty() ? law_at(point, layout) : entry.law;
    return told(entry.grade, fact(FactId::entry, EntryOf{point.id, std::string(entry.id)}), source_of(law));
}

// Items that are wrong, each with its own grade; an item that is not in the table is as grave as any.
void bad_items(const Scene& scene, const TradePoint& point, const Look& look, std::vector<Verdict>& out) {
    for (const LookItem& item : look.items) {
        if (item.result == LookResult::good && point.list != ListKind::choice) continue;
        const LookEntry* entry = find_entry(point, item.item);
        if (item.result == LookResult::cannot_tell)
            out.push_back(open(fact(FactId::entry_cannot_tell, EntryOf{point.id, item.item})));
        else if (entry != nullptr)
            out.push_back(of_entry(point, *entry, scene.layout));
        else if (item.result == LookResult::bad)
            out.push_back(told(gravest(point), fact(FactId::looks_bad), source_of(law_at(point, scene.layout))));
    }
}

// A tick list is good when every lamp of it that is offered here was answered, each by itself.
void missing_ticks(const Scene& scene, const Ask& ask, const Look& look, std::vector<Verdict>& out) {
    std::int64_t answered = 0, wanted = 0;
    for (const LookEntry* entry : entries_at(*ask.point, scene.layout, ask.place)) {
        ++wanted;
        answered += std::any_of(look.items.begin(), look.items.end(),
                                [&](const LookItem& item) { return item.item == entry->id; });
    }
    if (answered < wanted) out.push_back(open(fact(FactId::ticks_missing, answered, wanted)));
}

std::vector<Verdict> verdicts_of(const Scene& scene, const Ask& ask, const Look& look) {
    const TradePoint& point = *ask.point;
    std::vector<Verdict> out;
    bad_items(scene, point, look, out);
    if (look.result == LookResult::cannot_tell) out.push_back(open(fact(FactId::looker_cannot_tell)));
    if (look.result == LookResult::bad && out.empty())
        out.push_back(told(gravest(point), fact(FactId::looks_bad), source_of(law_at(point, scene.layout))));
    if (point.list == ListKind::ticks) missing_ticks(scene, ask, look, out);
    if (point.list == ListKind::choice && look.items.size() != 1) out.push_back(open(fact(FactId::choice_missing)));
    if (out.empty())
        out.push_back(told(Grade::serviceable, fact(FactId::looks_good), source_of(law_at(point, scene.layout))));
    return out;
}

}  // namespace

AnswerSource source_of(const Law& law) {
    return {footing_of(law.text), std::string(law.text), law.evidence};
}

AnswerSource source_of(const Limit& limit) {
    static constexpr RestsOn kRestsOn[] = {RestsOn::law,  RestsOn::state_law, RestsOn::stamped, RestsOn::maker,
                                           RestsOn::shop, RestsOn::practice,  RestsOn::physics};
    std::string text = limit.source.text;
    if (!limit.source.page.empty()) text += ", page " + limit.source.page;
    return {kRestsOn[static_cast<std::size_t>(limit.source.kind)], std::move(text), limit.evidence};
}

AnswerSource own_band() {
    return {RestsOn::own, {}, Evidence::read};
}

AnswerSource practice(std::string_view text) {
    return {RestsOn::practice, std::string(text), Evidence::read};
}

Verdict told(Grade grade, Fact says, AnswerSource source) {
    return {grade, std::move(says), std::move(source), {}};
}

Verdict open(Fact says, AnswerSource source) {
    return {std::nullopt, std::move(says), std::move(source), {}};
}

// The gravest that is repair or worse; else what cannot be told; else watch before good.
// A rule that found no figure to hold a reading against may have said nothing at all: then nobody can tell.
const Verdict& governing(const Reply& reply) {
    static const Verdict nothing_said = open(fact(FactId::not_judged));
    if (reply.verdicts.empty()) return nothing_said;
    const auto weight = [](const Verdict& v) {
        if (!v.grade) return 2;
        return *v.grade >= Grade::repair ? 1 + static_cast<int>(*v.grade) : static_cast<int>(*v.grade);
    };
    return *std::max_element(reply.verdicts.begin(), reply.verdicts.end(),
                             [&](const Verdict& a, const Verdict& b) { return weight(a) < weight(b); });
}

std::optional<Grade> grade_of(const Reply& reply) {
    return governing(reply).grade;
}

bool is_bad(const Reply& reply) {
    return grade_of(reply).value_or(Grade::serviceable) >= Grade::repair;
}

bool is_good(const Reply& reply) {
    return grade_of(reply) && *grade_of(reply) < Grade::repair;
}

Reply reply_at(const Sitting& sitting, const Instant& at, std::string_view by, Uuid record) {
    Reply r;
    r.facet = Facet::measure;
    r.sitting = &sitting;
    r.at = at;
    r.by = by;
    r.record = record;
    r.reach = sitting.owner ? Reach::outside : Reach::wheel_off;
    r.accepted = sitting.accepted;
    return r;
}

Reply reply_of(const Sitting& sitting, const Measures& measures) {
    const auto newest = std::max_element(measures.begin(), measures.end(), [](const Measure* a, const Measure* b) {
        return a->reading->at < b->reading->at;
    });
    const Reading& reading = *(*newest)->reading;
    Reply r = reply_at(sitting, reading.at, reading.by, reading.id.uuid);
    for (const Measure* m : measures) r.stage = std::max(r.stage, m->reading->stage);
    r.staged = true;
    return r;
}

bool take_faults(Measures& list, Reply& reply) {
    std::erase_if(list, [&](const Measure* m) {
        if (!m->fault) return false;
        reply.verdicts.push_back(
            open(*m->fault == FactId::future ? fact(FactId::future, m->reading->at) : fact(*m->fault, m->amount())));
        return true;
    });
    reply.absent = list.empty() && std::all_of(reply.verdicts.begin(), reply.verdicts.end(),
                                               [](const Verdict& v) { return v.fact.id == FactId::future; });
    return list.empty();
}

void tell_not_taken(const Sitting& sitting, std::string_view name, const Place& place, Replies& out) {
    const ReadingSpec* spec = reading_spec(name);
    for (const Reading* r : sitting.not_taken) {
        if (reading_spec(r->what) != spec) continue;
        const bool here = place.wheel == Wheel::only ? corner_only(r->place) == place : r->place == place;
        if (!here) continue;
        Reply reply = reply_at(sitting, r->at, r->by, r->id.uuid);
        reply.stage = r->stage;
        reply.staged = true;
        reply.absent = true;
        reply.verdicts.push_back(open(fact(FactId::not_taken, r->taken, r->reason)));
        out.push_back(std::move(reply));
    }
}

void looks_of(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        auto it = std::lower_bound(s.looks.begin(), s.looks.end(), ask.point->id,
                                   [](const LookAt& a, PointId id) { return a.point < id; });
        for (; it != s.looks.end() && it->point == ask.point->id; ++it) {
            const Look& look = *it->look;
            if (look.place != ask.place) continue;
            Reply r = reply_at(s, look.at, look.by, look.id.uuid);
            r.facet = Facet::look;
            r.stage = look.stage;
            r.staged = true;
            r.reach = s.owner ? Reach::outside : look.reach;
            if (look.finding) r.finding = *look.finding;
            r.verdicts = verdicts_of(scene, ask, look);
            out.push_back(std::move(r));
        }
    }
}

}  // namespace cotter::answering
