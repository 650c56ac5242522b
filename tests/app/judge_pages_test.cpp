// The pages of judging, tapped: what they ask for.
#include "app/screens/figure_screen.h"
#include "app/screens/inspection_screen.h"
#include "app/screens/judgement_screen.h"
#include "app/screens/summary_screen.h"
#include "tests/app/page.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

ReasonItem practice_reason() {
    ReasonItem item;
    item.key = "pads";
    item.grade = Grade::watch;
    item.place = "Axle 1, right";
    item.subject = "Pad imbalance";
    item.says = "2.4 mm; usual is at most 2 mm";
    item.limit = "at most 2 mm";
    item.source = "common practice; confirm with the maker";
    item.steps = {"inner 5.9 mm, outer 8.3 mm: 2.4 mm apart"};
    item.practice = true;
    item.figure = Route{Screen::figure, kRight, "pad-imbalance"};
    item.record = {Screen::corner, kRight, {}};
    return item;
}

FigureView figure_to_enter() {
    FigureView view;
    view.figure.what = "pad thickness";
    view.figure.bound = Bound::at_least;
    view.keypad = {"Pad thickness", {"mm"}, {}, false, false, true, false, false};
    view.missing = "key in the figure";
    return view;
}

}  // namespace

TEST_CASE("a reason of practice is spelled out and leads to the maker's figure") {
    JudgementView view;
    view.grade = Grade::watch;
    view.reasons = {practice_reason()};
    JudgementState state;
    Page page([&](UiContext& ui, Commands& out) { draw_judgement(ui, view, state, out); });
    page.tap("Pad imbalance");
    CHECK(page.take().empty());
    CHECK(page.offences().empty());
    CHECK(page.log().shows("inner 5.9 mm, outer 8.3 mm: 2.4 mm apart"));
    page.tap("Enter the maker's figure");
    CHECK(only_of<GoTo>(page.take()).route == *view.reasons[0].figure);
}

TEST_CASE("the summary leads to a judged place and to the inspection") {
    SummaryView view;
    view.word = "Cannot tell";
    view.answer = "Cannot tell, because of axle 1 right, pad thickness: not measured.";
    JudgedPlace place;
    place.label = "Axle 1, right";
    place.under = "nothing recorded";
    place.route = {Screen::judgement, kRight, {}};
    view.places = {place};
    SummaryState state;
    Page page([&](UiContext& ui, Commands& out) { draw_summary(ui, view, state, out); });
    CHECK(page.offences().empty());
    page.tap("Axle 1, right");
    CHECK(only_of<GoTo>(page.take()).route == place.route);
    page.tap("Periodic inspection");
    CHECK(only_of<GoTo>(page.take()).route.screen == Screen::inspection);
}

TEST_CASE("the keypad for a maker's figure opens by itself, and its answer goes into the draft") {
    const FigureView view = figure_to_enter();
    FigureState state;
    Page page([&](UiContext& ui, Commands& out) { draw_figure(ui, view, state, out); });
    for (const char* key : {"2", ".", "4"}) page.tap(key);
    (void)page.take();
    page.tap("Done");
    const Commands commands = page.take();
    REQUIRE(only_of<KeepDrafts>(commands).drafts.figure);
    CHECK(only_of<KeepDrafts>(commands).drafts.figure->value.text() == "2.4 mm");
    CHECK_FALSE(state.pad.has_value());
}

TEST_CASE("a whole figure is kept, its draft is ended, and the page goes back") {
    FigureView view = figure_to_enter();
    view.figure.value = make_amount("2.4", "mm").value();
    view.figure.document = "service sheet";
    view.figure.page = "9";
    view.value = "at least 2.4 mm";
    view.missing.clear();
    view.drafts.figure = view.figure;
    FigureState state;
    Page page([&](UiContext& ui, Commands& out) { draw_figure(ui, view, state, out); });
    CHECK(page.offences().empty());
    page.tap("Keep it");
    const Commands commands = page.take();
    CHECK(only_of<PutMakerLimit>(commands).figure == view.figure);
    CHECK_FALSE(only_of<KeepDrafts>(commands).drafts.figure);
    only_of<GoBack>(commands);
}

TEST_CASE("an item is answered by one tap, and the remark that its answer needs comes with it") {
    InspectionGroupView view;
    view.begun = true;
    view.group = "Brakes";
    view.items = {{"1a(1)", "there is no braking action", false, {}}};
    view.next = "Lights";
    InspectionPageState state;
    Page page([&](UiContext& ui, Commands& out) { draw_inspection_group(ui, view, state, out); });
    CHECK(page.offences().empty());
    page.tap("OK");
    CHECK(only_of<AnswerItem>(page.take()).answer.answer == Answer::ok);
    page.tap("Not OK");
    const InspectionAnswer answer = only_of<AnswerItem>(page.take()).answer;
    CHECK(answer.answer == Answer::not_ok);
    CHECK(answer.remark == view.items[0].fails);
    page.tap("Next: Lights");
    CHECK(only_of<GoInstead>(page.take()).route.record == "Lights");
}

TEST_CASE("an inspection begins by one tap with the head that was made ready") {
    InspectionView view;
    view.head.inspector = "Robin Alder";
    InspectionPageState state;
    Page page([&](UiContext& ui, Commands& out) { draw_inspection(ui, view, state, out); });
    CHECK(page.offences().empty());
    page.tap("Begin the inspection");
    CHECK(only_of<PutInspection>(page.take()).head.inspector == "Robin Alder");
}
