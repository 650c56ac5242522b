// The app on a device that brings photos and keeps what was written a moment later, as a phone's browser does.
#include <doctest/doctest.h>

#include "app/driver/audit.h"
#include "app/views/chrome.h"
#include "app/views/only_here.h"
#include "tests/app/app_bench.h"

using namespace cotter;

namespace {

class Phone final : public Device {
public:
    [[nodiscard]] bool picks() const override { return true; }
    void pick(Pick what) override { picked.push_back(what); }
    void hand_out(const std::string& path) override { handed_out.push_back(path); }
    void confirm() override { ++confirmed; }
    void keep_awake(bool on) override { awake = on; }
    [[nodiscard]] std::optional<StorageFacts> storage() const override { return facts; }
    [[nodiscard]] std::uint64_t written() override { return ++wrote; }
    [[nodiscard]] std::uint64_t kept() const override { return safe; }
    [[nodiscard]] std::string keeping_trouble() const override { return trouble; }

    std::vector<Pick> picked;
    std::vector<std::string> handed_out;
    int confirmed = 0;
    bool awake = false;
    std::uint64_t wrote = 0, safe = 0;
    std::string trouble;
    StorageFacts facts{true, 35'000'000, 2'000'000'000};
};

// Does nothing by itself; the test answers.
class Elsewhere final : public LongWork {
public:
    void order(std::vector<std::string> paths, std::function<void(std::vector<std::string>)> done) override {
        done({paths.rbegin(), paths.rend()});
    }
    void take_in(const std::string& path, std::function<void(Result<PhotoRef>)> done) override {
        asked.push_back(path);
        answer = std::move(done);
    }
    void pack(PackOrder order, std::function<void(Result<Packed>)> done) override {
        packed.push_back(std::move(order));
        done(fail(Errc::io, "the browser stopped the work"));
    }

    // A photo's answer asks for the next one, which puts its own in the place of this.
    void give(Result<PhotoRef> photo) { std::exchange(answer, nullptr)(std::move(photo)); }

