// The photo page under fingers: marking, saying what it is, moving and removing marks. Without pixels.
#include "tests/app/page.h"

#include "app/screens/photo_screen.h"

using namespace cotter;

namespace {

template <class R>
Id<R> id(int n) {
    return {*Uuid::parse("00000000-0000-4000-8000-0000000000" + std::to_string(10 + n))};
}

PhotoView some_photo() {
    PhotoView view;
    view.there = true;
    view.chrome.title = "Rotor face";
    view.chrome.under = "Axle 1, left";
    view.shot.id = id<Shot>(1);
    view.shot.place = Place::corner(1, Side::left);
    view.shot.slot = Slot::rotor_face;
    view.shot.photo.sha256 = std::string(64, 'a');
    view.shot.photo.width = 4000;
    view.shot.photo.height = 3000;
    view.facts = "Before the work.";
    return view;
}

void add_finding(PhotoView& view, int n, std::vector<TagPoint> points, TagShape shape) {
    PhotoFinding finding;
    finding.finding = id<Finding>(n);
    finding.tag = id<Tag>(n);
    finding.title = std::to_string(n) + "  Rotor: scored in rings";
    finding.grade = Grade::repair;
    finding.draft.id = finding.finding.text();
    finding.draft.shot = view.shot.id.text();
    view.findings.push_back(finding);
    view.marks.push_back({shape, points, Grade::repair, n});
    view.tags.push_back({id<Tag>(n), view.shot.id, finding.finding, shape, points});
}

// The page with its drafts kept as a session would.
struct PhotoPage {
    PhotoView view = some_photo();
    PhotoState state;
    Page page;

    explicit PhotoPage(PhotoView shown = some_photo(), Point size = {412, 915}, const Appearance& look = {})
        : view(std::move(shown)), page([this](UiContext& ui, Commands& out) { draw(ui, out); }, size, look) {
        page.carry_out = [this](const Command& c) {
            if (const auto* keep = std::get_if<KeepDrafts>(&c)) view.drafts = keep->drafts;
            if (const auto* put = std::get_if<PutFinding>(&c); put != nullptr && put->stay) {
                view.drafts.finding = put->draft;
                view.drafts.finding->id = id<Finding>(99).text();
                view.drafts.finding->points.clear();
            }
        };
    }
    void draw(UiContext& ui, Commands& out) {
        view.entry.reset();
        if (view.drafts.finding) {
            FindingEntry entry;
            entry.draft = *view.drafts.finding;
            entry.is_new = entry.draft.id.empty();
            entry.title = "What is it?";
            entry.usual = usual_findings(view.shot.slot, {}, view.shot.place);
            entry.components = components_for(view.shot.slot, {}, view.shot.place);
            entry.defects = defects_of(entry.draft.component, {}, view.shot.place);
            entry.remedies = remedies_for(entry.draft.component);
            view.entry = entry;
        }
        ShotPlaceView place;
        place.corners = {{Place::corner(1, Side::left), "Axle 1, left", true},
                         {Place::corner(1, Side::right), "Axle 1, right", false}};
        place.slots = {{Slot::rotor_face, "Rotor face", true}, {Slot::cap, "Cap", false}};
        draw_photo(ui, view, place, state, out);
    }
    [[nodiscard]] Point on_photo(double x, double y) { return place_of(page.target("Photo").rect, {x, y}); }
};

}  // namespace

TEST_CASE("from the open photo to the saved finding: the spot, what it is, how bad") {
    PhotoPage photo;
    photo.page.hands.tap(photo.on_photo(0.25, 0.75));
    photo.page.tap("Rotor: heat checks");  // it wears the mark of its usual grade
    const Commands done = photo.page.take();
    CHECK(only_of<PutFinding>(done).stay);
    const FindingDraft& draft = only_of<PutFinding>(done).draft;
    CHECK(draft.shot == photo.view.shot.id.text());
    CHECK(draft.place == photo.view.shot.place);
    CHECK(draft.component == "rotor");
    CHECK(draft.defect == "heat checks");
    CHECK(draft.grade == Grade::repair);
    CHECK(draft.shape == TagShape::point);
    REQUIRE(draft.points.size() == 1);
    CHECK(draft.points[0].x == doctest::Approx(0.25).epsilon(0.01));
    CHECK(draft.points[0].y == doctest::Approx(0.75).epsilon(0.01));
    CHECK(photo.page.log().shows("Saved as 'repair', as it usually is. Tap another grade if it is not so here."));
    photo.page.tap("Done");
    CHECK_FALSE(photo.view.drafts.finding);  // nothing is left half finished
    CHECK(photo.page.log().layer == 0);
}

TEST_CASE("another grade than the usual one is one tap more, and closes the sheet") {
    PhotoPage photo;
    photo.page.hands.tap(photo.on_photo(0.25, 0.75));
    photo.page.tap("Rotor: heat checks");
    (void)photo.page.take();
    photo.page.tap("do not tow");
    const Commands done = photo.page.take();
    CHECK(only_of<PutFinding>(done).draft.grade == Grade::do_not_tow);
    CHECK_FALSE(only_of<PutFinding>(done).draft.id.empty());
    CHECK_FALSE(photo.view.drafts.finding);
}

