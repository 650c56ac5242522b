// See step_evidence.h.
#include "app/views/step_evidence.h"

#include <algorithm>
#include <array>

#include "core/trade/asked.h"

namespace cotter {

namespace {

constexpr std::array kStations{Station::trailer, Station::drawbar, Station::actuator, Station::frame, Station::lights};

// All places, stations first; the first one that `fits`, else the trailer as a whole.
template <class Fits>
Place first_place(const Job& job, Fits&& fits) {
    for (const Station station : kStations)
        if (fits(Place::at(station))) return Place::at(station);
    if (const Trailer* trailer = job.only<Trailer>())
        for (const Place& corner : trailer->corners())
            if (fits(corner)) return Place::corner(corner.axle, corner.side);
    return Place::at(Station::trailer);
}

constexpr std::size_t kMostRests = 8;

// "20.62 mm", "20.62 to 20.67 mm".
std::string points_text(const Reading& r) {
    if (r.points.empty()) return {};
    const auto [least, most] = std::minmax_element(r.points.begin(), r.points.end(), [](const auto& a, const auto& b) {
        return a.value.value() < b.value.value();
    });
    const std::string high = Amount{most->value, r.unit}.text();
    return least->value == most->value ? high : least->value.text() + " to " + high;
}

Slot slot_named(std::string_view name) {
    for (std::size_t i = 0; i < names(Slot{}).size(); ++i)
        if (name_of(static_cast<Slot>(i)) == name) return static_cast<Slot>(i);
    return Slot::other;
}

Place place_of_shot(const Job& job, const Proof& proof, const Place& place) {
    if (place.is_corner() && !proof.anywhere) return place;
    const Slot slot = slot_named(proof.what);
    return first_place(job, [&](const Place& p) {
        const auto wanted = slots_wanted(layout_of(job), p, Stage::before);
        return std::any_of(wanted.begin(), wanted.end(), [&](const WantedSlot& w) { return w.slot == slot; });
    });
}

Place place_of_reading(const Job& job, const Proof& proof, const Place& place) {
    if (place.is_corner() && !proof.anywhere) return place;
    const ReadingSpec* spec = reading_spec(proof.what);
    Place found = first_place(job, [&](const Place& p) {
        const auto wanted = readings_wanted(layout_of(job), p);
        return std::any_of(wanted.begin(), wanted.end(), [&](const WantedReading& w) { return w.spec == spec; });
    });
    return spec == nullptr ? place : found;
}

void lead_on(const Job& job, const Proof& proof, const Place& place, StepProof& e) {
    const bool here = place.is_corner() && !proof.anywhere;
    switch (proof.kind) {
        case ProofKind::shot:
            e.lead = {Screen::intake, place_of_shot(job, proof, place), proof.what};
            break;
        case ProofKind::reading:
            e.reading = begin_reading(job, proof.what, place_of_reading(job, proof, place),
                                      proof.stage.value_or(Stage::before));
            break;
        case ProofKind::torque:
            e.lead = {Screen::torque, here ? place : Place::at(Station::frame), proof.what};
            break;
        case ProofKind::level:
            e.lead = {Screen::level, here ? place : Place::at(Station::actuator), {}};
            break;
        case ProofKind::bearing:
            e.lead = {Screen::bearing, place, {}};
            break;
        case ProofKind::route:
        case ProofKind::bleeding:
            e.lead = {Screen::bleed, Place::at(Station::trailer), {}};
            break;
        case ProofKind::look:
            e.lead = {Screen::points, {}, "all"};
            break;
        case ProofKind::breakaway:
            e.lead = {Screen::breakaway, {}, {}};
            break;
        case ProofKind::note:
            break;
    }
}

}  // namespace

std::vector<StepRest> rests_of(const Job& job, const StepMark& mark) {
    std::vector<StepRest> out;
    for (const auto& id : mark.readings)
        if (const Reading* r = job.find(id))
            out.push_back({upper_first(r->what), points_text(*r), {Screen::corner, r->place, {}}});
    for (const auto& id : mark.torques)
        if (const Torque* t = job.find(id))
            out.push_back(
                {upper_first(t->joint), t->target ? t->target->text() : "", {Screen::torque, t->place, t->id.text()}});
    for (const auto& id : mark.levels)
        if (const Level* l = job.find(id))
            out.push_back({upper_first(l->fluid),
                           std::string(name_of((l->after ? *l->after : l->before).mark)),
                           {Screen::level, l->place, l->id.text()}});
    std::size_t more = 0;
    for (const auto& id : mark.shots)
        if (const Shot* s = job.find(id)) {
            if (out.size() < kMostRests)
                out.push_back({"Photo: " + std::string(name_of(s->slot)), "", {Screen::photo, s->place, s->id.text()}});
            else
                ++more;
        }
    if (more > 0) out.back().value = "and " + count_words(more, "more", "more");
    return out;
}

std::vector<StepProof> evidence_of(const Job& job, const StepView& step) {
    std::vector<StepProof> out;
    for (const Proof& proof : step.step->proofs) {
        StepProof e;
        e.words = proof.words;
        e.kind = proof.kind;
        e.there = holds_proof(job, proof, step.place, step.mark);
        lead_on(job, proof, step.place, e);
        out.push_back(std::move(e));
    }
    return out;
}

}  // namespace cotter
