// Help for the pages about prices. See help.h.
#include "app/views/help.h"

namespace cotter {

HelpPage quote_help(Screen screen) {
    switch (screen) {
        case Screen::quote:
            return {"One quote",
                    {{"", "Each line with its arithmetic. A draft can be worked out anew; what was offered is frozen."},
                     {"A change", "Makes a new version. The old one stays in the record, with its answers."}}};
        case Screen::compare:
            return {"Why it is dearer",
                    {{"", "Choose two quotes. Each reason with its amount; together they are the whole difference."},
                     {"Deposits", "Are given back with the old parts, so they stand beside the total."}}};
        case Screen::customer:
            return {"For the customer",
                    {{"",
                      "Offer the price, then turn the phone round: what, why and how much, without inner notes. Yes or "
                      "no for each line, a name, a drawn signature."},
                     {"Answers",
                      "Each answer is kept with its time and how it was given. A later one on the same line counts "
                      "instead."}}};
        case Screen::shelf:
            return {"The price shelf",
                    {{"", "Offers that this device remembers, with the day on which each price was seen."},
                     {"Old prices", "Ask again before you quote a price older than three months."},
                     {"As a file", "The whole shelf goes to and comes from a CSV file, for a spreadsheet."}}};
        case Screen::offers_file:
            return {
                "Offers from a file",
                {{"", "A CSV file with a header line. It needs the columns supplier, title, covers, price, currency."},
                 {"covers", "Like '2 corners of brake pads' or '946 mL of brake fluid'."},
                 {"Lines", "Lines that cannot be read are listed with the reason; all others are imported."}}};
        case Screen::offer:
            return {"An offer",
                    {{"", "Who sells it, what one pack covers, the price of one pack. The rest can wait."},
                     {"Corners", "An axle is two corners. 'A pair' may be one corner or two: ask."}}};
        default:
            return {"Quotes",
                    {{"", "What the findings call for, and what it costs by each aim. Tap a quote for its lines."},
                     {"Needs",
                      "Follow from findings graded 'repair' and 'do not tow'. Change a number or leave one "
                      "out; it stays as you said."}}};
    }
}

}  // namespace cotter
