// The visits to one trailer with their records, and what is told of them together. For core/ledger only. Pure.
#pragma once

#include "core/ledger/answers.h"
#include "core/packet/job_document.h"

namespace cotter::ledger {

struct VisitOnFile {
    JobLine line;
    JobDocument document;
    std::string fingerprint = {};  // of its packet in view
    [[nodiscard]] const Job& job() const { return document.job; }
};

// Of all of these: visits from the oldest to the newest.
[[nodiscard]] std::vector<FindingLine> findings_of(const std::vector<VisitOnFile>& visits);
[[nodiscard]] std::vector<TorqueLine> torques_of(const std::vector<VisitOnFile>& visits);
[[nodiscard]] std::vector<PhotoPair> pairs_of(const std::vector<VisitOnFile>& visits);
[[nodiscard]] Costs costs_of(const std::vector<VisitOnFile>& visits);

}  // namespace cotter::ledger
