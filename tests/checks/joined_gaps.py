"""What can be judged or recorded and not entered yet, or is called by tests alone: name -> why. Only shrinks: what is no
gap any more has to be taken out."""

_LOOK = "the look pages come with the answers they give"
_PLATE = "the plate page comes with its fields"
_ENGINE = "the answers on towing will use it"
_SHEETS = "a sheet that shows its sum is to come"

WAYS = {
    "look": _LOOK,
    "timed": _LOOK,
}
FIELDS = {
    "Axle.fastening": _PLATE,
    "Axle.gawr": _PLATE,
    "Axle.maker": _PLATE,
    "Axle.slides": _PLATE,
    "Axle.suspension": _PLATE,
    "Chamber.spring_brake": _LOOK,
    "TowVehicle.gvwr": _PLATE,
    "Trailer.actuation": _PLATE,
    "Trailer.built": _PLATE,
    "Trailer.coupler": _PLATE,
    "Trailer.guard_exempt": _PLATE,
    "Trailer.gvwr": _PLATE,
    "Trailer.length": _PLATE,
    "Trailer.maker": _PLATE,
    "Trailer.model_year": _PLATE,
    "Trailer.not_known": _PLATE,
    "Trailer.tyre_pressure": _PLATE,
    "Trailer.width": _PLATE,
    "Visit.duty": _PLATE,
    "Visit.load": _PLATE,
    "Visit.role": _PLATE,
}
READINGS = {}
COMMANDS = {
    "PutBreakawayTest": _LOOK,
    "PutChamber": _LOOK,
    "PutEvent": _LOOK,
    "PutLook": _LOOK,
    "PutSidewall": _LOOK,
    "RedoStep": "redo is to have its place beside undo",
    "RemoveBleedCount": "what was keyed in by mistake is to be removable where it stands",
    "RemoveBreakawayTest": _LOOK,
    "RemoveChamber": _LOOK,
    "RemoveEvent": _LOOK,
    "RemoveLook": _LOOK,
    "RemoveOffer": "what was keyed in by mistake is to be removable where it stands",
    "RemoveReading": "what was keyed in by mistake is to be removable where it stands",
    "RemoveSidewall": _LOOK,
    "StartPass": "the torque page puts the whole record; one of the two ways has to go",
}
FUNCTIONS = {
    "core/base/amount.h: all_units": "tests go through every unit",
    "core/judge/braking.h: ideal_stop_ft": _SHEETS,
    "core/judge/braking.h: lead_drop_v": _SHEETS,
    "core/judge/braking.h: magnets_at": _SHEETS,
    "core/judge/braking.h: psi_for_share": _SHEETS,
    "core/judge/braking.h: surge_psi": _SHEETS,
    "core/judge/heat.h: gun_reads_c": _SHEETS,
    "core/judge/tyres.h: pressure_at": _SHEETS,
    "core/packet/job_document.h: check_job_schema": "tests hold packets against the schema",
    "core/packet/job_document.h: job_schema_text": "tests hold assets/schema against the records",
    "core/trade/point.h: axle_place": _ENGINE,
    "core/trade/point.h: entries_at": _ENGINE,
    "core/trade/point.h: find_entry": _ENGINE,
    "core/trade/point.h: find_point": _ENGINE,
    "core/trade/point.h: law_at": _ENGINE,
    "core/trade/point.h: points_at": _ENGINE,
    "core/trade/work_done.h: opens_again": _ENGINE,
    "core/work/bearing.h: lock_angles": _SHEETS,
    "core/work/bearing.h: nut_angle": _SHEETS,
    "core/work/fluid.h: air_cost": _SHEETS,
    "core/work/fluid.h: level_shift": _SHEETS,
    "core/work/fluid.h: oil_growth": _SHEETS,
    "core/work/fluid.h: stroke_volume": _SHEETS,
    "core/work/procedure.h: procedure_from_json": "tests read one procedure; the app reads the book of them",
    "core/work/torque.h: angles_between": _SHEETS,
    "core/work/torque.h: clamp_force": _SHEETS,
    "core/work/torque.h: next_nut": _SHEETS,
    "core/work/torque.h: torque_at_nut": _SHEETS,
    "core/work/torque.h: torque_in": _SHEETS,
    "core/work/torque_check.h: doubt_unit": _SHEETS,
}
