// The changes and the views of judging: makers' figures, the inspection, what is said of a whole job.
#include <algorithm>

#include <doctest/doctest.h>

#include "app/views/figure_view.h"
#include "app/views/hand_over_view.h"
#include "app/views/inspection_view.h"
#include "app/views/judgement_view.h"
#include "app/views/plan_view.h"
#include "app/views/reason_item.h"
#include "app/views/summary_view.h"
#include "tests/app/app_books.h"
#include "tests/app/places.h"
#include "tests/support/invented.h"

using namespace cotter;

namespace {

MakerLimit pad_figure() {
    MakerLimit figure;
    figure.what = "pad thickness";
    figure.value = make_amount("2.4", "mm").value();
    figure.document = "service sheet";
    figure.page = "9";
    figure.axle = 1;
    return figure;
}

}  // namespace

TEST_CASE("the summary says what the judge says, with every place and the earlier visits") {
    SessionBench bench;
    fill_book(bench, BookKind::demo);
    const SummaryView view = summary_view(bench.session());
    CHECK(view.towing == bench.session().summary().towing);
    CHECK(view.word == towing_word(view.towing));
    CHECK(view.answer.find("No: ") != 0);
    REQUIRE_FALSE(view.reasons.empty());
    CHECK(view.reasons.front().grade == bench.session().summary().now.grade);
    for (const char* label : {"Axle 1, left", "Axle 1, right", "Axle 2, left", "Axle 2, right", "Actuator"})
        CHECK(std::count_if(view.places.begin(), view.places.end(),
                            [&](const JudgedPlace& p) { return p.label == label; }) == 1);
    CHECK(view.visits.size() == 2);
    CHECK(view.unknowns.size() + view.more_unknown == bench.session().summary().unknowns.size());
    REQUIRE_FALSE(view.forecasts.empty());
    for (const ForecastItem& f : view.forecasts) {
        CHECK(f.points.size() >= 2);
        CHECK(*f.end_early <= *f.end);
        CHECK(*f.end <= *f.end_late);
        CHECK(f.limit < f.points.back().thickness);
    }
}

TEST_CASE("the placard's pressure is asked for on the trailer's page, never as a maker's figure") {
    AppBench bench({412, 1400});
    bench.start_tandem();
    const auto put = [&](std::string_view what, const char* unit, const char* value) {
        Reading reading;
        reading.place = kLeft;
        reading.what = what;
        reading.unit = unit;
        reading.points = {{"", Number::parse(value).value()}};
        bench.apply(PutReading{reading});
    };
    put("tyre pressure, cold", "[psi]", "80");
    put("rotor thickness", "mm", "20.2");
    const auto unknown = [&](std::string_view subject) -> std::optional<UnknownItem> {
        for (const Unknown& u : bench.session().summary().unknowns)
            if (u.subject == subject && u.place == kLeft) return unknown_item(u, SideWords::left_right);
        return std::nullopt;
    };
    REQUIRE(unknown("Cold tire pressure").has_value());
    CHECK_FALSE(unknown("Cold tire pressure")->figure.has_value());
    REQUIRE(unknown("Cold tire pressure")->plate.has_value());
    REQUIRE(unknown("rotor thickness").has_value());
    CHECK(unknown("rotor thickness")->figure.has_value());
    CHECK_FALSE(unknown("rotor thickness")->plate.has_value());

    bench.apply(GoTo{{Screen::judgement, kLeft, {}}});
    bench.look();
    bench.touch("Cold tire pressure");
    CHECK_FALSE(bench.log().shows("Enter the maker's figure"));
    bench.touch("Enter what the label says");
    CHECK(bench.session().route().screen == Screen::plate);
    bench.touch("Cold pressure on the placard");
    bench.key("80");
    REQUIRE(bench.job().only<Trailer>()->axles[0].tire_pressure.has_value());
    CHECK(bench.job().only<Trailer>()->axles[0].tire_pressure->text() == "80 psi");
    CHECK_FALSE(unknown("Cold tire pressure").has_value());
}

TEST_CASE("the hand-over says what was not covered, never that nothing is missing") {
    SessionBench bench;
    fill_book(bench, BookKind::demo);
    const HandOverView view = hand_over_view(bench.session());
    CHECK(view.not_covered.find("lights and wiring") != std::string::npos);
    CHECK(view.not_covered.find("not known") != std::string::npos);
}

