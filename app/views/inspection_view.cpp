// See inspection_view.h.
#include "app/views/inspection_view.h"

#include <algorithm>

#include <fmt/format.h>

namespace cotter {

namespace {

const InspectionAnswer* answered(const Job& job, const std::string& item) {
    for (const InspectionAnswer& a : job.all<InspectionAnswer>())
        if (a.item == item) return &a;
    return nullptr;
}

std::vector<const InspectionItem*> items_of(const Session& session) {
    const Trailer* trailer = session.job().only<Trailer>();
    return items_to_answer(session.judge().reg().inspection, trailer == nullptr ? Trailer{} : *trailer);
}

InspectionGroup& group_named(std::vector<InspectionGroup>& groups, const std::string& name) {
    for (InspectionGroup& g : groups)
        if (g.name == name) return g;
    groups.push_back({name, 0, 0, 0, {}});
    return groups.back();
}

std::vector<InspectionGroup> groups_of(const Session& session) {
    std::vector<InspectionGroup> out;
    for (const InspectionItem* item : items_of(session)) {
        InspectionGroup& group = group_named(out, item->group);
        group.wanted += 1;
        const InspectionAnswer* answer = answered(session.job(), item->id);
        if (answer == nullptr) continue;
        group.answered += 1;
        if (answer->answer == Answer::not_ok) group.not_ok += 1;
    }
    for (InspectionGroup& g : out) {
        g.words = fmt::format("{} of {}", g.answered, g.wanted);
        if (g.not_ok > 0) g.words += fmt::format(", {} not OK", g.not_ok);
    }
    return out;
}

// As it begins: the technician, with what the last inspection by the same person says of qualifications.
Inspection beginning(const Session& session) {
    Inspection head;
    head.inspector = session.settings().technician;
    if (const auto last = session.judge().last_inspection(session.job(), head.inspector)) {
        head.qualified_by = last->qualified_by;
        head.brake_qualified_by = last->brake_qualified_by;
    }
    head.date = session.now().local_date();
    return head;
}

std::vector<NotPassing> not_passing(const Session& session) {
    std::vector<NotPassing> out;
    for (const InspectionItem* item : items_of(session))
        if (const InspectionAnswer* a = answered(session.job(), item->id))
            if (a->answer == Answer::not_ok) out.push_back({item->id, item->group, a->remark});
    return out;
}

std::string result_of(const InspectionView& view) {
    if (view.answered < view.wanted) return fmt::format("{} still to answer", view.wanted - view.answered);
    if (!view.not_passing.empty())
        return fmt::format("All answered; {} not pass", view.not_passing.size() == 1
                                                            ? "1 item does"
                                                            : fmt::format("{} items do", view.not_passing.size()));
    return view.lacks.empty() ? "All answered, nothing missing: it can be signed off at the hand-over"
                              : "All answered; the inspector's details are incomplete";
}

}  // namespace

InspectionView inspection_view(const Session& session) {
    const Job& job = session.job();
    InspectionView view;
    view.chrome = chrome_of(session, "Periodic inspection", trailer_words(job));
    view.trouble = session.judge().trouble();
    view.drafts = session.drafts();
    view.today = session.now().local_date();
    view.groups = groups_of(session);
    const Inspection* head = job.only<Inspection>();
    view.begun = head != nullptr;
    view.head = view.begun ? *head : beginning(session);
    if (view.head.date) view.date = view.head.date->text();
    const InspectionState state = inspection_gaps(job, session.judge().reg().inspection);
    view.answered = state.answered;
    view.wanted = state.wanted;
    for (const std::string& line : state.missing)
        if (!line.starts_with("item ")) view.lacks.push_back(upper_first(line));
    view.not_passing = not_passing(session);
    view.result = result_of(view);
    if (view.begun && head->date)
        view.due = fmt::format("The next one is due by {}; this record is kept until {}.",
                               months_later(*head->date, 12).text(), months_later(*head->date, 14).text());
    return view;
}

InspectionGroupView inspection_group_view(const Session& session) {
    InspectionGroupView view;
    view.group = session.route().record;
    view.begun = session.job().only<Inspection>() != nullptr;
    view.drafts = session.drafts();
    bool passed = false;
    for (const InspectionItem* item : items_of(session)) {
        if (item->group != view.group) {
            if (passed && view.next.empty()) view.next = item->group;
            continue;
        }
        passed = true;
        InspectionItemView one{item->id, item->fails, item->scope == ItemScope::where_fitted, {}};
        if (const InspectionAnswer* a = answered(session.job(), item->id)) one.answer = *a;
        view.answered += one.answer ? 1 : 0;
        view.items.push_back(std::move(one));
    }
    view.chrome = chrome_of(session, view.group, fmt::format("{} of {} answered", view.answered, view.items.size()));
    return view;
}

InspectionAnswer answer_of(const InspectionItemView& item, Answer answer) {
    InspectionAnswer out;
    out.item = item.id;
    out.answer = answer;
    switch (answer) {
        case Answer::ok:
            break;
        case Answer::not_ok:
            out.remark = item.fails;
            break;
        case Answer::repaired:
            out.remark = "found: " + item.fails + "; repaired";
            break;
        case Answer::not_fitted:
            out.remark = "not fitted to this trailer";
            break;
    }
    return out;
}

}  // namespace cotter
