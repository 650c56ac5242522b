// Whether the job holds what a step asks for as evidence, and which records those are.
#include <algorithm>

#include "core/trade/reading_names.h"
#include "core/work/bearing.h"
#include "core/work/bleed.h"
#include "core/work/fluid.h"
#include "core/work/progress.h"
#include "core/work/torque_check.h"
#include "core/work/tried.h"

namespace cotter {

namespace {

// A corner's records may name one wheel of it.
bool is_at(const Place& record, const Place& wanted, const Proof& proof) {
    if (proof.anywhere || !wanted.is_corner()) return true;
    return record.axle == wanted.axle && record.side == wanted.side;
}

// The newest of the records that `fits` decides; an older good one does not outweigh it.
template <class R, class Fits>
const R* newest(const Job& job, Fits&& fits) {
    const R* found = nullptr;
    for (const R& r : job.all<R>())
        if (fits(r) && (found == nullptr || found->at <= r.at)) found = &r;
    return found;
}

bool is_shot(const Shot& s, const Proof& proof, const Place& place) {
    return name_of(s.slot) == proof.what && is_at(s.place, place, proof) && (!proof.stage || s.stage == *proof.stage);
}

bool has_shot(const Job& job, const Proof& proof, const Place& place) {
    const auto& all = job.all<Shot>();
    return std::any_of(all.begin(), all.end(), [&](const Shot& s) { return is_shot(s, proof, place); });
}

const Reading* reading_for(const Job& job, const Proof& proof, const Place& place) {
    return newest<Reading>(job, [&](const Reading& r) {
        return r.what == proof.what && is_at(r.place, place, proof) && (!proof.stage || r.stage == *proof.stage);
    });
}

const Torque* torque_for(const Job& job, const Proof& proof, const Place& place) {
    return newest<Torque>(job, [&](const Torque& t) { return t.joint == proof.what && is_at(t.place, place, proof); });
}

const Level* level_for(const Job& job, const Proof& proof, const Place& place) {
    return newest<Level>(job, [&](const Level& l) { return l.fluid == proof.what && is_at(l.place, place, proof); });
}

const BearingSetting* bearing_for(const Job& job, const Proof& proof, const Place& place) {
    return newest<BearingSetting>(job, [&](const BearingSetting& b) { return is_at(b.place, place, proof); });
}

bool good(const Reading* r) {
    if (r == nullptr || r->taken != Taken::measured || r->points.empty()) return false;
    return r->what != what::pressure_hold || held_pressure(*r);
}

// Each tire has its own place, any other reading its corner.
std::vector<Place> every_place(const Job& job, const Proof& proof) {
    const Trailer* trailer = job.only<Trailer>();
    std::vector<Place> out;
    if (trailer == nullptr) return out;
    for (const Place& corner : trailer->corners()) {
        const Axle& axle = trailer->axles[static_cast<std::size_t>(corner.axle) - 1];
        if (proof.kind == ProofKind::look && !is_braked(axle.brake)) continue;
        const bool pair = proof.what == what::pressure_cold && axle.wheels == Wheels::dual;
        if (!pair) out.push_back(corner);
        for (const Wheel wheel : {Wheel::inner, Wheel::outer})
            if (pair) out.push_back(Place::corner(corner.axle, corner.side, wheel));
    }
    return out;
}

// A round over all hubs is one reading of the trailer, with a spot for each.
const Reading* reading_at(const Job& job, const Proof& proof, const Place& place) {
    const std::string spot = "axle " + std::to_string(place.axle) + " " + std::string(name_of(place.side));
    return newest<Reading>(job, [&](const Reading& r) {
        const bool both_hub =
            r.what.starts_with(what::hub_temperature) && proof.what.starts_with(what::hub_temperature);
        if ((r.what != proof.what && !both_hub) || (proof.stage && r.stage != *proof.stage)) return false;
        const bool in_round =
            !r.place.is_corner() &&
            std::any_of(r.points.begin(), r.points.end(), [&](const ReadingPoint& p) { return p.where == spot; });
        return r.place == place || in_round;
    });
}

// Nothing to try: a trailer without brakes holds what is asked of its brakes.
bool holds_at_every(const Job& job, const Proof& proof) {
    const auto places = every_place(job, proof);
    return job.only<Trailer>() != nullptr && std::all_of(places.begin(), places.end(), [&](const Place& place) {
               return proof.kind == ProofKind::look ? looks_good_since_work(job, proof.what, place)
                                                    : good(reading_at(job, proof, place));
           });
}

bool good(const Torque* t) {
    return t != nullptr && proves_torque(check_torque(*t));
}

bool good(const Level* l) {
    return l != nullptr && proves_level(check_level(*l));
}

bool good(const Job& job, const Proof& proof, const BearingSetting* b) {
    if (b == nullptr) return false;
    return proof.what == "play" ? proved_play(job, *b).has_value() || (b->style == NutStyle::preset && b->locked)
                                : proves_bearing(check_bearing(job, *b));
}

Result<std::vector<BleedStop>> order_of(const Job& job) {
    const PipeRoute* route = job.only<PipeRoute>();
    const Trailer* trailer = job.only<Trailer>();
    if (route == nullptr || trailer == nullptr) return fail(Errc::refused, "the pipe route is not entered");
    return bleed_order(*route, *trailer);
}

bool has_bleeding(const Job& job) {
    const auto order = order_of(job);
    if (!order) return false;
    const auto remarks = check_bleeding(job, *order);
    return std::none_of(remarks.begin(), remarks.end(), [](const BleedRemark& r) { return r.blocks; });
}

template <class R>
void link(std::vector<Id<R>>& ids, const Id<R>& id) {
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
}

void link_bearing(const BearingSetting& setting, StepMark& mark) {
    for (const BearingTry& one : setting.tries)
        if (one.dial) link(mark.readings, *one.dial);
    if (setting.lock_shot) link(mark.shots, *setting.lock_shot);
}

// Pipes and counts have no ids in a mark: there is one of the former, and the latter are all of the trailer's.
void link_proof(const Job& job, const Proof& proof, StepMark& mark) {
    const Place& place = mark.place;
    switch (proof.kind) {
        case ProofKind::shot:
            for (const Shot& s : job.all<Shot>())
                if (is_shot(s, proof, place)) link(mark.shots, s.id);
            break;
        case ProofKind::reading:
            if (!proof.every) link(mark.readings, reading_for(job, proof, place)->id);
            if (proof.every)
                for (const Place& each : every_place(job, proof)) link(mark.readings, reading_at(job, proof, each)->id);
            break;
        case ProofKind::torque:
            link(mark.torques, torque_for(job, proof, place)->id);
            break;
        case ProofKind::level:
            link(mark.levels, level_for(job, proof, place)->id);
            break;
        case ProofKind::bearing:
            link_bearing(*bearing_for(job, proof, place), mark);
            break;
        default:
            break;
    }
}

}  // namespace

void attach_evidence(const WorkBook& book, const Job& job, StepMark& mark) {
    const Step* step = book.step(mark.step).step;
    if (step == nullptr || mark.word != StepWord::done) return;
    for (const Proof& proof : step->proofs)
        if (holds_proof(job, proof, mark.place, &mark)) link_proof(job, proof, mark);
}

bool holds_proof(const Job& job, const Proof& proof, const Place& place, const StepMark* mark) {
    switch (proof.kind) {
        case ProofKind::shot:
            return has_shot(job, proof, place);
        case ProofKind::reading:
            return proof.every ? holds_at_every(job, proof) : good(reading_for(job, proof, place));
        case ProofKind::torque:
            return good(torque_for(job, proof, place));
        case ProofKind::level:
            return good(level_for(job, proof, place));
        case ProofKind::bearing:
            return good(job, proof, bearing_for(job, proof, place));
        case ProofKind::route:
            return order_of(job).has_value();
        case ProofKind::bleeding:
            return has_bleeding(job);
        case ProofKind::look:
            return proof.every ? holds_at_every(job, proof) : looks_good_since_work(job, proof.what, place);
        case ProofKind::breakaway:
            return passed_breakaway(job);
        case ProofKind::note:
            break;
    }
    return mark != nullptr && !mark->note.empty();
}

}  // namespace cotter