TEST_CASE("the plan and the hand-over lead to the answer") {
    SessionBench bench;
    fill_book(bench, BookKind::demo);
    const Summary& s = bench.session().summary();
    CHECK(plan_view(bench.session()).towing == towing_question(s));
    CHECK(plan_view(bench.session()).answer == s.towing);
    CHECK(hand_over_view(bench.session()).answer == s.towing);
}

TEST_CASE("the summary is made anew when the job changes, also by undo") {
    SessionBench bench;
    bench.start_tandem();
    const Towing towing = bench.session().summary().towing;
    CHECK(towing == Towing::cannot_tell);
    bench.apply(GoTo{{Screen::summary, {}, {}}});
    CHECK(bench.session().summary().towing == towing);
    FindingDraft draft;
    draft.place = kRear;
    draft.component = "wheel nuts";
    draft.defect = "one missing";
    draft.grade = Grade::do_not_tow;
    bench.apply(PutFinding{draft});
    CHECK(bench.session().summary().towing == Towing::no);
    bench.apply(UndoStep{});
    CHECK(bench.session().summary().towing == towing);
}

TEST_CASE("a place tells all its reasons with who says so, the gravest first") {
    SessionBench bench;
    fill_book(bench, BookKind::demo);
    bench.apply(GoTo{{Screen::judgement, kRear, {}}});
    const JudgementView view = judgement_view(bench.session());
    REQUIRE(view.reasons.size() > 3);
    for (std::size_t i = 1; i < view.reasons.size(); ++i) CHECK(view.reasons[i - 1].grade >= view.reasons[i].grade);
    for (const ReasonItem& r : view.reasons) CHECK_FALSE(r.source.empty());
    const auto practice =
        std::find_if(view.reasons.begin(), view.reasons.end(), [](const ReasonItem& r) { return r.practice; });
    REQUIRE(practice != view.reasons.end());
    REQUIRE(practice->figure);
    CHECK(practice->figure->screen == Screen::figure);
    CHECK_FALSE(view.unknowns.empty());
}

TEST_CASE("a maker's figure is begun from a limit of practice, and counts once it is kept") {
    SessionBench bench;
    fill_book(bench, BookKind::demo);
    bench.apply(GoTo{{Screen::figure, kRear, "pad-imbalance"}});
    FigureView view = figure_view(bench.session());
    CHECK(view.figure.what == "pad imbalance");
    CHECK(view.figure.bound == Bound::at_most);
    CHECK(view.missing == "key in the figure");
    CHECK_FALSE(view.practice.empty());
    MakerLimit figure = view.figure;
    figure.value = make_amount("0.1", "mm").value();
    Drafts drafts = view.drafts;
    drafts.figure = figure;
    bench.apply(KeepDrafts{drafts});
    view = figure_view(bench.session());
    CHECK(view.value == "at most 0.1 mm");
    CHECK(view.missing == "name the document");
    figure.document = "service sheet";
    figure.page = "3";
    bench.apply(PutMakerLimit{figure});
    bench.apply(GiveReason{"the sheet came by mail"});  // the demo is signed off
    bench.apply(GoTo{{Screen::judgement, kRear, {}}});
    const JudgementView judged = judgement_view(bench.session());
    const auto own = std::find_if(judged.reasons.begin(), judged.reasons.end(), [](const ReasonItem& r) {
        return r.subject == "Pad imbalance" && r.source.find("service sheet") != std::string::npos;
    });
    REQUIRE(own != judged.reasons.end());
    CHECK(own->grade == Grade::watch);  // pads that differ are watched, whoever says how much they may
    CHECK_FALSE(own->practice);
}

TEST_CASE("a figure for an axle model is offered at the next job with that tag") {
    SessionBench bench;
    bench.start_tandem();
    Trailer trailer = *bench.job().only<Trailer>();
    trailer.axles[0].model = "TX-52";
    bench.apply(PutTrailer{trailer});
    MakerLimit figure = pad_figure();
    figure.axle = 0;
    figure.axle_model = "TX-52";
    bench.apply(PutMakerLimit{figure});
    REQUIRE(bench.job().all<MakerLimit>().size() == 1);
    bench.start_tandem();
    trailer = *bench.job().only<Trailer>();
    trailer.axles[0].model = "TX-52";
    bench.apply(PutTrailer{trailer});
    bench.apply(GoTo{{Screen::figure, Place::corner(1, Side::left), "pad-shop"}});
    const FigureView view = figure_view(bench.session());
    REQUIRE(view.offers.size() == 1);
    CHECK(view.offers[0].words == "at least 2.4 mm");
    CHECK(view.offers[0].figure.id.nil());
    CHECK(view.documents == std::vector<std::string>{"service sheet"});
    bench.apply(PutMakerLimit{view.offers[0].figure});
    REQUIRE(bench.job().all<MakerLimit>().size() == 1);
    CHECK(figure_view(bench.session()).offers.empty());
}

