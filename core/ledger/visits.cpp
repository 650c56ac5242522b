// Findings, tightenings and photos over the visits.
#include "core/ledger/visits.h"

#include <algorithm>
#include <map>

#include "core/judge/values.h"
#include "core/work/torque_check.h"

namespace cotter::ledger {

namespace {

bool repaired(const Finding& f) {
    return f.outcome == cotter::Outcome::repaired;
}

bool same_part(const Finding& a, const Finding& b) {
    return corner_of(a.place) == corner_of(b.place) && a.component == b.component;
}

// The later visit that repaired the part, or found the very same thing again.
std::string settled_later(const std::vector<VisitOnFile>& visits, std::size_t from, const Finding& finding) {
    for (std::size_t i = from + 1; i < visits.size(); ++i)
        for (const Finding& later : visits[i].job().all<Finding>())
            if (same_part(later, finding) && (repaired(later) || later.defect == finding.defect))
                return visits[i].line.job;
    return {};
}

bool before_in_list(const FindingLine& a, const FindingLine& b) {
    if (a.open != b.open) return a.open;
    if (a.open && a.finding.grade != b.finding.grade) return a.finding.grade > b.finding.grade;
    return b.visit < a.visit;
}

}  // namespace

std::vector<FindingLine> findings_of(const std::vector<VisitOnFile>& visits) {
    std::vector<FindingLine> out;
    for (std::size_t i = 0; i < visits.size(); ++i)
        for (const Finding& finding : visits[i].job().all<Finding>()) {
            if (finding.grade == Grade::serviceable) continue;
            FindingLine line{visits[i].line.job, visits[i].line.opened, finding, false, {}};
            if (!repaired(finding)) line.settled_by = settled_later(visits, i, finding);
            line.open = !repaired(finding) && line.settled_by.empty();
            out.push_back(std::move(line));
        }
    std::stable_sort(out.begin(), out.end(), before_in_list);
    return out;
}

std::vector<TorqueLine> torques_of(const std::vector<VisitOnFile>& visits) {
    std::vector<TorqueLine> out;
    std::map<std::pair<Place, std::string>, std::string> last;  // place and joint, the job that tightened it
    for (const VisitOnFile& visit : visits)
        for (const Torque& torque : visit.job().all<Torque>()) {
            TorqueLine line{visit.line.job, visit.line.opened, torque, false, {}, proves_torque(check_torque(torque))};
            if (torque.taken == Taken::measured && !torque.passes.empty()) {
                std::string& before = last[{torque.place, torque.joint}];
                line.retorque = !before.empty();
                line.first_job = std::exchange(before, visit.line.job);
            }
            out.push_back(std::move(line));
        }
    std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return b.visit < a.visit; });
    return out;
}

std::vector<PhotoPair> pairs_of(const std::vector<VisitOnFile>& visits) {
    std::vector<PhotoPair> out;
    for (auto visit = visits.rbegin(); visit != visits.rend(); ++visit) {
        std::map<Id<Shot>, std::string> files;
        for (const PacketPhoto& photo : visit->document.photos) files[photo.shot] = photo.sha256;
        std::map<std::pair<Place, Slot>, std::pair<std::vector<std::string>, std::vector<std::string>>> slots;
        for (const Shot& shot : visit->job().all<Shot>()) {
            auto& [before, after] = slots[{shot.place, shot.slot}];
            (shot.stage == Stage::before ? before : after).push_back(files[shot.id]);
        }
        for (const auto& [where, shots] : slots)
            for (std::size_t i = 0; i < std::min(shots.first.size(), shots.second.size()); ++i)
                out.push_back(
                    {visit->line.job, visit->line.opened, where.first, where.second, shots.first[i], shots.second[i]});
    }
    return out;
}

}  // namespace cotter::ledger
