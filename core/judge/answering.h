// What the rules of single points share: the visits made ready to be asked, verdicts and replies. For core/judge.
#pragma once

#include <initializer_list>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/judge/answer.h"
#include "core/judge/state_rules.h"
#include "core/trade/reading_names.h"
#include "core/trade/reading_spec.h"

namespace cotter::answering {

inline constexpr double kPsi = 6894.757293168;  // Pa
inline constexpr double kPound = 0.45359237;    // kg
inline constexpr double kInch = 0.0254;         // m
inline constexpr double kMile = 1609.344;       // m
// Beyond by more than the arithmetic's own grain.
[[nodiscard]] inline bool over(double value, double most) {
    return value > most * (1 + 1e-9);
}

// One point of one reading, at its own corner or wheel.
struct Measure {
    Place place;
    int axle = 0;  // when it names a whole axle
    const ReadingSpec* spec = nullptr;
    std::string_view where;  // the point's words without the corner's name
    double si = 0;
    double step_si = 0;           // of the instrument, or the usual one's
    std::optional<FactId> fault;  // why the value cannot be used
    const Reading* reading = nullptr;
    const ReadingPoint* point = nullptr;

    [[nodiscard]] Amount amount() const { return {point->value, reading->unit}; }
};

using Measures = std::vector<const Measure*>;

struct LookAt {
    PointId point = PointId::plate_id;
    const Look* look = nullptr;
};

// One visit, made ready.
struct Sitting {
    const Job* job = nullptr;
    std::size_t index = 0;  // oldest first
    bool accepted = true;
    bool owner = false;    // an owner's look: it answers points that can be seen from outside
    bool current = false;  // the job that is asked about
    Instant opened;
    Instant last;                 // of what was recorded; the sign-off when there is one
    std::vector<Measure> values;  // as this visit left it (the current one in State::found: as it found it), by spec
    std::vector<Measure> all;     // the same with those that later ones replaced, by spec, then in order of taking
    std::vector<const Reading*> not_taken;
    std::vector<LookAt> looks;  // by point, then as recorded
    double run_m = -1;          // distance from this visit to the newest known; below 0: not known
};

// What one record says about a point at its place.
struct Verdict {
    std::optional<Grade> grade;  // none: it cannot be told
    Fact fact;
    AnswerSource source;
    std::vector<Fact> steps;
};

// The sides of an answer that stand beside each other: a look closes no reading and a reading no look.
enum class Facet : std::uint8_t { look, measure };

struct Reply {
    std::vector<Verdict> verdicts;  // at least one
    std::vector<Fact> notes;        // causes and the like, without a grade
    Facet facet = Facet::look;
    const Sitting* sitting = nullptr;
    Stage stage = Stage::before;
    bool staged = false;  // the record says whether it is from before or after the work
    Instant at;
    std::string_view by;
    Reach reach = Reach::outside;
    bool accepted = true;
    bool absent = false;           // no answer: only why there is none
    std::optional<Instant> until;  // when the record itself says so: a forecast, the inputs of a sum
    std::optional<Keeps> keeps;    // other than the point's
    bool any_facet = false;        // a finding: either side closes it
    Uuid record;
    Id<Finding> finding;  // nil: none
};
using Replies = std::vector<Reply>;

struct Done {  // work that was done, or the part of it that matters here
    Work work = Work::wheel_off;
    std::size_t sitting = 0;
    Instant at;
    Place place;  // a corner, or the trailer for what concerns all of it
};

struct Ask {
    const TradePoint* point = nullptr;
    Place place;
    Importance importance = Importance::essential;
    Applies applies = Applies::yes;
};

// Everything a rule may look at.
struct Scene {
    const TowQuestion* question = nullptr;
    const Job* job = nullptr;
    const Trailer* trailer = nullptr;
    const Visit* visit = nullptr;
    Layout layout;
    std::vector<Sitting> sittings;  // oldest first
    std::vector<Done> works;
    std::vector<Limit> limits;                   // the register and the makers' figures of this job
    std::vector<std::vector<Limit>> own_limits;  // makers' figures of each sitting
    bool trusting = true;  // false: records of unaccepted signers are looked at too, and may only forbid

