// What people do to a phone in a yard: it is turned in the middle of a drag, it is full, and what they type or call
// their files knows no bounds. Clear words, nothing lost.
#include <sys/resource.h>

#include <csignal>

#include <doctest/doctest.h>

#include "app/views/folder_list.h"
#include "core/base/text.h"
#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

void take_first_photo(SessionBench& bench) {
    bench.start_tandem();
    bench.apply(TakePhotos{{demo_photo("05_axle1-left_brake-exposed.jpg")}, kRight, Slot::lining, Stage::before});
    bench.run_tasks();
    REQUIRE(bench.job().all<Shot>().size() == 1);
}

FindingDraft finding(const Job& job) {
    FindingDraft draft;
    draft.shot = job.all<Shot>()[0].id.text();
    draft.place = kRight;
    draft.points = {{0.4, 0.5}};
    draft.component = "pads";
    draft.defect = "thin";
    draft.grade = Grade::repair;
    return draft;
}

// While it lives no file grows past `bytes`, as on a full disk; only this process is held to it.
class FullDisk {
public:
    explicit FullDisk(rlim_t bytes) {
        handler_ = std::signal(SIGXFSZ, SIG_IGN);  // the call fails instead
        getrlimit(RLIMIT_FSIZE, &before_);
        rlimit full = before_;
        full.rlim_cur = bytes;
        setrlimit(RLIMIT_FSIZE, &full);
    }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;
    ~FullDisk() {
        setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, handler_);
    }

private:
    rlimit before_{};
    void (*handler_)(int) = SIG_DFL;
};

}  // namespace

TEST_CASE("a full disk while tagging: it says so, what was saved stays, and the tag is tried again") {
    SessionBench bench;
    take_first_photo(bench);
    const Job before = bench.job();
    Drafts drafts = bench.session().drafts();
    drafts.finding = finding(before);
    bench.apply(KeepDrafts{drafts});
    {
        const FullDisk full(512);
        bench.apply(PutFinding{finding(before), true});
        CHECK(bench.job() == before);
        CHECK_FALSE(bench.session().not_saved().empty());
        REQUIRE(bench.session().notice().has_value());
        CHECK(bench.session().notice()->error);
        CHECK(bench.session().notice()->text.find('\n') == std::string::npos);
        CHECK(bench.session().drafts().finding.has_value());
    }
    bench.apply(PutFinding{finding(before), true});
    CHECK(bench.session().not_saved().empty());
    CHECK(bench.job().all<Finding>().size() == 1);
    const Job after = bench.job();
    bench.reopen();
    CHECK(bench.job() == after);
}

TEST_CASE("a note of ten thousand characters, emoji and right-to-left is kept as it was typed") {
    SessionBench bench;
    take_first_photo(bench);
    FindingDraft draft = finding(bench.job());
    while (draft.note.size() < 10'000)
        draft.note += "\U0001F527 Ł\u05E9\u05DC\u05D5\u05DD \u0645\u0631 \t\"'\\ and on ";
    draft.note += std::string(600, '.');
    bench.apply(PutFinding{draft});
    REQUIRE(bench.job().all<Finding>().size() == 1);
    bench.reopen();
    CHECK(bench.job().all<Finding>()[0].note == draft.note);
    draft.note += std::string(9'000, '.');
    bench.apply(PutFinding{draft});
    CHECK(bench.job().all<Finding>().size() == 1);
    REQUIRE(bench.session().notice().has_value());
    CHECK(bench.session().notice()->text.find("longer than 10000 characters") != std::string::npos);
}

TEST_CASE("turning the phone in the middle of a drag marks nothing that was not meant, and loses nothing") {
    AppBench bench;
    take_first_photo(bench);
    bench.apply(GoTo{{Screen::photo, kRight, bench.job().all<Shot>()[0].id.text()}});
    bench.host->stage().happened();
    bench.hands->settle();
    REQUIRE(bench.tap("Box"));
    UiStage& stage = bench.host->stage();
    const auto found = bench.log().find("Photo");
    REQUIRE(found.size() == 1);
    const Rect rect = found[0]->seen;
    double now = bench.hands->now();
    const auto finger = [&](Point at, FingerPhase phase) {
        stage.finger({now, 1, at, phase});
        bench.host->frame(now);
        now += 1.0 / 60;
    };
    finger({rect.x + rect.w * 0.3F, rect.y + rect.h * 0.3F}, FingerPhase::down);
    for (int i = 1; i <= 10; ++i)
        finger({rect.x + rect.w * (0.3F + 0.03F * static_cast<float>(i)), rect.y + rect.h * 0.5F}, FingerPhase::move);
    REQUIRE(bench.host->resize(915, 412, now).has_value());
    finger({800, 100}, FingerPhase::move);
    finger({800, 100}, FingerPhase::up);
    for (int i = 0; i < 30; ++i) bench.host->frame(now += 1.0 / 60);
    CHECK(bench.job().all<Tag>().empty());
    CHECK(bench.job().all<Shot>().size() == 1);
    CHECK_FALSE(bench.session().drafts().finding.has_value());
    CHECK(bench.log().shows("Box"));
}

TEST_CASE("photos with hostile names are listed safely and taken in under their own") {
    SessionBench bench;
    bench.start_tandem();
    const std::string folder = join_path(bench.folder.path(), "camera");
    REQUIRE(bench.files->make_folders(folder).has_value());
    const std::vector<std::string> names{
        "-rf %s $(reboot).jpg",         "a\nb\x1b[2J.jpg", "\u202Egpj.exe.jpg", " .jpg", "con",
        std::string(240, 'x') + ".jpg", "\xff\xfe.jpg"};
    const auto photo = read_file(*bench.files, demo_photo("05_axle1-left_brake-exposed.jpg"), 1U << 24U);
    REQUIRE(photo.has_value());
    std::vector<std::string> paths;
    for (std::size_t i = 0; i < names.size(); ++i) {
        Bytes bytes = *photo;  // each another photo, by a byte after its end
        bytes.push_back(static_cast<std::uint8_t>(i));
        REQUIRE(replace_file(*bench.files, join_path(folder, names[i]), bytes).has_value());
        paths.push_back(join_path(folder, names[i]));
    }
    for (const FolderEntry& entry : list_folder(*bench.files, folder, 0).entries) {
        CHECK(is_utf8(entry.shown));
        CHECK(std::none_of(entry.shown.begin(), entry.shown.end(), [](char c) { return c >= 0 && c < 0x20; }));
        CHECK(entry.shown.find("\u202E") == std::string::npos);
    }
    bench.apply(TakePhotos{paths, kRight, Slot::other, Stage::before});
    bench.run_tasks();
    CHECK(bench.job().all<Shot>().size() + bench.session().not_taken().size() == names.size());
    CHECK(bench.job().all<Shot>().size() >= names.size() - 1);  // a name that is no UTF-8 may be refused in a line
    bench.apply(ExportPacket{});
    bench.run_tasks();
    CHECK(bench.session().packed().has_value());
}
