// See step_notes.h.
#include "app/views/step_notes.h"

#include <array>

namespace cotter {

namespace {

using NoteWords = std::string_view;

constexpr std::array<NoteWords, 4> kHeld{"chocks in front and behind, both sides", "coupled to the tow vehicle",
                                         "level hard ground", "drawbar on its jack"};
constexpr std::array<NoteWords, 4> kCracked{"all evenly tight", "one was loose", "one was very tight",
                                            "one turned its stud"};
constexpr std::array<NoteWords, 3> kStands{"rated stands at the maker's points", "rated stands under the frame",
                                           "shaken, it stands"};
constexpr std::array<NoteWords, 3> kPiston{"went back freely", "went back stiffly", "did not go back"};
constexpr std::array<NoteWords, 4> kYes{"the customer, in person", "the customer, on the phone", "to everything",
                                        "to the brakes only"};
constexpr std::array<NoteWords, 4> kClicks{"manual, 8 clicks back", "manual, 10 clicks back",
                                           "self-adjusting, set to the maker's clearance",
                                           "the maker's figure is missing"};
constexpr std::array<NoteWords, 2> kSeat{"no feeler goes under", "the sound turned solid"};
constexpr std::array<NoteWords, 3> kDriver{"the driver, in person", "the owner, on the phone",
                                           "a tag at the steering wheel"};
constexpr std::array<NoteWords, 2> kMoved{"none moved", "one moved"};
constexpr std::array<NoteWords, 3> kFrame{"frame on rated stands", "axle on its own stands",
                                          "axle on a jack and blocks"};
constexpr std::array<NoteWords, 3> kAfterRoad{"nuts as marked", "oil at the line", "no leak"};
constexpr std::array<NoteWords, 4> kFluid{"DOT 3 on the label", "DOT 4 on the label", "DOT 5.1 on the label",
                                          "a new sealed bottle of the same"};

constexpr std::array<NoteWords, 5> kReasons{"no tool here", "the customer wants it so",
                                            "seen and right, no record was made", "done by someone else",
                                            "is done at the next visit"};

struct Usual {
    NoteWords step;
    std::span<const NoteWords> notes;
};

constexpr std::array kUsual{
    Usual{"U3", kHeld},  Usual{"U5", kCracked}, Usual{"U6", kStands},  Usual{"D3", kPiston}, Usual{"D7", kYes},
    Usual{"E8", kYes},   Usual{"H3", kYes},     Usual{"E13", kClicks}, Usual{"H5", kClicks}, Usual{"B5", kSeat},
    Usual{"F1", kFluid}, Usual{"W10", kDriver}, Usual{"T3", kMoved},   Usual{"G2", kFrame},  Usual{"R10", kAfterRoad},
};

}  // namespace

std::span<const std::string_view> usual_notes(std::string_view step) {
    for (const Usual& u : kUsual)
        if (u.step == step) return u.notes;
    return {};
}

std::span<const std::string_view> usual_override_reasons() {
    return kReasons;
}

}  // namespace cotter
