// Help for the pages about what is looked at. See help.h.
#include "app/views/help.h"

namespace cotter {

HelpPage point_help(Screen screen) {
    switch (screen) {
        case Screen::point:
            return {
                "One point",
                {{"",
                  "Answer for this place alone. 'I can't tell' is an answer: it is kept, and never counts as good."},
                 {"Something is wrong",
                  "Choose what you see. It is recorded as a finding with its grade, and says at once what it means "
                  "for towing."}}};
        case Screen::plate:
            return {"Plate and use",
                    {{"",
                      "What the data plate and the axle tags say, who uses the trailer and what tows it. These decide "
                      "what must be looked at."},
                     {"Not known", "Is an answer too. What hangs on it then cannot be told."}}};
        case Screen::sidewall:
            return {
                "The tire's sidewall",
                {{"", "Size, type, load index or maximum load, maximum pressure and the date code, each wheel's own."},
                 {"Date code", "The last four digits of the DOT number. It may be on the inner side only."}}};
        case Screen::chamber:
            return {"The chamber's tag",
                    {{"", "Type, stroke and slack adjuster, for people trained for air brakes."},
                     {"Spring brakes",
                      "Never open, cut or unbolt the spring half. Letting the air out applies spring brakes.", true}}};
        case Screen::breakaway:
            return {
                "The breakaway test",
                {{"",
                  "Pull the pin, try each wheel, wait 15 minutes, try each again, put the pin back and see that "
                  "each turns free."},
                 {"Before you pull it", "Chock the wheels both ways. Unplug the trailer from the tow vehicle.", true}}};
        case Screen::events:
            return {
                "What happened to it",
                {{"",
                  "A good answer ends when the trailer is loaded, hits something, is overloaded or overheats. Enter "
                  "it here: what has to be looked at again then says so."}}};
        default:
            return {"What is looked at",
                    {{"",
                      "Every point of this trailer, each at its own place. What is open comes first; nothing counts as "
                      "good that nobody looked at."}}};
    }
}

}  // namespace cotter
