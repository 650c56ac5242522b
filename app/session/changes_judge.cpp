// Changes by judging: makers' figures, the periodic inspection and its answers. See changes.h.
#include <algorithm>

#include "app/session/put_stamped.h"

namespace cotter {

Result<Changes> changes_of(const Job&, const PutMakerLimit& c, const Stamp& stamp) {
    return put_stamped(c.figure, stamp);
}

Result<Changes> changes_of(const Job& job, const RemoveMakerLimit& c, const Stamp&) {
    if (job.find(c.figure) == nullptr) return fail(Errc::refused, "the maker's figure is not there any more");
    return Changes{Remove{RecordKind::maker_limit, c.figure.uuid}};
}

Result<Changes> changes_of(const Job& job, const PutInspection& c, const Stamp& stamp) {
    Inspection head = c.head;
    if (const Inspection* there = job.only<Inspection>()) head.id = there->id;
    return put_stamped(std::move(head), stamp);
}

Result<Changes> changes_of(const Job& job, const RemoveInspection&, const Stamp&) {
    const Inspection* head = job.only<Inspection>();
    if (head == nullptr) return fail(Errc::refused, "the job is no periodic inspection");
    Changes out;
    for (const InspectionAnswer& a : job.all<InspectionAnswer>())
        out.emplace_back(Remove{RecordKind::inspection_answer, a.id.uuid});
    out.emplace_back(Remove{RecordKind::inspection, head->id.uuid});
    return out;
}

Result<Changes> changes_of(const Job& job, const AnswerItem& c, const Stamp& stamp) {
    InspectionAnswer answer = c.answer;
    const auto& all = job.all<InspectionAnswer>();
    const auto there =
        std::find_if(all.begin(), all.end(), [&](const InspectionAnswer& a) { return a.item == answer.item; });
    if (there != all.end()) answer.id = there->id;
    return put_stamped(std::move(answer), stamp);
}

}  // namespace cotter
