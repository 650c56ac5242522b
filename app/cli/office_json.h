// What the ledger answers as JSON for scripts. Field names are those of core/ledger/answers.h. Pure.
#pragma once

#include "core/ledger/answers.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

[[nodiscard]] Json as_json(const ledger::Receipt& receipt);
[[nodiscard]] Json as_json(const ledger::JobLine& job);
[[nodiscard]] Json as_json(const ledger::Hit& hit);
[[nodiscard]] Json as_json(const ledger::TrailerLine& trailer);
[[nodiscard]] Json as_json(const ledger::TrailerPage& page);
[[nodiscard]] Json as_json(const ledger::DueRow& row);
[[nodiscard]] Json as_json(const ledger::OrderRow& row);
[[nodiscard]] Json as_json(const ledger::AxleFailure& row);
[[nodiscard]] Json as_json(const ledger::Comparison& comparison);

template <class T>
[[nodiscard]] Json list_json(const std::vector<T>& rows) {
    Json out = Json::array();
    for (const T& row : rows) out.push_back(as_json(row));
    return out;
}

}  // namespace cotter::cli