// A corner that rounding put outside of the texture made SDL leave out the whole page; the host looks for such corners.
TEST_CASE("an upright photo is drawn on a desk") {
    PhotoView view = some_photo();
    std::swap(view.shot.photo.width, view.shot.photo.height);
    for (const Point& size : {Point{1280, 800}, Point{1000, 800}, Point{1280, 790}, Point{1100, 700}}) {
        const PhotoPage photo(view, size);
        CHECK(photo.page.host.pages_refused() == 0);
    }
}

TEST_CASE("each step of a new finding is kept, and closing it leaves no trace") {
    PhotoPage photo;
    photo.page.hands.tap(photo.on_photo(0.5, 0.5));
    REQUIRE(photo.view.drafts.finding);
    CHECK(photo.view.drafts.finding->component.empty());
    photo.page.tap("Something else");
    photo.page.tap("Rotor");
    CHECK(photo.view.drafts.finding->component == "rotor");
    photo.page.tap("Heat checks");
    CHECK(photo.view.drafts.finding->defect == "heat checks");
    photo.page.tap("Close");
    CHECK_FALSE(photo.view.drafts.finding);
    for (const Command& c : photo.page.take()) CHECK(std::holds_alternative<KeepDrafts>(c));
}

TEST_CASE("a box, an arrow and a stroke are drawn by dragging") {
    const std::pair<std::string, TagShape> tools[] = {
        {"Box", TagShape::box}, {"Arrow", TagShape::arrow}, {"Stroke", TagShape::stroke}};
    for (const auto& row : tools) {
        const auto& tool = row.first;  // clang 14 captures no structured binding
        CAPTURE(tool);
        PhotoPage photo;
        photo.page.tap(tool);
        photo.page.hands.drag(photo.on_photo(0.3, 0.3), photo.on_photo(0.6, 0.7), 0.4);
        REQUIRE(photo.view.drafts.finding);
        const FindingDraft& draft = *photo.view.drafts.finding;
        CHECK(draft.shape == row.second);
        REQUIRE(draft.points.size() >= 2);
        CHECK(draft.points.front().x == doctest::Approx(0.3).epsilon(0.02));
        CHECK(draft.points.back().y == doctest::Approx(0.7).epsilon(0.02));
        if (row.second != TagShape::stroke) CHECK(draft.points.size() == 2);
    }
}

TEST_CASE("only looking, or with a slip of the finger, nothing is marked") {
    PhotoPage photo;
    photo.page.tap("Point");  // the chosen tool again: put away
    photo.page.hands.tap(photo.on_photo(0.5, 0.5));
    CHECK_FALSE(photo.view.drafts.finding);
    photo.page.tap("Box");
    photo.page.hands.tap(photo.on_photo(0.5, 0.5));
    CHECK_FALSE(photo.view.drafts.finding);
    CHECK(photo.page.take().empty());
}

TEST_CASE("a drag moves the zoomed picture and marks nothing; a mark hits the spot under the finger") {
    PhotoPage photo;
    ScriptCommand pinch;
    pinch.verb = ScriptVerb::pinch;
    pinch.from = photo.on_photo(0.5, 0.5);
    pinch.to = {60, 180};
    REQUIRE(photo.page.hands.run(std::vector{pinch}));
    CHECK(photo.state.photo.zoom.factor == doctest::Approx(3).epsilon(0.05));
    const float before = photo.state.photo.zoom.middle.x;
    photo.page.hands.drag(photo.on_photo(0.7, 0.5), photo.on_photo(0.4, 0.5), 0.3);
    CHECK(photo.state.photo.zoom.middle.x == doctest::Approx(before + 0.1).epsilon(0.02));
    CHECK(photo.page.take().empty());
    photo.page.hands.tap(photo.on_photo(0.5, 0.5));
    REQUIRE(photo.view.drafts.finding);
    CHECK(photo.view.drafts.finding->points[0].x == doctest::Approx(photo.state.photo.zoom.middle.x).epsilon(0.01));
}

TEST_CASE("a mark is chosen by a tap, resized by its handle, moved by its middle, and removed") {
    PhotoView view = some_photo();
    add_finding(view, 1, {{0.2, 0.2}, {0.6, 0.6}}, TagShape::box);
    PhotoPage photo(view);
    photo.page.hands.tap(photo.on_photo(0.4, 0.4));
    CHECK(photo.state.chosen == id<Tag>(1));
    photo.page.hands.drag(photo.on_photo(0.6, 0.6), photo.on_photo(0.8, 0.9), 0.4);
    Tag moved = only_of<PutTag>(photo.page.take()).tag;
    CHECK(moved.id == id<Tag>(1));
    CHECK(moved.points[0].x == doctest::Approx(0.8).epsilon(0.01));
    CHECK(moved.points[1].x == doctest::Approx(0.2).epsilon(0.01));
    photo.page.hands.drag(photo.on_photo(0.4, 0.4), photo.on_photo(0.5, 0.4), 0.4);
    moved = only_of<PutTag>(photo.page.take()).tag;
    CHECK(moved.points[0].x == doctest::Approx(0.3).epsilon(0.01));
    CHECK(moved.points[1].x == doctest::Approx(0.7).epsilon(0.01));
    photo.page.tap("Remove mark");
    CHECK(only_of<RemoveTag>(photo.page.take()).tag == id<Tag>(1));
}

