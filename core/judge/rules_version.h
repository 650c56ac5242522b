// The version of the rules that answers about towing are made by. Whoever keeps such answers, as the office's ledger
// does, makes them anew when it changes.
#pragma once

namespace cotter {

// Raise it with every change after which the same records, limits and instant may give another answer, or say it in
// other words: in answer_*.cpp and fact_english.cpp here, in the table of points and in work_done of core/trade.
inline constexpr int kRulesVersion = 1;

}  // namespace cotter
