"""What can be judged or recorded and not entered yet, or is called by tests alone: name -> why. Only shrinks: what is no
gap any more has to be taken out."""

_ENGINE = "the answers on towing will use it"
_SHEETS = "a sheet that shows its sum is to come"

WAYS = {}
FIELDS = {}
READINGS = {}
COMMANDS = {}
FUNCTIONS = {
    "core/base/amount.h: all_units": "tests go through every unit",
    "core/judge/braking.h: ideal_stop_ft": _SHEETS,
    "core/judge/braking.h: lead_drop_v": _SHEETS,
    "core/judge/braking.h: magnets_at": _SHEETS,
    "core/judge/braking.h: psi_for_share": _SHEETS,
    "core/judge/braking.h: surge_psi": _SHEETS,
    "core/judge/heat.h: gun_reads_c": _SHEETS,
    "core/judge/tyres.h: pressure_at": _SHEETS,
    "core/packet/job_document.h: job_schema_text": "tests hold assets/schema against the records",
    "core/trade/point.h: axle_place": _ENGINE,
    "core/trade/point.h: points_at": _ENGINE,
    "core/work/bearing.h: lock_angles": _SHEETS,
    "core/work/bearing.h: nut_angle": _SHEETS,
    "core/work/fluid.h: air_cost": _SHEETS,
    "core/work/fluid.h: level_shift": _SHEETS,
    "core/work/fluid.h: oil_growth": _SHEETS,
    "core/work/fluid.h: stroke_volume": _SHEETS,
    "core/work/procedure.h: procedure_from_json": "tests read one procedure; the app reads the book of them",
    "core/work/torque.h: clamp_force": _SHEETS,
    "core/work/torque.h: torque_in": _SHEETS,
}
