// Which rule answers which point beside looks, and which sides of an answer a point takes.
#include "core/judge/answer_rules.h"

namespace cotter::answering {

namespace {

// Follow from what other points answered, or from several of them.
constexpr PointId kLate[] = {PointId::tire_load, PointId::brk_need,   PointId::brk_pair,
                             PointId::air_pair,  PointId::load_gross, PointId::load_tongue};

Rule of_wheel_end(PointId id) {
    switch (id) {
        case PointId::tire_id:
            return tire_id;
        case PointId::tire_load:
            return tire_load;
        case PointId::tire_tread:
            return tire_tread;
        case PointId::tire_press:
            return tire_press;
        case PointId::tire_age:
            return tire_age;
        case PointId::tire_dual:
            return tire_dual;
        case PointId::wheel_torque:
        case PointId::susp_ubolt:
            return torque_rule;
        case PointId::hub_oil:
            return hub_oil;
        case PointId::hub_play:
            return hub_play;
        case PointId::hub_lock:
            return hub_lock;
        case PointId::hub_heat:
            return hub_heat;
        default:
            return nullptr;
    }
}

Rule of_brake(PointId id) {
    switch (id) {
        case PointId::brk_need:
            return brk_need;
        case PointId::brk_stop:
            return brk_stop;
        case PointId::brk_pair:
            return brk_pair;
        case PointId::brk_adjust:
            return brk_adjust;
        case PointId::disc_pad:
            return disc_pad;
        case PointId::disc_rotor:
            return disc_rotor;
        case PointId::disc_runout:
            return disc_runout;
        case PointId::drum_shoe:
            return drum_shoe;
        case PointId::drum_drum:
            return drum_drum;
        case PointId::elec_amps:
            return elec_amps;
        case PointId::elec_mag:
            return elec_mag;
        case PointId::air_kind:
            return air_kind;
        case PointId::air_stroke:
            return air_stroke;
        case PointId::air_pair:
            return air_pair;
        case PointId::air_lining:
            return air_lining;
        case PointId::air_leak:
            return air_leak;
        default:
            return nullptr;
    }
}

Rule of_rest(PointId id) {
    switch (id) {
        case PointId::act_level:
            return act_level;
        case PointId::act_fluid:
            return act_fluid;
        case PointId::act_hold:
            return act_hold;
        case PointId::act_press:
            return act_press;
        case PointId::act_surge:
            return act_surge;
        case PointId::act_power:
            return act_power;
        case PointId::away_pull:
            return away_pull;
        case PointId::away_15:
            return away_15;
        case PointId::away_batt:
            return away_batt;
        case PointId::cpl_rate:
            return cpl_rate;
        case PointId::cpl_fit:
            return cpl_fit;
        case PointId::susp_align:
            return susp_align;
        case PointId::frame_guard:
            return frame_guard;
        case PointId::load_known:
            return load_known;
        case PointId::load_gross:
            return load_gross;
        case PointId::load_tongue:
            return load_tongue;
        case PointId::use_duty:
            return use_duty;
        case PointId::use_tow:
            return use_tow;
        default:
            return id <= PointId::plate_cpl ? plate_rule : nullptr;
    }
}

}  // namespace

Rule rule_of(PointId id) {
    if (const Rule rule = of_wheel_end(id)) return rule;
    if (const Rule rule = of_brake(id)) return rule;
    if (const Rule rule = of_rest(id)) return rule;
    return point(id).readings.empty() ? nullptr : worn_by_reading;
}

bool computed_late(PointId id) {
    for (const PointId late : kLate)
        if (id == late) return true;
    return false;
}

Takes takes(const Scene& scene, PointId id) {
    switch (id) {
        case PointId::hub_oil:
        case PointId::hub_play:
        case PointId::hub_lock:
        case PointId::air_leak:
        case PointId::act_level:
        case PointId::act_fluid:
        case PointId::act_power:
        case PointId::away_pull:
            return Takes::either;
        case PointId::frame_guard:
            return Takes::both;
        case PointId::act_surge:
            return scene.trailer != nullptr && scene.trailer->actuation == Actuation::surge ? Takes::both : Takes::look;
        case PointId::brk_adjust:
        case PointId::cpl_fit:
            return Takes::look;
        default:
            break;
    }
    const TradePoint& p = point(id);
    const bool looked_at = !p.ask.empty();
    return looked_at && (rule_of(id) == nullptr || rule_of(id) == worn_by_reading) ? Takes::look : Takes::measure;
}

}  // namespace cotter::answering
