// Everything recorded at one corner or station.
#include "core/report/parts.h"
#include "core/report/say.h"

namespace cotter {

Result<> draw_place(Writing& w, const PlaceRecords& records) {
    if (records.place.is_corner()) w.sheet.start_page();
    w.sheet.part(place_name(records.place));
    draw_findings_at(w, records);
    COTTER_TRY(draw_photos(w, records));
    draw_judged_at(w, records.place);
    draw_forecasts_at(w, records.place);
    draw_readings(w, records);
    draw_torques(w, records);
    draw_levels(w, records);
    return {};
}

}  // namespace cotter
