// Tyres: age, pressure, what they carry. Hubs: temperature against their mates.
#include <algorithm>
#include <fmt/format.h>

#include "core/judge/heat.h"
#include "core/judge/judge_words.h"
#include "core/judge/judging.h"
#include "core/trade/reading_names.h"
#include "core/judge/tyres.h"
#include "core/trailer/tyre_date.h"

namespace cotter {

namespace {

using words::kPound;
using words::kPsi;
using words::number;
using words::pounds;
constexpr double kDay = 86400;

void judge_age(Bench& bench, const Value& v) {
    const auto week = tyre_week(v.amount.number.text());
    if (!week) {
        bench.cannot_tell({corner_of(v.place), 0, "tyre", std::string(what::tyre_age), week.error().line(),
                           "read the last four digits of the full number again; it may be on the inner side", false});
        return;
    }
    const Date today = bench.now.local_date();
    const double years = tyre_age_years(*week, today);
    if (years < -0.02) {
        bench.cannot_tell(
            {corner_of(v.place), 0, "tyre", std::string(what::tyre_age),
             fmt::format("{} would be made in the future ({})", v.amount.number.text(), week->first.text()),
             "read the code again", false});
        return;
    }
    hold_against_limits(bench, {corner_of(v.place),
                                0,
                                "tyre",
                                std::string(what::tyre_age),
                                years * 365.25 * kDay,
                                0,
                                number(years, 2) + " years",
                                {fmt::format("made in the week of {} to {}; on {}: {} years", week->first.text(),
                                             week->last.text(), today.text(), number(years, 2))},
                                "ask the tyre maker how long this tyre may serve",
                                v.reading->id.uuid});
}

// The rated load of the tyre at a corner, kg; nothing when it is not known.
std::optional<double> rating_at(const Bench& bench, const Place& corner) {
    if (const auto mass = bench.values.of(what::load_rating, corner); !mass.empty()) return mass.front()->si;
    std::optional<double> least;
    for (const Value* v : bench.values.of(what::load_index, corner)) {
        const auto kg = load_index_kg(static_cast<int>(v->si));
        if (kg) least = std::min(least.value_or(*kg), *kg);
    }
    return least;
}

// The lowest rated tyre governs its axle.
void judge_capacity(Bench& bench, int number_of_axle, const Axle& axle) {
    std::optional<double> least;
    for (const Side side : {Side::left, Side::right})
        if (const auto kg = rating_at(bench, Place::corner(number_of_axle, side)))
            least = std::min(least.value_or(*kg), *kg);
    if (!least) return;
    const int tyres = axle.wheels == Wheels::dual ? 4 : 2;
    const double carries = axle_capacity_kg(tyres, *least, false);
    const auto told = [&](double load, double step, std::string_view of, const std::string& source) {
        const bool over = load > carries * (1 + 1e-9), near = !over && load + step > carries;
        Ground r = plain_reason(Place::corner(number_of_axle, Side::left), "tyre", "tyre capacity",
                                over   ? Grade::do_not_tow
                                : near ? Grade::watch
                                       : Grade::serviceable,
                                fmt::format("the tyres carry {}, {} is {} ({}{} %)", pounds(carries), of, pounds(load),
                                            carries >= load ? "+" : "", number((carries / load - 1) * 100, 1)),
                                source, LimitMark::a);
        r.axle = number_of_axle;
        r.steps = {
            fmt::format("{} × {} kg = {} kg = {}", tyres, number(*least, 0), number(carries, 0), pounds(carries))};
        r.reading = pounds(load);
        r.limit = "at most " + pounds(carries);
        if (over) r.todo = "take load off, or fit tyres of a higher rating";
        bench.tell(std::move(r));
    };
    if (axle.gawr)
        told(axle.gawr->si(), 0, "the axle's rating", words::source(SourceKind::law, "49 CFR 571.120 S5.1.2"));
    for (const Value* v : bench.values.of(what::axle_weight))
        if (v->axle == number_of_axle)
            told(v->si, v->step_si, "the axle's weight", words::source(SourceKind::law, "49 CFR 393.75(g)"));
}

void judge_pressures(Bench& bench) {
    const Trailer* t = bench.trailer;
    if (t == nullptr) return;
    const auto cold = bench.values.of(what::pressure_cold), hot = bench.values.of(what::pressure_hot);
    if (!t->tyre_pressure) {
        if (!cold.empty() || !hot.empty())
            bench.cannot_tell({Place::at(Station::trailer), 0, "tyre", std::string(what::pressure_cold),
                               "the placard's pressure is not entered", "read the placard", false, Lack::placard});
        return;
    }
    const double wanted = t->tyre_pressure->si();
    // The placard is for the full load; the law asks for what the load carried needs.
    const Visit* visit = bench.job.only<Visit>();
    const Grade grade_when_low = visit != nullptr && visit->load == Load::empty ? Grade::watch : Grade::repair;
    const auto tell = [&](const Value& v, double si, std::vector<std::string> steps) {
        const bool low = si < wanted * (1 - 1e-9);
        Ground r = plain_reason(
            corner_of(v.place), "tyre", v.what, low ? grade_when_low : Grade::serviceable,
            fmt::format("{} cold, {} on the placard", number(si / kPsi, 0) + " psi", t->tyre_pressure->text()),
            words::source(SourceKind::law, "49 CFR 393.75, placard"), LimitMark::a);
        r.reading = v.text();
        r.limit = "at least " + t->tyre_pressure->text();
        r.steps = std::move(steps);
        r.record = v.reading->id.uuid;
        if (low) r.todo = "set it cold; never bleed a hot tyre";
        bench.tell(std::move(r));
    };
    for (const Value* v : cold) tell(*v, v->si, {});
    for (const Value* v : hot) {
        if (!tells_cold_pressure(v->where) && !tells_cold_pressure(v->reading->note)) {
            bench.cannot_tell({corner_of(v->place), 0, "tyre", std::string(what::pressure_hot),
                               "hot, and not said to be after a run at 41 to 55 mph", "measure it cold", false});
            continue;
        }
        const auto rating = rating_at(bench, corner_of(v->place));
        if (!rating) {
            bench.cannot_tell({corner_of(v->place), 0, "tyre", std::string(what::pressure_hot),
                               "the tyre's load rating is needed to estimate the cold pressure",
                               "read it on the sidewall, or measure cold", false});
            continue;
        }
        const double psi = cold_estimate_psi(v->si / kPsi, *rating / kPound);
        tell(*v, psi * kPsi,
             {fmt::format("{} − {} = {} psi, estimated from hot", number(v->si / kPsi, 0),
                          number(v->si / kPsi - psi, 0), number(psi, 0))});
    }
}

void judge_heat(Bench& bench) {
    std::vector<const Value*> hubs;
    const Value* air = nullptr;
    for (const Value* v : bench.values.of(what::hub_temperature)) {
        if (v->place.is_corner())
            hubs.push_back(v);
        else if (v->where.starts_with("ambient"))
            air = v;
    }
    if (hubs.empty()) return;
    if (hubs.size() < 3 || air == nullptr) {
        bench.cannot_tell({Place::at(Station::trailer), 0, "hub", std::string(what::hub_temperature),
                           air == nullptr ? "the air's temperature was not taken" : "fewer than three hubs to compare",
                           "measure every hub within five minutes, and the air", false});
        return;
    }
    std::vector<double> celsius;
    for (const Value* v : hubs) celsius.push_back(v->si - 273.15);
    const auto heats = compare_hubs(celsius, air->si - 273.15);
    for (std::size_t i = 0; i < hubs.size(); ++i) {
        const HubHeat& h = heats[i];
        std::vector<std::string> steps{
            fmt::format("{} °C − {} °C of air = {} K rise; {} K over the median of its mates{}", number(celsius[i], 0),
                        number(air->si - 273.15, 0), number(h.rise, 0), number(h.over_mates, 0),
                        h.ratio ? fmt::format(", {} times their rise", number(*h.ratio, 1)) : "")};
        const std::string& tool = hubs[i]->reading->instrument;
        if (tool.find("probe") == std::string::npos && tool.find("contact") == std::string::npos)
            steps.push_back("an infrared gun reads far too low on shiny metal: paint dot, tape or a contact probe");
        hold_against_limits(
            bench, {corner_of(hubs[i]->place), 0, "hub", std::string(what::hub_over_mates), h.over_mates, 0,
                    number(h.over_mates, 0) + " K", std::move(steps),
                    "stop and find the cause; a dragging brake is commoner than a bearing", hubs[i]->reading->id.uuid});
    }
}

}  // namespace

void judge_tyres(Bench& bench) {
    for (const Value* v : bench.values.of(what::tyre_date)) judge_age(bench, *v);
    if (bench.trailer != nullptr)
        for (std::size_t i = 0; i < bench.trailer->axles.size(); ++i)
            judge_capacity(bench, static_cast<int>(i) + 1, bench.trailer->axles[i]);
    judge_pressures(bench);
}

void judge_hubs(Bench& bench) {
    judge_heat(bench);
}

}  // namespace cotter