TEST_CASE("a maker's figure without a source is refused, a removed one is gone") {
    SessionBench bench;
    bench.start_tandem();
    MakerLimit figure = pad_figure();
    figure.page.clear();
    bench.apply(PutMakerLimit{figure});
    CHECK(bench.job().all<MakerLimit>().empty());
    REQUIRE(bench.session().notice());
    CHECK(bench.session().notice()->error);
    bench.apply(PutMakerLimit{pad_figure()});
    REQUIRE(bench.job().all<MakerLimit>().size() == 1);
    bench.apply(RemoveMakerLimit{bench.job().all<MakerLimit>()[0].id});
    CHECK(bench.job().all<MakerLimit>().empty());
    CHECK_FALSE(changes_of(bench.job(), RemoveMakerLimit{}, {bench.clock.now(), "A", bench.random}).has_value());
}

TEST_CASE("an inspection is begun once, answered item by item, and taken out whole") {
    SessionBench bench;
    bench.start_tandem();
    CHECK_FALSE(inspection_view(bench.session()).begun);
    bench.apply(PutInspection{inspection_view(bench.session()).head});
    Inspection head = *bench.job().only<Inspection>();
    head.id = {};
    head.carrier = "Nuthatch Haulage (invented), 4 Mill Road";
    bench.apply(PutInspection{head});
    REQUIRE(bench.job().all<Inspection>().size() == 1);
    CHECK(bench.job().only<Inspection>()->carrier == head.carrier);

    bench.apply(GoTo{{Screen::inspection, {}, "Brakes"}});
    InspectionGroupView group = inspection_group_view(bench.session());
    REQUIRE(group.items.size() > 2);
    CHECK_FALSE(group.next.empty());
    for (const Answer answer : {Answer::ok, Answer::not_ok, Answer::repaired, Answer::not_fitted, Answer::not_ok}) {
        bench.apply(AnswerItem{answer_of(group.items[0], answer)});
        REQUIRE(bench.job().all<InspectionAnswer>().size() == 1);
        CHECK(bench.job().all<InspectionAnswer>()[0].answer == answer);
    }
    group = inspection_group_view(bench.session());
    CHECK(group.answered == 1);
    const InspectionView view = inspection_view(bench.session());
    CHECK(view.answered == 1);
    CHECK(view.not_passing.size() == 1);
    CHECK(view.groups[0].words.find("1 not OK") != std::string::npos);
    CHECK_FALSE(view.lacks.empty());
    CHECK_FALSE(view.due.empty());
    bench.apply(RemoveInspection{});
    CHECK(bench.job().all<Inspection>().empty());
    CHECK(bench.job().all<InspectionAnswer>().empty());
}

TEST_CASE("an inspection with all its answers and a whole head lacks nothing") {
    SessionBench bench;
    bench.start_tandem();
    Trailer trailer = *bench.job().only<Trailer>();
    trailer.vin = test::invented_vin(1);
    trailer.maker = "own make";
    trailer.model_year = 2019;
    bench.apply(PutTrailer{trailer});
    Inspection head = inspection_view(bench.session()).head;
    head.inspector = "Robin Alder";
    head.carrier = "Nuthatch Haulage (invented)";
    head.qualified_by = head.brake_qualified_by = "course 2024, file 7";
    head.statement = kInspectionStatement;
    bench.apply(PutInspection{head});
    std::string group = inspection_view(bench.session()).groups[0].name;
    while (!group.empty()) {
        bench.apply(GoTo{{Screen::inspection, {}, group}});
        const InspectionGroupView view = inspection_group_view(bench.session());
        for (const InspectionItemView& item : view.items)
            bench.apply(AnswerItem{answer_of(item, item.where_fitted ? Answer::not_fitted : Answer::ok)});
        group = view.next;
    }
    const InspectionView view = inspection_view(bench.session());
    CHECK(view.answered == view.wanted);
    CHECK(view.lacks == std::vector<std::string>{});
    CHECK(view.result.find("nothing missing") != std::string::npos);
}
