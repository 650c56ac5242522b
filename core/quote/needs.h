// What the findings call for, by what is replaced together. Pure; ids come from Random. Any thread.
#pragma once

#include <span>
#include <string_view>

#include "core/base/ports.h"
#include "core/quote/extent.h"
#include "core/survey/job.h"

namespace cotter {

// An item that is bought, and on what unit. Which items a finding calls for, and how many, is in called_for.h. All of
// it is common practice (the maker's own word replaces it), so every need made from it can be changed by hand.
struct ReplaceRule {
    std::string_view words;  // parts of a component's name that mean this, parted by '|'; none: by its own name only
    std::string_view item;   // what the need is called
    ReplacedBy rule;
    Basis basis;
    bool matched;                   // friction and tyres: whole axles, one lot across an axle
    std::string_view must_include;  // what a complete offer brings along, parted by '|'
    std::string_view because;       // said to the user
};
[[nodiscard]] std::span<const ReplaceRule> replace_rules();
// The rule of this item, else the first rule one of whose words is in the component's name; nullptr when none fits.
[[nodiscard]] const ReplaceRule* rule_for(std::string_view component);

// A need that a person asks for without a finding: counted as its rule says, nothing counted yet, of no place.
[[nodiscard]] Need need_by_hand(const std::string& item);

// Which findings call for something: 'repair' and 'do not tow' that are still open, and more when asked for.
struct NeedScope {
    bool watch = false;    // 'watch' too
    bool settled = false;  // those that are repaired, deferred or declined already, too
};

struct QuoteStamp {
    Instant at;
    std::string by;
};

// The needs to put into the job: new ones, and derived ones whose findings changed (under their old id). One need an
// item; findings of one item are joined. An amount of 0: not known, so a person is asked. Needs changed by hand stay as
// they are, and their item is not derived again. Needs whose findings are all gone stay too: taking them out is the
// user's choice; one that was left out stays left out. One whose findings call for other items today is left out.
// Empty: nothing to put.
[[nodiscard]] std::vector<Need> derive_needs(const Job& job, const NeedScope& scope, const QuoteStamp& stamp,
                                             Random& random);

// The corners that the needs touch, without doubles: what a price per corner is divided by.
[[nodiscard]] int corners_touched(std::span<const Need> needs);
// The axles likewise.
[[nodiscard]] int axles_touched(std::span<const Need> needs);

}  // namespace cotter
