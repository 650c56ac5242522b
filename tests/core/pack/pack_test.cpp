// Packets of a job: the same bytes for the same job, revisions that form a chain, and what is in them.
#include <doctest/doctest.h>

#include <algorithm>

#include "core/base/hash.h"
#include "core/packet/check.h"
#include "core/survey/when_made.h"
#include "tests/core/pack/yard.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

CheckReport check_packet(MemoryFiles& files, const std::string& path) {
    SerialWorkers workers;
    return check(files, workers, path, {});
}

Job signed_off(const Job& job) {
    return apply(job, edit_of({Put{sample_sign_off(), {}}}, 60)).value();
}

}  // namespace

TEST_CASE("pack: a packet is valid and names job, revision and signer") {
    MemoryFiles files;
    files.put("/book/there", {});
    const Job job = signed_off(yard_job(files));
    const auto packed = pack_in_yard(files, job);
    REQUIRE_MESSAGE(packed, (packed ? "" : packed.error().line()));
    CHECK(packed->path == "/out/2026-05-14_NUR-07_00000000_r1.zip");
    const CheckReport report = check_packet(files, packed->path);
    CHECK(report.verdict == Verdict::valid);
    CHECK(report.reasons.empty());
    CHECK(report.revision == 1);
    CHECK(report.signer_fingerprint == yard_key().fingerprint());
    CHECK(report.tagmanifest_sha256 == packed->facts.tagmanifest_sha256);
    CHECK(report.files == 9);  // job.json, four tables, report.pdf, two photos, one with tags
}

TEST_CASE("pack: the same job gives the same bytes on another machine") {
    MemoryFiles here;
    MemoryFiles there;
    here.put("/book/there", {});
    there.put("/book/there", {});
    const auto a = pack_in_yard(here, signed_off(yard_job(here)));
    const auto b = pack_in_yard(there, signed_off(yard_job(there)));
    REQUIRE(a);
    REQUIRE(b);
    CHECK(here.get(a->path) == there.get(b->path));
}

TEST_CASE("pack: revisions form a chain, and no change means no new one") {
    MemoryFiles files;
    files.put("/book/there", {});
    const Job job = signed_off(yard_job(files));
    const auto first = pack_in_yard(files, job);
    REQUIRE(first);
    const Bytes first_bytes = files.get(first->path);
    std::vector<PacketFacts> made{first->facts};

    const auto again = pack_in_yard(files, job, made);
    REQUIRE(again);
    CHECK(again->unchanged);
    CHECK(again->path == first->path);
    CHECK(files.get(again->path) == first_bytes);

    Reading corrected = sample_reading();
    corrected.note = "read again";
    const Job amended = apply(job, edit_of({Put{corrected, {}}}, 90, "misread")).value();
    const auto second = pack_in_yard(files, amended, made);
    REQUIRE(second);
    CHECK(second->facts.revision == 2);
    CHECK(files.get(first->path) == first_bytes);
    CHECK(check_packet(files, second->path).previous_tagmanifest_sha256 == first->facts.tagmanifest_sha256);

    made.push_back(second->facts);
    const auto second_again = pack_in_yard(files, amended, made);
    REQUIRE(second_again);
    CHECK(second_again->unchanged);
    CHECK(files.get(second_again->path) == files.get(second->path));
}

TEST_CASE("pack: the hand-over gives the date, a job without one the newest record") {
    MemoryFiles files;
    files.put("/book/there", {});
    const Job job = yard_job(files);
    CHECK(packet_time(job) == moment(6));
    CHECK(packet_time(signed_off(job)) == moment(60));
}

TEST_CASE("pack: a record of any kind, made last, gives the date") {
    const Instant late = moment(50);
    const Job job = apply({}, edit_of({Put{sample_visit(), {}}}, 1)).value();
    std::size_t dated = 0;
    job.each_list([&](const auto& list) {
        using R = typename std::remove_cvref_t<decltype(list)>::value_type;
        R record{};
        if constexpr (kTimeless<R>)
            return;
        else if constexpr (requires { record.opened; })
            record.opened = late;
        else if constexpr (requires { record.added; })
            record.added = late;
        else
            record.at = late;
        Job with = job;
        with.all<R>() = {record};
        CHECK(packet_time(with) == late);
        ++dated;
    });
    CHECK(dated == names(RecordKind{}).size() - 2);  // all but trailer and tag
}

TEST_CASE("pack: a photo damaged in the vault stops the packet") {
    MemoryFiles files;
    files.put("/book/there", {});
    const Job job = yard_job(files);
    const auto all = files.all_files();
    const auto photo =
        std::find_if(all.begin(), all.end(), [](auto& path) { return path.find("photos/") != path.npos; });
    REQUIRE(photo != all.end());
    files.flip_bit("/" + *photo, 200);
    const auto packed = pack_in_yard(files, job);
    REQUIRE_FALSE(packed);
    CHECK(packed.error().code == Errc::damaged);
    CHECK(packed.error().where.starts_with("photo photos/axle1-left_cap_"));
    for (const std::string& path : files.all_files()) CHECK_FALSE(path.starts_with("out/"));
}

TEST_CASE("pack: earlier visits change the packet, later ones do not, and their order does not matter") {
    MemoryFiles files;
    files.put("/book/there", {});
    const Job job = signed_off(yard_job(files));
    const auto visit_at = [](int id, int days) {
        Job visit = sample_job();
        visit.all<Visit>()[0].id = {numbered(id)};
        visit.all<Visit>()[0].opened.unix_s += days * 86'400;
        return visit;
    };
    const Job last_year = visit_at(801, -400), this_spring = visit_at(802, -60), later = visit_at(803, 30);
    const auto content = [&](const std::vector<Job>& visits) {
        return pack_in_yard(files, job, {}, visits).value().facts.content_sha256;
    };
    const std::string alone = content({});
    CHECK(content({later}) == alone);
    CHECK(content({last_year}) != alone);
    CHECK(content({last_year, this_spring, later}) == content({this_spring, last_year}));
}

TEST_CASE("pack: a photo that is none stops the packet with its name, and nothing is left") {
    MemoryFiles files;
    files.put("/book/there", {});
    Job job = signed_off(yard_job(files));
    const Bytes text = to_bytes("this is no picture");
    const std::string sha256 = sha256_hex(text);
    files.put("/book/photos/" + sha256.substr(0, 2) + "/" + sha256 + ".jpg", text);
    job.all<Shot>()[0].photo.sha256 = sha256;
    const auto packed = pack_in_yard(files, job);
    REQUIRE_FALSE(packed);
    CHECK(packed.error().where.starts_with("photo photos/axle1-left_cap_"));
    CHECK(packed.error().line().find('\n') == std::string::npos);
    for (const std::string& path : files.all_files()) CHECK_FALSE(path.starts_with("out/"));
}