    std::vector<std::string> asked;
    std::vector<PackOrder> packed;
    std::function<void(Result<PhotoRef>)> answer;
};

class Sleepless final : public Waker {
public:
    void wake() override {}
};

struct PhoneBench : AppBench {
    explicit PhoneBench(Point screen = {412, 915}) : AppBench(screen) {
        device = &phone;
        hands.reset();
        host.reset();
        reopen();
        show();
    }
    Phone phone;
};

std::string saved(SessionBench& bench) {
    bench.session().collect();
    return chrome_of(bench.session(), "x").saved;
}

}  // namespace

TEST_CASE("'saved' is said only when the device has kept the change") {
    PhoneBench bench;
    bench.start_tandem();
    CHECK(saved(bench) == "being saved");
    const std::uint64_t revision = bench.session().revision();
    bench.phone.safe = bench.phone.wrote;
    CHECK(saved(bench).starts_with("saved "));
    CHECK(bench.session().revision() != revision);  // so the page is drawn anew
    bench.apply(PutTrailer{*bench.job().only<Trailer>()});
    bench.phone.safe = bench.phone.wrote - 1;
    CHECK(saved(bench) == "being saved");
}

TEST_CASE("what the device cannot keep is said with its reason, and goes when it can") {
    PhoneBench bench;
    bench.start_tandem();
    bench.phone.trouble = "this device has no room left";
    CHECK(saved(bench) == "not saved: this device has no room left");
    CHECK_FALSE(chrome_of(bench.session(), "x").saved_ok);
    bench.phone.trouble.clear();
    bench.phone.safe = bench.phone.wrote;
    CHECK(saved(bench).starts_with("saved "));
}

TEST_CASE("photos come by the device's own camera and chooser, and each change can be felt") {
    PhoneBench bench;
    bench.start_tandem();
    bench.apply(GoTo{{Screen::intake, Place::corner(1, Side::right), std::string(name_of(Slot::lining))}});
    bench.look();
    bench.touch("Take a photo");
    bench.touch("Choose photos");
    CHECK(bench.phone.picked == std::vector{Pick::camera, Pick::photos});
    CHECK_FALSE(bench.log().shows("There are no photos in this folder"));
}

TEST_CASE("what was chosen goes to the place that the page is for, and is shown when it is one") {
    PhoneBench bench;
    bench.start_tandem();
    bench.apply(GoTo{{Screen::intake, Place::corner(1, Side::right), std::string(name_of(Slot::lining))}});
    NullPictures pictures;
    Sleepless waker;
    App app(bench.session(), bench.tasks, {pictures, waker});
    app.dropped({demo_photo("05_axle1-left_brake-exposed.jpg")});
    bench.run_tasks();
    REQUIRE(bench.job().all<Shot>().size() == 1);
    CHECK(bench.job().all<Shot>()[0].slot == Slot::lining);
    CHECK(bench.session().route().screen == Screen::photo);
}

TEST_CASE("the packet is handed out by the device") {
    PhoneBench bench;
    bench.start_tandem();
    bench.apply(NameTechnician{"R. Alder"});
    bench.apply(GoTo{{Screen::hand_over, {}, {}}});
    bench.look();
    bench.touch("Make the packet");
    bench.run_tasks();
    bench.look();
    bench.touch("Send the packet");
    REQUIRE(bench.phone.handed_out.size() == 1);
    CHECK(bench.phone.handed_out[0].ends_with("_r1.zip"));
    CHECK(bench.phone.handed_out[0] == bench.session().packed()->path);
}

TEST_CASE("the screen stays awake while hub oil settles") {
    PhoneBench bench;
    bench.start_tandem();
    Drafts drafts = bench.session().drafts();
    drafts.put_timer({"a level", bench.clock.at, 600});
    bench.apply(KeepDrafts{drafts});
    bench.look();
    CHECK(bench.phone.awake);
    bench.clock.at.unix_s += 2 * 3600;  // begun and forgotten
    bench.look();
    CHECK_FALSE(bench.phone.awake);
    bench.clock.at.unix_s -= 2 * 3600;
    drafts.timers.clear();
    bench.apply(KeepDrafts{drafts});
    bench.look();
    CHECK_FALSE(bench.phone.awake);
}

TEST_CASE("work that is nowhere else is said when it grows old, and not where the disk keeps it") {
    PhoneBench bench;
    bench.start_tandem();
    const JobId job = bench.job().id();
    const auto words = [&] {
        bench.apply(GoBack{});  // to the yard: jobs are listed anew
        return only_here_words(bench.session());
    };
    CHECK(words().empty());
    bench.clock.at.unix_s += 4 * 86'400;
    CHECK(words().find("1 job of 3 days") != std::string::npos);
    CHECK(only_here_words(bench.session(), job).find("last 4 days") != std::string::npos);
    bench.phone.facts.may_be_cleared = false;
    CHECK(words().empty());
    bench.phone.facts.may_be_cleared = true;
    bench.apply(OpenJob{job});
    bench.apply(ExportPacket{});
    bench.run_tasks();
    for (int i = 0; i < 3; ++i) bench.apply(GoBack{});
    CHECK(words().empty());
}

TEST_CASE("long work may be done elsewhere, and its trouble is told") {
    Elsewhere elsewhere;
    SessionBench bench;
    bench.elsewhere = &elsewhere;
    bench.reopen();
    bench.start_tandem();
    bench.apply(TakePhotos{{"/inbox/1/a.jpg", "/inbox/2/b.jpg"}, Place::corner(1, Side::left), Slot::cap, {}});
    REQUIRE(elsewhere.asked == std::vector<std::string>{"/inbox/2/b.jpg"});
    PhotoRef photo;
    photo.sha256 = std::string(64, 'a');
    photo.media_type = "image/jpeg";
    photo.bytes = 10;
    photo.width = photo.height = 100;
    elsewhere.give(photo);
    CHECK(bench.job().all<Shot>().size() == 1);
    REQUIRE(elsewhere.asked.size() == 2);
    const std::uint64_t before = bench.session().revision();
    elsewhere.give(fail(Errc::refused, "the photo is cut off", "a.jpg"));
    CHECK(bench.session().revision() > before);  // else the page would go on showing that it is under way
    CHECK(bench.session().not_taken().size() == 1);
    CHECK_FALSE(bench.session().work().has_value());
    bench.apply(ExportPacket{});
    REQUIRE(elsewhere.packed.size() == 1);
    CHECK(elsewhere.packed[0].job == bench.job());
    CHECK(bench.session().notice()->text == "the browser stopped the work");
    CHECK_FALSE(bench.session().work().has_value());
}

TEST_CASE("the pages of a device that picks keep the laws of the screens") {
    for (const Point size : {Point{412, 915}, Point{915, 412}, Point{1280, 800}}) {
        PhoneBench bench(size);
        bench.start_tandem();
        bench.clock.at.unix_s += 5 * 86'400;
        Settings settings = bench.session().settings();
        settings.type = TypeSize::largest;
        bench.apply(PutSettings{settings});
        for (const Screen screen :
             {Screen::yard, Screen::intake, Screen::hand_over, Screen::settings, Screen::shelf, Screen::offers_file}) {
            CAPTURE(name_of(screen));
            bench.apply(GoTo{{screen, {}, {}}});
            bench.look();
            const UiStage& stage = bench.host->stage();
            for (const std::string& line : audit(stage.log(), stage.width(), stage.height())) FAIL_CHECK(line);
        }
    }
}
