// One table of words, and what arguments look like in them.
#include "core/judge/fact_english.h"

#include <array>
#include <fmt/format.h>

#include "core/judge/judge_words.h"

namespace cotter {

namespace {

struct Words {
    FactId id;
    std::string_view text;  // {0}, {1}, … are the fact's arguments
};

// In the order of FactId.
constexpr std::array kWords{
    // silence and layout
    Words{FactId::not_asked, "not looked at"},
    Words{FactId::not_entered, "not entered"},
    Words{FactId::said_not_known, "said to be not known"},
    Words{FactId::applies_not_known, "not said whether the trailer has it"},
    Words{FactId::axles_not_entered, "the axles and their brakes are not entered"},
    Words{FactId::no_trailer, "the trailer is not entered"},
    Words{FactId::not_taken, "{0}: {1}"},
    Words{FactId::needs_more_reach, "looked at from outside only; it takes more than that"},
    Words{FactId::signer_not_accepted, "answered in a packet whose signer is not accepted here"},
    Words{FactId::future, "dated in the future: {0}"},
    Words{FactId::no_unit, "the unit of {0} is missing or not known"},
    Words{FactId::other_unit, "{0} is in a unit of something else"},
    Words{FactId::implausible, "{0} is not plausible: look at the number and its unit again"},
    Words{FactId::too_few, "{0} of at least {1} points measured"},
    Words{FactId::part_not_measured, "not measured: {0}"},
    Words{FactId::no_limit, "nothing to hold {0} against: read the figure on the part, or enter the maker's"},
    Words{FactId::not_judged, "recorded, but there is no figure to judge it by"},
    Words{FactId::figures_contradict, "two figures contradict each other: {0} and {1}"},
    Words{FactId::memory_permits_nothing, "{0} is within {1} {2}, but that figure is from memory and may only forbid"},
    Words{FactId::reads_better, "reads {0} after {1} on {2}, and no replacement is recorded"},
    // how long
    Words{FactId::ran_out, "last answered {0}; that keeps {1}"},
    Words{FactId::ran_out_distance, "last answered {0}, and {1} were run since"},
    Words{FactId::ended_by_event, "answered {0}, before the trailer was {1}"},
    Words{FactId::ended_by_work, "answered {0}, before this work: {1}"},
    Words{FactId::ended_by_renewal, "answered {0}, before a part was renewed: {1}"},
    Words{FactId::trip_check_due, "the check before this trip is due"},
    Words{FactId::from_outside, "nothing found from outside; brakes and bearings not opened since {0}"},
    Words{FactId::from_outside_never, "nothing found from outside; brakes and bearings never opened in this book"},
    Words{FactId::owner_air, "air brakes: an owner's look cannot tell"},
    // looks
    Words{FactId::looks_good, "looks good"},
    Words{FactId::looks_bad, "something is wrong"},
    Words{FactId::looker_cannot_tell, "whoever looked could not tell"},
    Words{FactId::entry, "{0}"},
    Words{FactId::entry_cannot_tell, "could not tell: {0}"},
    Words{FactId::ticks_missing, "{0} of {1} answered"},
    Words{FactId::choice_missing, "nothing was chosen"},
    // findings
    Words{FactId::finding, "{0}: {1}"},
    Words{FactId::finding_left, "{0}: {1} ({2})"},
    Words{FactId::repaired_not_seen, "{0}: {1}; repaired, but not looked at since"},
    Words{FactId::repaired_not_proved, "{0}: {1}; repaired, but not answered since: {2}, {3}"},
    Words{FactId::inspection_item, "inspection item {0} is not OK: {1}"},
    // figures
    Words{FactId::within, "{0}; {1} {2} wanted"},
    Words{FactId::close, "{0}; {1} {2} wanted: within one step of the instrument"},
    Words{FactId::beyond, "{0}, but it must be {1} {2}"},
    Words{FactId::beyond_usual, "{0}; usual is {1} {2}"},
    // plate
    Words{FactId::plate_text, "{0}"},
    Words{FactId::plate_amount, "{0}"},
    Words{FactId::vin_wrong, "the check digit of {0} is wrong: read it again"},
    Words{FactId::gawr_above_gvwr, "the axle's {0} is above the trailer's {1}: read both labels again"},
    Words{FactId::axle_not_known, "not known: {0}"},
    Words{FactId::actuation_contradicts, "brakes applied by {0} do not go with {1}"},
    // tires
    Words{FactId::sidewall_missing, "not read: {0}"},
    Words{FactId::not_for_highway, "marked 'not for highway use'"},
    Words{FactId::speed_limited, "marked for at most {0}"},
    Words{FactId::tire_mixed, "another size or type than {0} ({1})"},
    Words{FactId::tire_read, "{0}"},
    Words{FactId::index_not_in_table, "load index {0} is not in the table"},
    Words{FactId::rating_missing, "neither load index nor largest load read"},
    Words{FactId::dual_rating_missing, "neither load index nor largest load as a dual read"},
    Words{FactId::tire_over, "{0} on a tire rated {1} ({2} weighed)"},
    Words{FactId::tire_near, "{0} on a tire rated {1} ({2} weighed): within one step of the scale, so it may be over"},
    Words{FactId::tire_carries, "{0} on a tire rated {1}"},
    Words{FactId::tires_carry_axle, "the axle's tires carry {0} of {1} GAWR"},
    Words{FactId::tires_under_axle, "the axle's tires carry {0}, less than {1} GAWR"},
    Words{FactId::tires_under_axle_limited,
          "the axle's tires carry {0}, less than {1} GAWR; weighed within it, and the lower limit is written on the "
          "trailer"},
    Words{FactId::load_unknown, "neither the axle's rating nor its weight is known"},
    Words{FactId::tread_one_shoulder,
          "one shoulder low: look for bearing play, a bent spindle or axle, toe, or an axle out of square"},
    Words{FactId::tread_both_shoulders, "both shoulders low: low pressure, or overload"},
    Words{FactId::tread_middle, "middle low: too much pressure"},
    Words{FactId::pressure_good, "{0}; {1} on the placard"},
    Words{FactId::pressure_low, "{0}; {1} on the placard: set it cold"},
    Words{FactId::pressure_run_low,
          "{0} is {1}% of the placard's {2}. Do not air it up: let all air out by the valve core before the wheel "
          "comes off, then have the tire looked at inside"},
    Words{FactId::pressure_flat, "{0} is {1}% of the placard's {2}: flat"},
    Words{FactId::pressure_flat_unplaced,
          "{0}: flat, or less than half of the fullest tire or of the sidewall's largest pressure"},
    Words{FactId::pressure_over_most, "{0} is over the sidewall's largest pressure, {1}"},
    Words{FactId::placard_missing, "no placard pressure to hold it against"},
    Words{FactId::pressure_hot,
          "{0} hot: only after a run at 41 to 55 mph does it tell the cold pressure; read it cold"},
    Words{FactId::tire_before_2000, "date code {0}: made before 2000, over 25 years old"},
    Words{FactId::date_code_wrong, "date code {0} has no such week: read it again"},
    Words{FactId::date_code_future, "date code {0} lies in the future: read it again"},
    Words{FactId::tire_made, "made in the week of {0}, {1} years old"},
    // torque
    Words{FactId::torque_none, "no round of tightening is recorded"},
    Words{FactId::torque_no_target, "no target: enter the maker's figure"},
    Words{FactId::torque_no_source, "{0} has no source: enter the maker's document and page"},
    Words{FactId::torque_unit, "{0}: feet and inches look swapped; look at the unit again"},
    Words{FactId::torque_studs, "{0} nuts tightened, {1} studs counted"},
    Words{FactId::torque_nut_missing, "no click recorded for nut {0}"},
    Words{FactId::torque_order, "tightened in the order {0}, not across the circle"},
    Words{FactId::torque_off_target, "last round at {0}, target {1}"},
    Words{FactId::torque_one_pass, "tightened in one round instead of stages"},
    Words{FactId::torque_proved, "every nut at {0}, in stages across the circle"},
    Words{FactId::wrench_not_in_date, "the wrench's calibration was not in date"},
    // hubs
    Words{FactId::level_seen, "level: {0}"},
    Words{FactId::play_negative, "{0} is no play: zero the dial and read again"},
    Words{FactId::play_gross, "{0} end play: the nut has backed off, or the bearing is gone"},
    Words{FactId::play_scatters, "readings from {0} to {1} scatter: set the dial up again"},
    Words{FactId::play_outside_maker, "{0} end play is outside the maker's range"},
    Words{FactId::play_within_maker, "{0} end play, within the maker's range"},
    Words{FactId::play_preset, "{0} end play at a preset bearing: only the maker's figure tells"},
    Words{FactId::play_none, "no end play: it may be preloaded"},
    Words{FactId::play_good, "{0} end play"},
    Words{FactId::play_loose, "{0} end play is more than usual"},
    Words{FactId::play_by_dial, "the hub was opened: only a dial tells its play"},
    Words{FactId::lock_new, "a new lock is in"},
    Words{FactId::hub_missing, "a hub was not read: {0}"},
    Words{FactId::hubs_apart, "the hubs were read more than five minutes apart"},
    Words{FactId::hub_too_hot, "{0}: too hot by itself"},
    Words{FactId::hub_over_mates, "{0}: {1} over the other hubs"},
    Words{FactId::brake_cold, "{0}: {1} under the other hubs; this brake may not be working"},
    Words{FactId::hub_cool, "{0}"},
    // brake need
    Words{FactId::axle_braked, "{0}"},
    Words{FactId::brakes_required, "{0} and no brakes: brakes are required"},
    Words{FactId::state_allows_unbraked, "{0}: the state asks for brakes only over {1}"},
    Words{FactId::state_forbids_unbraked, "{0} and no brakes: the state asks for them over {1}"},
    Words{FactId::state_decides_brakes, "{0} and no brakes: your state decides; the first asks for them over {1}"},
    Words{FactId::weight_for_brakes_unknown, "no brakes, and neither weight nor GVWR is known"},
    Words{FactId::tongue_for_brakes_unknown,
          "{0} and no brakes: allowed only when the tongue rests at most 40% of the tow vehicle's axle weights on it; "
          "both are needed"},
    Words{FactId::tongue_wants_brakes,
          "{0} of tongue is {1} of the tow vehicle's axle weights: over 40%, brakes are required"},
    Words{FactId::tongue_needs_no_brakes,
          "{0} of tongue is {1} of the tow vehicle's axle weights: no brakes are required"},
    Words{FactId::all_wheels_required, "no brakes on this axle of a {0} trailer: all wheels must have them"},
    Words{FactId::idler_state_unknown, "no brakes on this axle: does your state let one axle be without?"},
    Words{FactId::state_allows_idler, "no brakes on this axle of a {0} trailer: the state allows one"},
    // linings, rotors, drums
    Words{FactId::shoe_center_missing, "each shoe at its center is needed"},
    Words{FactId::shoe_taper, "thin at an edge: {0}"},
    Words{FactId::out_of_round, "{0} out of round"},
    Words{FactId::variation_not_told, "fewer than eight points: thickness variation cannot be told"},
    Words{FactId::runout_play, "{0} with hub play unknown or larger: take the play out and read again"},
    Words{FactId::runout_between, "between {0} and {1}, hub play allowed for; maker {2}"},
    Words{FactId::pair_alike, "{0} apart"},
    Words{FactId::pair_sides, "left and right {0} apart: look at hose, adjuster and for oil"},
    Words{FactId::pair_pads, "inner and outer pad {0} apart: slides or piston"},
    Words{FactId::adjuster_manual, "manual slack adjuster on a trailer built {0}: an automatic one is due"},
    Words{FactId::adjuster_date_missing, "manual slack adjuster: the build date tells whether an automatic one is due"},
    Words{FactId::adjuster_good, "automatic slack adjuster"},
    // electric
    Words{FactId::magnet_good, "{0}"},
    Words{FactId::magnet_off, "{0} is not what a magnet draws"},
    Words{FactId::magnet_dead, "{0}: no action on this wheel"},
    Words{FactId::magnet_ohm_good, "{0}"},
    Words{FactId::magnet_ohm_off, "{0} is not what a magnet has"},
    Words{FactId::magnet_open, "{0}: open circuit"},
    // air
    Words{FactId::chamber_not_read, "family and type of the chamber are not read"},
    Words{FactId::stroke_class_not_read, "standard or long stroke not read"},
    Words{FactId::stroke_no_limit, "nothing to hold {0} against: read the limit for type {1}"},
    Words{FactId::stroke_pressure, "strokes count at 80 to 90 psi in the tanks, engine off"},
    Words{FactId::stroke_over, "{0}, more than {1} allowed"},
    Words{FactId::stroke_over_standard, "{0}, more than {1} allowed: judged as standard; read the tag"},
    Words{FactId::chambers_differ, "chambers differ: {0} left, {1} right"},
    Words{FactId::slacks_differ, "slack adjusters differ: {0} left, {1} right"},
    Words{FactId::slack_not_measured, "slack length not measured on both sides"},
    Words{FactId::chambers_alike, "same chamber and slack length on both sides"},
    Words{FactId::air_drop, "{0} lost in a minute, {1}"},
    // actuation
    Words{FactId::reservoir_empty, "empty"},
    Words{FactId::hold_no_start, "no pressure at the start"},
    Words{FactId::hold_dropped, "{0} to {1}: {2} lost in {3}"},
    Words{FactId::hold_too_short, "held for {0} only: five minutes are needed"},
    Words{FactId::line_pressure_share, "{0} at full demand: {1} of {2}"},
    Words{FactId::surge_too_heavy, "{0}: surge brakes are not allowed from 20,001 lb"},
    Words{FactId::surge_ratio_over, "{0} behind a {1} tow vehicle: ratio {2}, at most {3} for surge brakes"},
    Words{FactId::surge_ratio_good, "{0} behind a {1} tow vehicle: ratio {2}, {3} allowed"},
    Words{FactId::unit_dead, "no volts at the unit"},
    // breakaway
    Words{FactId::wheel_not_tried, "this wheel was not tried"},
    Words{FactId::wheel_not_tried_back, "not tried whether it turns with the pin in again"},
    Words{FactId::test_running, "the test was not ended"},
    Words{FactId::pull_turns, "turns with the pin out"},
    Words{FactId::pull_not_acted_on, "not one of the axles that the pin acts on"},
    Words{FactId::pull_holds, "holds with the pin out"},
    Words{FactId::pin_left_out, "the pin was not put back"},
    Words{FactId::wheel_stays_braked, "does not turn with the pin in again"},
    Words{FactId::wheel_let_go, "let go before 15 minutes were over: {0}"},
    Words{FactId::wheel_not_tried_at_end, "not tried at the end: {0}"},
    Words{FactId::test_stopped, "stopped after {0} of 15 minutes"},
    Words{FactId::held_fifteen, "held for 15 minutes"},
    Words{FactId::held_axles, "the pin acts on {0} of {1} axles"},
    Words{FactId::battery_resting, "{0} at rest"},
    Words{FactId::battery_loaded, "{0} under load, {1}"},
    // coupling
    Words{FactId::coupling_over, "the {0} is rated {1}, and {2} were weighed"},
    Words{FactId::coupling_under, "the {0} is rated {1}, less than the trailer's {2}"},
    Words{FactId::coupling_rated, "the {0} is rated {1}"},
    Words{FactId::ball_fits, "{0} ball, as the coupler wants"},
    Words{FactId::ball_differs, "{0} ball in a coupler for {1}"},
    // running gear and load
    Words{FactId::axle_askew, "{0} left, {1} right: the axle stands askew"},
    Words{FactId::axle_square, "{0} left, {1} right"},
    Words{FactId::load_empty, "empty"},
    Words{FactId::load_weighed, "{0} weighed"},
    Words{FactId::load_not_weighed, "loaded, and its weight is not known"},
    Words{FactId::load_not_said, "not said whether it is loaded"},
    Words{FactId::gross_not_known, "not every axle and the tongue were weighed, or GVWR is not known"},
    Words{FactId::weight_over, "{0} of {1} rated: over"},
    Words{FactId::weight_near, "{0} of {1} rated: within one step of the scale, so it may be over"},
    Words{FactId::weight_good, "{0} of {1} rated"},
    Words{FactId::tongue_good, "tongue {0}, {1} of gross"},
    Words{FactId::tongue_unusual, "tongue {0}, {1} of gross: outside the usual share"},
    Words{FactId::tongue_lifts, "tongue {0}: it lifts the hitch"},
};
static_assert(kWords.size() == kFactCount);
static_assert([] {
    for (std::size_t i = 0; i < kWords.size(); ++i)
        if (kWords[i].id != static_cast<FactId>(i)) return false;
    return true;
}());

std::string_view keeps_words(Keeps keeps) {
    switch (keeps) {
        case Keeps::trip:
            return "for the day, and until it is loaded, unloaded or coupled anew";
        case Keeps::visit:
            return "for the visit";
        case Keeps::quarter:
            return "for 91 days";
        case Keeps::year:
            return "for 12 months";
        case Keeps::two_years:
            return "for 24 months";
        case Keeps::plate:
        case Keeps::until_work:
            break;
    }
    return "until it is worked on";
}

struct Argument {
    std::string operator()(const Entered& text) const { return text; }
    std::string operator()(const Amount& amount) const { return amount.text(); }
    std::string operator()(std::int64_t number) const { return std::to_string(number); }
    std::string operator()(const Place& place) const { return words::place(place); }
    std::string operator()(const Date& date) const { return date.text(); }
    std::string operator()(const Instant& at) const { return at.text(); }
    std::string operator()(PointId id) const { return std::string(point(id).title); }
    std::string operator()(const EntryOf& of) const {
        const LookEntry* entry = find_entry(point(of.point), of.entry);
        return entry == nullptr ? of.entry : std::string(entry->text);
    }
    std::string operator()(Keeps keeps) const { return std::string(keeps_words(keeps)); }
    template <NamedEnum E>
    std::string operator()(E value) const {
        return std::string(name_of(value));
    }
};

}  // namespace

std::string english(const Fact& fact) {
    std::string out;
    const std::string_view text = kWords[static_cast<std::size_t>(fact.id)].text;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool hole = text[i] == '{' && i + 2 < text.size() && text[i + 2] == '}';
        if (!hole) {
            out += text[i];
            continue;
        }
        const auto n = static_cast<std::size_t>(text[i + 1] - '0');
        if (n < fact.args.size()) out += std::visit(Argument{}, fact.args[n]);
        i += 2;
    }
    return out;
}

Amount figure(double si, std::string_view ucum, int digits) {
    const Unit* unit = find_unit(ucum);
    const auto number = Number::parse(words::number(unit == nullptr ? si : from_si(si, *unit), digits));
    return {number ? *number : Number(), std::string(ucum)};
}

}  // namespace cotter
