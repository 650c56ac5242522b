// See help.h.
#include "app/views/help.h"

namespace cotter {

HelpPage help_page(Screen screen) {
    switch (screen) {
        case Screen::yard:
            return {"The yard book",
                    {{"", "All jobs on this device, newest first. A job is one visit to one trailer."},
                     {"Begin", "New job, then pick the picture that looks like the trailer's axles."},
                     {"Before you start",
                      "Cones where there is traffic, wheels chocked on both sides, somebody who "
                      "knows where you are. Stop when the ground or the weather is not right.",
                      true}}};
        case Screen::identify:
            return {"The trailer",
                    {{"", "Pick what looks like it: how many axles, which wheels, brakes and hubs. The rest can wait."},
                     {"VIN",
                      "The 17 characters of the data plate. The ninth checks the others; a typing mistake is "
                      "told at once."}}};
        case Screen::plan:
            return {"The plan",
                    {{"",
                      "The trailer from above, drawbar up, left and right as you look forward. Tap a corner or a "
                      "station to record it."},
                     {"Marks",
                      "A closed pin: complete. An open pin: something is missing, the words say what. A grade "
                      "mark: the worst open finding there."},
                     {"Before you lift",
                      "Chock the wheels that stay on the ground, both ways. Rated jack stands at the manufacturer's "
                      "points. Never work on a jack alone; a tongue jack is not a jack stand.",
                      true}}};
        case Screen::corner:
            return {
                "One place",
                {{"",
                  "Its photos by slot, findings, readings, torques and levels. An empty tile is a photo still "
                  "to take."},
                 {"Not measured", "Say so with a reason. It is a result, and never counts as good."},
                 {"Before the brake is opened",
                  "Brake dust may hold asbestos: wet it or use a fitting vacuum, never blow. Let hot parts cool; "
                  "measure before you touch. Look before you reach in: nests and insects.",
                  true},
                 {"Pressure in the lines",
                  "Disconnect the actuator's power (unplug, pull the fuse) and leave the breakaway pin in before you "
                  "open a fitting. Open slowly at the bleeder, eyes protected.",
                  true}}};
        case Screen::photo:
            return {
                "A photo",
                {{"", "Tap the spot, choose what it is and how bad. Two fingers enlarge."},
                 {"Marks", "A point, a box, an arrow or a stroke. A tapped mark can be moved, changed or removed."}}};
        case Screen::torque:
            return {"Torque",
                    {{"", "Set the wrench to the large number, then tap each nut when it clicks, across the circle."},
                     {"Maker's figure",
                      "From the maker's document, never guessed from the stud's size. A figure from another wheel is "
                      "offered only where studs, wheel and hub match, and counts once you confirm it."},
                     {"Adapter",
                      "A crowfoot lengthens the wrench. Give its length, and the setting is corrected; the record "
                      "holds both the setting and the torque at the nut."},
                     {"Impact wrench", "Only to spin nuts on lightly. Finish with the torque wrench.", true}}};
        case Screen::level:
            return {"Level",
                    {{"", "Trailer level. Spin the hub, let it settle, then look at the line."},
                     {"One product",
                      "Oils and fluids that do not belong together spoil seals and brakes. When in doubt "
                      "drain, and fill with one named product.",
                      true}}};
        case Screen::hand_over:
            return {"Hand over",
                    {{"",
                      "What is still open comes first; tap it to go there. Signing off freezes the record: later "
                      "changes are kept beside the old values, with the reason."},
                     {"Packet", "One file, dated and signed. Anyone can check it with public tools, for decades."}}};
        case Screen::intake:
            return {"Photos",
                    {{"",
                      "Choose pictures, many at once. They are kept first and sorted afterwards: which corner, "
                      "what they show."}}};
        case Screen::work:
            return {"Work, step by step",
                    {{"",
                      "The step that can be done next comes first; any order that the needs allow is right. Each step "
                      "says what holds it up."},
                     {"Hold point",
                      "No further without its proof. Who goes on without it gives a name and a reason, and both stand "
                      "in the packet."},
                     {"Owner", "Plain words, no hub is opened, and in the end the answer: tow it, show it, leave it."},
                     {"Cautions", "They come before the step. Read one, then say so.", true}}};
        case Screen::bearing:
            return {"Bearing",
                    {{"",
                      "Choose the nut, enter the maker's figures, then measure the end play by dial. The positions "
                      "say what one step of the lock changes."},
                     {"Only the dial proves it", "Back-off is not end play. By feel nothing is proved.", true},
                     {"The lock", "A new one, and a photo of it before the cap goes on.", true}}};
        case Screen::bleed:
            return {"Bleeding",
                    {{"",
                      "Enter the pipes as they run, then the order follows: the longest way from the actuator first. "
                      "The manufacturer's order overrides it."},
                     {"Count", "What came out at each corner, round by round, until it is clear and without bubbles."},
                     {"Brake fluid",
                      "It strips paint and burns eyes. Hose on the bleeder, goggles on, catch all of it.", true}}};
        case Screen::quotes:
        case Screen::quote:
        case Screen::compare:
        case Screen::customer:
        case Screen::shelf:
        case Screen::offer:
        case Screen::offers_file:
            return quote_help(screen);
        case Screen::summary:
            return {"May it be towed?",
                    {{"",
                      "The answer with its gravest reason, then place by place. A reason spells out the reading, the "
                      "limit, who says so, and the arithmetic. What was not measured is told apart, never as good."},
                     {"Who says so",
                      "Law and makers' figures may forbid. Common practice only warns: confirm it with the maker."},
                     {"To come",
                      "The same spot measured at two visits gives a rate. The wedge in the drawing is how far off it "
                      "may be; plan on its near edge."}}};
        case Screen::judgement:
            return {"One place, judged",
                    {{"", "Every reason for or against, the gravest first. Tap one to see how it came about."},
                     {"Cannot tell", "What is not known, why, and what would tell. Tap it to go and measure."}}};
        case Screen::figure:
            return {"The maker's figure",
                    {{"",
                      "Key in the figure, then where it stands: the document and its page, or the photo of the "
                      "casting."},
                     {"Remembered",
                      "It counts for all axles with the same tag, here and at later visits; there it is offered, never "
                      "put in by itself."}}};
        case Screen::inspection:
            return {"Periodic inspection",
                    {{"",
                      "Appendix A, item by item, answered by a qualified person: OK, not OK, repaired, not fitted. The "
                      "answers can be changed until the job is signed off."},
                     {"Before signing",
                      "Inspector, carrier, date, both qualifications with their evidence, and the statement. Without "
                      "them the job cannot be signed off."},
                     {"Kept", "Fourteen months, and the next one within twelve."}}};
        case Screen::since:
            return {"Since the last visit",
                    {{"",
                      "Each point that was measured then and now: as the last visit left it, as this one found it, "
                      "and the change. Tap one to see its place."},
                     {"Cannot tell", "What has no mate at the other visit says why. It is not filled in."}}};
        case Screen::points:
        case Screen::point:
        case Screen::plate:
        case Screen::sidewall:
        case Screen::chamber:
        case Screen::breakaway:
        case Screen::events:
            return point_help(screen);
        case Screen::settings:
            return {"Settings", {{"", "How the app looks and what it calls the sides; who you are; your wrenches."}}};
    }
    return {"Help", {}};
}

}  // namespace cotter