    [[nodiscard]] const Axle* axle(const Place& place) const { return layout.axle(place.axle); }
    [[nodiscard]] const Sitting& current() const;
    [[nodiscard]] bool usable(const Sitting& sitting) const { return sitting.accepted || !trusting; }
};

using Rule = void (*)(const Scene& scene, const Ask& ask, Replies& out);

// How a point is answered: which sides of an answer it takes.
enum class Takes : std::uint8_t { look, measure, either, both };
[[nodiscard]] Takes takes(const Scene& scene, PointId id);
[[nodiscard]] Rule rule_of(PointId id);        // beside looks; nullptr: looks alone
[[nodiscard]] bool computed_late(PointId id);  // from what other points answered

// answer_read.cpp: visits, values.
[[nodiscard]] Scene scene_of(const TowQuestion& question);
[[nodiscard]] Measures measures(const Sitting& sitting, std::string_view what, const Place& place);
[[nodiscard]] Measures measures_anywhere(const Sitting& sitting, std::string_view what);
[[nodiscard]] Measures all_measures(const Sitting& sitting, std::string_view what, const Place& place);
[[nodiscard]] Place corner_only(const Place& place);

// Verdicts.
[[nodiscard]] AnswerSource source_of(const Law& law);
[[nodiscard]] AnswerSource source_of(const Limit& limit);
[[nodiscard]] AnswerSource own_band();
[[nodiscard]] AnswerSource practice(std::string_view text);
[[nodiscard]] Verdict told(Grade grade, Fact fact, AnswerSource source = {});
[[nodiscard]] Verdict open(Fact fact, AnswerSource source = {});
[[nodiscard]] std::optional<Grade> grade_of(const Reply& reply);  // none: cannot be told
[[nodiscard]] const Verdict& governing(const Reply& reply);       // the verdict that its grade comes from
[[nodiscard]] bool is_bad(const Reply& reply);                    // repair or do not tow
[[nodiscard]] bool is_good(const Reply& reply);                   // told, and no worse than watch

// Replies.
[[nodiscard]] Reply reply_of(const Sitting& sitting, const Measures& measures);
[[nodiscard]] Reply reply_at(const Sitting& sitting, const Instant& at, std::string_view by, Uuid record = {});
// Values that cannot be used become an open verdict; true when nothing usable is left.
bool take_faults(Measures& measures, Reply& reply);
// A reading that was not taken is no answer, but it says why there is none.
void tell_not_taken(const Sitting& sitting, std::string_view what, const Place& place, Replies& out);
void looks_of(const Scene& scene, const Ask& ask, Replies& out);

// answer_limits.cpp: a value against every figure on it.
struct Bounds {
    std::size_t figures = 0;  // that bound it, whatever they said
    bool firm = false;        // one of law, stamping or maker among them
};
struct Holding {
    std::string_view what;
    Place place;
    double si = 0;
    double step_si = 0;
    Amount shown;
};
Bounds hold_against(const Scene& scene, const Sitting& sitting, const Holding& value, std::vector<Verdict>& out);
[[nodiscard]] std::vector<const Limit*> makers_figures(const Scene& scene, const Sitting& sitting,
                                                       std::string_view what, const Place& place);

// answer_keep.cpp
struct Ending {
    Instant at;  // when it stopped counting
    Fact because;
    bool by_use = false;  // by time or use, not by work or damage
};
[[nodiscard]] Keeps keeps_of(const Ask& ask, const Reply& reply);
// When this good reply stops counting; nullopt: it does not, as far as is known.
[[nodiscard]] std::optional<Ending> ending_of(const Scene& scene, const Ask& ask, const Reply& reply);
[[nodiscard]] Instant midnight_after(const Instant& at, const Date& day);  // at the offset of `at`

[[nodiscard]] bool later_than_work(const Reply& reply, const Done& done);
// Is work or an event at `there` one at `here`? What concerns the trailer concerns all of it.
[[nodiscard]] bool concerns(const Place& there, const Place& here, Spot spot);

// answer_findings.cpp
// What people found, as replies to the points they concern, or as answers of their own outside the table.
struct FoundReply {
    std::optional<PointId> point;
    Place place;
    Reply reply;
    bool watch_only = false;  // told, but no answer to the point
};
struct Answered {
    Ask ask;
    Replies replies;
};
[[nodiscard]] std::vector<FoundReply> findings_of(const Scene& scene, std::vector<Answered>& answered);

// answer_settle.cpp
[[nodiscard]] PointAnswer settle(const Scene& scene, const Ask& ask, const Replies& replies);

// answer_owner.cpp
// The steps of an owner's walk in packets from before there were looks, as looks.
void marks_of(const Scene& scene, const Ask& ask, Replies& out);
[[nodiscard]] std::optional<Date> last_opened(const Scene& scene);  // the corner where that is longest ago; none: never
void owners_outcome(const Scene& scene, TowAnswer& out);

// answer_outcome.cpp: outcome, reasons and counts from `points`.
void conclude(const Scene& scene, TowAnswer& out);

}  // namespace cotter::answering
