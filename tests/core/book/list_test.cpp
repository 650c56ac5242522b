// What a book lists and finds, and the packets it remembers.
#include "tests/core/book/book_bench.h"

using namespace cotter;
using namespace cotter::test;

namespace {

JobId id_of(const char* text) {
    return {Uuid::parse(text).value()};
}

Edit opening(const JobId& job, const char* unit, int day) {
    EditMaker maker(static_cast<std::uint64_t>(day), job);
    Edit edit = maker.opening();
    Visit visit = std::get<Visit>(std::get<Put>(edit.changes[0]).record);
    Trailer trailer = std::get<Trailer>(std::get<Put>(edit.changes[1]).record);
    visit.opened = {1'780'000'000 + day * 86'400, 0};
    visit.customer = "the nursery";
    visit.place = "gravel yard";
    trailer.unit = unit;
    edit.changes = {Put{visit, {}}, Put{trailer, {}}};
    return edit;
}

const JobId kFirst = id_of("3f9c1a2b-0000-4000-8000-000000000001");
const JobId kSecond = id_of("3f9c7777-0000-4000-8000-000000000002");
const JobId kThird = id_of("aaaa0000-0000-4000-8000-000000000003");

PacketMade packet(const JobId& job, int revision) {
    return {job, revision, std::string(64, 'a'), std::string(64, 'b'), "2026-05-14_NUR-07_r1", {1'780'000'000, -300}};
}

struct Shelf : BookBench {
    Shelf() {
        (void)good(book->commit(opening(kSecond, "NUR-07", 2)));
        (void)good(book->commit(opening(kFirst, "NUR-07", 1)));
        (void)good(book->commit(opening(kThird, "3F9C1", 3)));
    }
};

}  // namespace

TEST_CASE("book list: jobs newest first, each with its figures") {
    Shelf shelf;
    EditMaker maker(9, kFirst);
    Job job = good(shelf.book->load(kFirst));
    for (int i = 0; i < 60; ++i) job = good(shelf.book->commit(maker.next(job)));
    (void)good(shelf.book->commit(maker.sign_off()));
    job = good(shelf.book->load(kFirst));
    const auto jobs = good(shelf.book->jobs());
    REQUIRE(jobs.size() == 3);
    CHECK(jobs[0].id == kThird);
    CHECK(jobs[1].id == kSecond);
    CHECK_FALSE(jobs[1].worst);
    CHECK_FALSE(jobs[1].signed_off);
    const JobSummary& first = jobs[2];
    CHECK(first.id == kFirst);
    CHECK(first.opened == job.only<Visit>()->opened);
    CHECK(first.unit == "NUR-07");
    CHECK(first.customer == "the nursery");
    CHECK(first.place == "gravel yard");
    CHECK(first.technician == "A. Tester");
    CHECK(first.shots == job.all<Shot>().size());
    CHECK(first.findings == job.all<Finding>().size());
    CHECK(first.signed_off);
    Grade worst = Grade::serviceable;
    for (const Finding& f : job.all<Finding>()) worst = std::max(worst, f.grade);
    CHECK(first.worst == worst);
    CHECK(first.shots > 0);
}

TEST_CASE("book list: a job is found by id, by the beginning of its id, or by its unit") {
    Shelf shelf;
    Book& book = *shelf.book;
    CHECK(good(book.find_job(kFirst.text())) == kFirst);
    CHECK(good(book.find_job("3F9C1A")) == kFirst);
    CHECK(good(book.find_job("3f9c7777-00")) == kSecond);
    CHECK(good(book.find_job("nur-07")) == kSecond);  // the newest of that unit
    CHECK(book.find_job("3f9c").error().line() == "2 jobs have ids that begin so: '3f9c'; give more digits");
    CHECK(book.find_job("3f9").error().code == Errc::not_found);  // too short to be meant
    CHECK(book.find_job("").error().code == Errc::not_found);
    CHECK(book.find_job("NUR").error().code == Errc::not_found);
    const auto both = book.find_job("3f9c1");
    CHECK(both.error().code == Errc::refused);
    CHECK(both.error().line() ==
          "this is a unit and also the beginning of another job's id: '3f9c1'; give the whole id: " + kThird.text() +
              " or " + kFirst.text());
    CHECK(book.find_job("4444").error().line() ==
          "the book has no job with such an id or unit: '4444'; give a unit, or the first 4 or more digits of a job's "
          "id");
}

TEST_CASE("book list: packets are remembered by revision") {
    Shelf shelf;
    CHECK_FALSE(good(shelf.book->last_packet(kFirst)));
    good(shelf.book->record_packet(packet(kFirst, 1)));
    good(shelf.book->record_packet(packet(kFirst, 2)));
    shelf.open();
    CHECK(good(shelf.book->last_packet(kFirst)) == packet(kFirst, 2));
    CHECK(good(shelf.book->packets(kFirst)) == std::vector{packet(kFirst, 1), packet(kFirst, 2)});
    CHECK(good(shelf.book->packets(kSecond)).empty());
    CHECK(shelf.book->record_packet(packet(kFirst, 2)).error().code == Errc::refused);
    CHECK(shelf.book->record_packet(packet(kFirst, 0)).error().code == Errc::refused);
    CHECK(shelf.book->record_packet(packet(JobId{}, 1)).error().code == Errc::not_found);
    PacketMade odd = packet(kFirst, 3);
    odd.content_sha256 = "short";
    CHECK(shelf.book->record_packet(odd).error().code == Errc::refused);
    CHECK(good(shelf.book->last_packet(kFirst)) == packet(kFirst, 2));
}

TEST_CASE(
    "book list: earlier jobs of a trailer are found by its unit in any case, and by its VIN when the unit changed") {
    Shelf shelf;
    const auto open = [&](const char* id, const char* unit, const char* vin, int day) {
        Edit edit = opening(id_of(id), unit, day);
        std::get<Trailer>(std::get<Put>(edit.changes[1]).record).vin = vin;
        const auto done = shelf.book->commit(edit);
        REQUIRE_MESSAGE(done, (done ? std::string() : done.error().line()));
        return *done;
    };
    const char* vin = "1X9DEM0F8MA000123";
    (void)open("bbbb0000-0000-4000-8000-000000000004", "old number", vin, 4);
    (void)open("bbbb0000-0000-4000-8000-000000000005", "", vin, 5);
    const Job now = open("bbbb0000-0000-4000-8000-000000000006", "nur-07", vin, 6);
    (void)open("bbbb0000-0000-4000-8000-000000000007", "nur-07", vin, 7);  // later: not before it
    std::vector<std::string> found;
    for (const JobId& id : good(shelf.book->jobs_before(now))) found.push_back(id.text());
    CHECK(found == std::vector<std::string>{"bbbb0000-0000-4000-8000-000000000005",
                                            "bbbb0000-0000-4000-8000-000000000004", kSecond.text(), kFirst.text()});
    // Nothing to go by joins nothing.
    CHECK(good(shelf.book->jobs_before(open("cccc0000-0000-4000-8000-000000000008", "", "", 8))).empty());
}
