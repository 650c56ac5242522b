// Weights against ratings, tongue load, and whether surge brakes are allowed behind this tow vehicle.
#include <fmt/format.h>

#include "core/judge/judge_words.h"
#include "core/judge/judging.h"
#include "core/trade/reading_names.h"
#include "core/judge/weights.h"

namespace cotter {

namespace {

using words::kPound;
using words::number;
using words::pounds;
const Place kTrailer = Place::at(Station::trailer);

// Over a rating: do not tow. Within the scale's step of it: cannot be passed.
void against_rating(Bench& bench, double kg, double step, const Amount& rating, int axle, std::string subject,
                    std::vector<std::string> steps) {
    const double rated = rating.si();
    const bool over = kg > rated * (1 + 1e-9), near = !over && kg + step > rated * (1 + 1e-9);
    std::string says = fmt::format("{} of {} rated", pounds(kg), rating.text());
    if (over) says += fmt::format(": over by {} ({} %)", pounds(kg - rated), number((kg / rated - 1) * 100, 1));
    if (near) says += ": within one step of the scale, so it may be over";
    Ground r = plain_reason(
        axle == 0 ? kTrailer : Place::corner(axle, Side::left), "load", std::move(subject),
        over   ? Grade::do_not_tow
        : near ? Grade::watch
               : Grade::serviceable,
        std::move(says), words::source(SourceKind::law, "49 CFR 567.4, the maker's rating on the label"), LimitMark::a);
    r.axle = axle;
    r.reading = pounds(kg);
    r.limit = "at most " + rating.text();
    r.steps = std::move(steps);
    if (over) r.todo = "take load off or move it";
    bench.tell(std::move(r));
}

void judge_gross(Bench& bench, const std::vector<const Value*>& axles, const Value* tongue) {
    const Trailer& t = *bench.trailer;
    if (axles.empty()) return;
    if (axles.size() != t.axles.size() || tongue == nullptr) {
        bench.cannot_tell({kTrailer, 0, "load", "gross weight",
                           tongue == nullptr ? "the tongue was not weighed" : "not every axle was weighed",
                           "weigh all axles and the tongue", false});
        return;
    }
    std::vector<double> loads;
    double step = tongue->step_si;
    std::string sum;
    for (const Value* v : axles) {
        loads.push_back(v->si);
        step += v->step_si;
        sum += number(v->si / kPound, 0) + " + ";
    }
    const TrailerWeight w = trailer_weight(loads, tongue->si);
    const std::string share = number(w.tongue_share * 100, 1) + " %";
    hold_against_limits(bench, {kTrailer,
                                0,
                                "load",
                                std::string(what::tongue_share),
                                w.tongue_share,
                                0,
                                share,
                                {fmt::format("{} ÷ {} = {}", number(tongue->si / kPound, 0), pounds(w.gross), share)},
                                "move the load",
                                tongue->reading->id.uuid});
    if (!t.gvwr) {
        bench.cannot_tell({kTrailer, 0, "load", "gross weight", "the trailer's rating (GVWR) is not entered",
                           "read the certification label", false, Lack::placard});
        return;
    }
    against_rating(bench, w.gross, step, *t.gvwr, 0, "gross weight",
                   {fmt::format("{}{} = {}", sum, number(tongue->si / kPound, 0), pounds(w.gross))});
}

void judge_surge(Bench& bench) {
    const Trailer& t = *bench.trailer;
    if (t.actuation != Actuation::surge) return;
    const auto tow = bench.values.of(what::tow_vehicle_rating);
    if (tow.empty() || !t.gvwr) {
        bench.cannot_tell(
            {kTrailer, 0, "load", "surge brakes",
             !t.gvwr ? "the trailer's rating (GVWR) is not entered" : "the tow vehicle's rating (GVWR) is not entered",
             "read both labels", false, t.gvwr ? Lack::reading : Lack::placard});
        return;
    }
    const double trailer_lb = t.gvwr->si() / kPound, tow_lb = tow.front()->si / kPound;
    const double ratio = trailer_lb / tow_lb, limit = surge_ratio_limit(trailer_lb);
    const bool over = ratio > limit * (1 + 1e-9);
    Ground r =
        plain_reason(kTrailer, "load", "surge brakes", over ? Grade::do_not_tow : Grade::serviceable,
                     limit == 0 ? "surge brakes are not allowed from 20,001 lb"
                                : fmt::format("ratio {}, at most {} allowed", number(ratio, 2), number(limit, 2)),
                     words::source(SourceKind::law, "49 CFR 393.48(d)"), LimitMark::a);
    r.steps = {fmt::format("{} ÷ {} lb = {}", t.gvwr->text(), number(tow_lb, 0), number(ratio, 2))};
    r.limit = "at most " + number(limit, 2);
    r.reading = number(ratio, 2);
    if (over) r.todo = "tow it with a heavier rated vehicle";
    bench.tell(std::move(r));
}

}  // namespace

void judge_weights(Bench& bench) {
    if (bench.trailer == nullptr) return;
    std::vector<const Value*> axles;
    for (const Value* v : bench.values.of(what::axle_weight))
        if (v->axle > 0) axles.push_back(v);
    const auto tongue = bench.values.of(what::tongue_weight);
    for (const Value* v : axles)
        if (const Axle* axle = bench.axle_of(v->place, v->axle); axle != nullptr && axle->gawr)
            against_rating(bench, v->si, v->step_si, *axle->gawr, v->axle, std::string(what::axle_weight), {});
    judge_gross(bench, axles, tongue.empty() ? nullptr : tongue.front());
    judge_surge(bench);
}

}  // namespace cotter