TEST_CASE("a finding that is there already takes the mark, without a second finding") {
    PhotoPage photo;
    photo.page.hands.tap(photo.on_photo(0.5, 0.5));
    PhotoFinding same;
    same.finding = id<Finding>(7);
    same.title = "7  Rotor: surface rust";
    const FindingEntry entry = [&] {
        FindingEntry e = *photo.view.entry;
        e.same = {same};
        return e;
    }();
    FindingSheetState state;
    Page sheet([&](UiContext& ui, Commands& out) { draw_finding_sheet(ui, entry, {}, state, out); });
    sheet.tap("7  Rotor: surface rust");
    const Commands done = sheet.take();
    CHECK(only_of<PutTag>(done).tag.finding == id<Finding>(7));
    CHECK(only_of<PutTag>(done).tag.points == entry.draft.points);
    CHECK_FALSE(only_of<KeepDrafts>(done).drafts.finding);
}

TEST_CASE("what is not in the usual list is found by part, or put in own words") {
    PhotoPage photo;
    photo.page.hands.tap(photo.on_photo(0.5, 0.5));
    photo.page.tap("Something else");
    photo.page.tap("Jack");
    photo.page.tap("Weld cracked");
    CHECK(photo.view.drafts.finding->component == "jack");
    CHECK(photo.view.drafts.finding->defect == "weld cracked");
    photo.page.tap("do not tow");
    CHECK(only_of<PutFinding>(photo.page.take()).draft.grade == Grade::do_not_tow);
}

TEST_CASE("the photo goes to another corner, or away") {
    PhotoPage photo;
    photo.page.tap("Move or remove this photo");
    photo.page.tap("Axle 1, right");
    CHECK(only_of<PutShot>(photo.page.take()).shot.place == Place::corner(1, Side::right));
    photo.page.tap("Cap");
    CHECK(only_of<PutShot>(photo.page.take()).shot.slot == Slot::cap);
    photo.page.tap("Remove photo");
    const Commands gone = photo.page.take();
    CHECK(only_of<RemoveShot>(gone).shot == photo.view.shot.id);
    CHECK(std::holds_alternative<GoBack>(gone.back()));
}

TEST_CASE("before and after lie under one divider, which follows the finger") {
    PhotoView view = some_photo();
    view.other = PhotoOther{id<Shot>(2), std::string(64, 'b'), 4000, 3000};
    PhotoPage photo(view);
    photo.page.tap("Before and after");
    REQUIRE(photo.state.compare);
    const Rect area = photo.page.target("Before and after").rect;
    photo.page.hands.drag(area.middle(), {area.x + area.w * 0.8F, area.middle().y}, 0.3);
    CHECK(photo.state.photo.divide == doctest::Approx(0.8).epsilon(0.02));
    CHECK(photo.page.log().shows("before"));
    CHECK(photo.page.log().shows("after"));
    photo.page.tap("This photo alone");
    CHECK_FALSE(photo.state.compare);
}

TEST_CASE("a photo that is gone says so and leads back") {
    PhotoView view;
    PhotoPage photo(view);
    photo.page.tap("Back to where it was");
    CHECK(std::holds_alternative<GoBack>(photo.page.take().front()));
}

TEST_CASE("the photo page keeps the rules with no, one and a thousand findings, on every shape of screen") {
    const std::vector<Point> shapes{{412, 915}, {915, 412}, {1280, 800}};
    for (const int rows : {0, 1, 1000})
        for (const Point& size : shapes)
            for (const TypeSize type : {TypeSize::regular, TypeSize::largest}) {
                PhotoView view = some_photo();
                for (int n = 0; n < rows; ++n)
                    add_finding(view, n % 80, {{0.01 * (n % 90), 0.01 * (n % 70)}}, TagShape::point);
                for (int n = 0; n < rows; ++n) {
                    view.findings[n].finding = {
                        *Uuid::parse("00000000-0000-4000-8000-00000000" + std::to_string(1000 + n))};
                    view.findings[n].title = std::to_string(n + 1) + "  " + std::string(40, 'W');
                    view.findings[n].under = "replace both of the axle, and look at everything that is near it again";
                }
                view.warnings = {{"Blurred", "Take it again."}};
                PhotoPage photo(view, size, {ThemeKind::sun, type, Thumb::right});
                CAPTURE(rows);
                CAPTURE(size.x);
                for (const std::string& line : photo.page.offences()) FAIL_CHECK(line);
                if (rows == 1000) continue;
                photo.view.drafts.finding = FindingDraft{};
                photo.page.host.stage().happened();
                photo.page.hands.settle();
                for (const std::string& line : photo.page.offences()) FAIL_CHECK(line);
            }
}
