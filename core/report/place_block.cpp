// Everything recorded at one corner or station.
#include "core/report/parts.h"
#include "core/report/say.h"

namespace cotter {

Result<> draw_place(Writing& w, const PlaceRecords& records) {
    w.sheet.part(place_name(records.place));
    draw_findings_at(w, records);
    draw_judged_at(w, records.place);
    draw_readings(w, records);
    draw_torques(w, records);
    draw_levels(w, records);
    return draw_photos(w, records);
}

}  // namespace cotter
