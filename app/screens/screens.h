// All pages of the app, and which is drawn when. For the app and for tests of screens.
#pragma once

#include "app/command.h"
#include "app/screens/bearing_screen.h"
#include "app/screens/bleed_screen.h"
#include "app/screens/breakaway_screen.h"
#include "app/screens/corner_screen.h"
#include "app/screens/hand_over_screen.h"
#include "app/screens/identify_screen.h"
#include "app/screens/intake_screen.h"
#include "app/screens/photo_screen.h"
#include "app/screens/plate_screen.h"
#include "app/screens/point_screen.h"
#include "app/screens/customer_screen.h"
#include "app/screens/quote_screen.h"
#include "app/screens/quotes_screen.h"
#include "app/screens/shelf_screen.h"
#include "app/screens/level_screen.h"
#include "app/screens/torque_screen.h"
#include "app/screens/work_screen.h"
#include "app/screens/event_screen.h"
#include "app/screens/figure_screen.h"
#include "app/screens/inspection_screen.h"
#include "app/screens/judgement_screen.h"
#include "app/screens/kept_view.h"
#include "app/screens/summary_screen.h"
#include "app/screens/tag_screen.h"
#include "app/session/session.h"
#include "app/ui/ui.h"

namespace cotter {

// What screens remember from frame to frame; may vanish at any moment without loss.
struct ScreenStates {
    std::string reason;  // being written for a change after sign-off
    CornerState corner;
    IdentifyState identify;
    HandOverState hand_over;
    PhotoState photo;
    IntakeState intake;
    LevelState level;
    TorqueState torque;
    WorkState work;
    BearingState bearing;
    BleedState bleed;
    SummaryState summary;
    JudgementState judgement;
    FigureState figure;
    InspectionPageState inspection;
    QuotesState quotes;
    CustomerState customer;
    ShelfState shelf;
    OfferState offer;
    OffersFileState offers_file;
    PointsState points;
    PointState point;
    PlateState plate;
    FormState tag;
    ReadingState breakaway;
    EventState events;
    KeptView view;  // of the page that is shown
    Route shown;    // states of a page end when another is shown, or another job is open
    JobId job;
};

void draw_screens(UiContext& ui, const Session& session, ScreenStates& states, Commands& out);

}  // namespace cotter
