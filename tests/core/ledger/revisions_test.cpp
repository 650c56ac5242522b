// What a later revision changes is said: on its receipt and on the trailer's page.
#include "tests/core/ledger/ledger_bench.h"

#include <algorithm>

#include "core/ledger/revisions.h"
#include "core/survey/edit.h"

using namespace cotter;
using namespace cotter::test;
using namespace cotter::ledger;

namespace {

constexpr int kNumber = 3;

// A signed job whose first finding forbids towing.
PacketParts grave_parts(LedgerBench& bench) {
    Job job = office_job(kNumber, bench.shape);
    Finding studs;
    studs.id = {office_id(kNumber, 900)};
    studs.place = Place::corner(1, Side::left);
    studs.component = "wheel studs";
    studs.defect = "broken";
    studs.grade = Grade::do_not_tow;
    studs.at = job.only<Visit>()->opened;
    studs.by = "R. Alder";
    job.all<Finding>().push_back(studs);
    return office_parts(job, kNumber, bench.photos);
}

Finding studs_of(const Job& job) {
    return *job.find(Id<Finding>{office_id(kNumber, 900)});
}

// The same job after an amendment, as the program makes one.
PacketParts amended(const PacketParts& parts, const std::string& previous, const Change& change,
                    const std::string& reason) {
    PacketParts out = revised(parts, previous);
    Instant at = parts.document.job.only<SignOff>()->at;
    at.unix_s += 86'400;
    out.document.job =
        good(apply(parts.document.job, {parts.document.job.id(), at, "T. \u00D8stby", reason, {change}}));
    return out;
}

PacketParts eased(const PacketParts& parts, const std::string& previous) {
    Finding studs = studs_of(parts.document.job);
    studs.grade = Grade::serviceable;
    return amended(parts, previous, Put{studs, std::nullopt}, "that was another trailer");
}

TrailerPage page_of(LedgerBench& bench) {
    return good(bench.ledger->trailer(good(bench.ledger->find_trailer(office_id(kNumber, 0).text()))));
}

void check_eased(const TrailerPage& page) {
    REQUIRE(page.changes.size() == 1);
    const RevisionChange& change = page.changes[0];
    CHECK(change.eased());
    CHECK(change.grade_before == Grade::do_not_tow);
    CHECK(change.grade_now == Grade::serviceable);
    CHECK(change.before == "do not tow");
    CHECK(change.now == "serviceable");
    CHECK(change.what == "wheel studs, broken");
    CHECK(change.place == Place::corner(1, Side::left));
    CHECK(change.revision == 2);
    CHECK(change.by == "T. \u00D8stby");
    CHECK(change.reason == "that was another trailer");
}

}  // namespace

TEST_CASE("revisions: 'do not tow' turned into 'serviceable' is said on the receipt and on the trailer's page") {
    on_each_engine([](LedgerBench& bench) {
        const PacketParts first = grave_parts(bench);
        const SealedPacket r1 = seal(first);
        bench.receive({bench.put(r1)});
        CHECK(bench.told[0].why.find(kEasedWords) == std::string::npos);
        CHECK(page_of(bench).changes.empty());
        bench.receive({bench.put(seal(eased(first, r1.fingerprint)))});
        REQUIRE(bench.told[0].arrival == Arrival::revision);
        CHECK(bench.told[0].why ==
              "less severe than before: wheel studs, broken at axle1-left: 'do not tow' before, 'serviceable' now "
              "(T. \u00D8stby: that was another trailer)");
        CHECK(good(bench.ledger->receipts(1, 0))[0].why == bench.told[0].why);
        check_eased(page_of(bench));
    });
}

TEST_CASE("revisions: what they change is said in whichever order they come, and where only the later one came") {
    LedgerBench bench(false);
    const PacketParts first = grave_parts(bench);
    const SealedPacket r1 = seal(first), r2 = seal(eased(first, r1.fingerprint));
    bench.receive({bench.put(r2)});
    REQUIRE(bench.told[0].arrival == Arrival::taken);
    CHECK(bench.told[0].why.find(std::string(kEasedWords) + "wheel studs") != std::string::npos);
    check_eased(page_of(bench));  // as the amendment itself tells it
    bench.receive({bench.put(r1)});
    REQUIRE(bench.told[0].arrival == Arrival::older);
    CHECK(bench.told[0].why.find(std::string(kEasedWords) + "wheel studs") != std::string::npos);
    check_eased(page_of(bench));
}

TEST_CASE("revisions: a change that no amendment admits is said all the same, and so is a finding taken out") {
    LedgerBench bench(false);
    const PacketParts first = grave_parts(bench);
    const SealedPacket r1 = seal(first);
    PacketParts silent = revised(first, r1.fingerprint);
    auto& findings = silent.document.job.all<Finding>();
    std::erase_if(findings, [](const Finding& f) { return f.component == "wheel studs"; });
    silent.document.job.all<Reading>()[1].points[0].value = *Number::parse("12.0");
    bench.receive({bench.put(r1)});
    bench.receive({bench.put(seal(silent))});
    REQUIRE(bench.told[0].arrival == Arrival::revision);
    CAPTURE(bench.told[0].why);
    CHECK(bench.told[0].why.find("'do not tow' before, 'taken out' now (no reason is recorded)") == std::string::npos);
    CHECK(bench.told[0].why.find("'do not tow' before, taken out now; pad thickness") != std::string::npos);
    CHECK(bench.told[0].why.ends_with(" now (no reason is recorded)"));  // once for both
    const TrailerPage page = page_of(bench);
    REQUIRE(page.changes.size() == 2);
    CHECK(page.changes[0].eased());
    CHECK(page.changes[0].now.empty());
    CHECK_FALSE(page.changes[0].at);
    CHECK(page.changes[1].kind == RecordKind::reading);
    CHECK(page.changes[1].now.starts_with("12.0 mm"));
    CHECK(page.changes[1].before != page.changes[1].now);
}

TEST_CASE("revisions: work that goes on before the sign-off is no change, and a held packet changes nothing yet") {
    LedgerBench bench(false);
    PacketParts open = grave_parts(bench);
    open.document.job.all<SignOff>().clear();
    const auto readings = open.document.job.all<Reading>();
    open.document.job.all<Reading>().resize(3);
    const SealedPacket r1 = seal(open);
    bench.receive({bench.put(r1)});
    PacketParts later = revised(open, r1.fingerprint);
    later.document.job.all<Reading>() = readings;
    const SealedPacket r2 = seal(later);
    bench.receive({bench.put(r2)});
    CHECK(bench.told[0].arrival == Arrival::revision);
    CHECK(bench.told[0].why.empty());
    CHECK(page_of(bench).changes.empty());
    PacketParts forged = revised(later, r2.fingerprint);
    forged.document.job.all<Finding>().clear();
    forged.signer = "a stranger";
    bench.receive({bench.put(seal(forged))});
    CHECK(bench.told[0].arrival == Arrival::held);
    CAPTURE(bench.told[0].why);
    CHECK(bench.told[0].why.find(kEasedWords) != std::string::npos);  // for who decides
    CHECK(bench.told[0].why.find("wheel studs, broken at axle1-left: 'do not tow' before") != std::string::npos);
    CHECK(page_of(bench).changes.empty());
}

TEST_CASE("revisions: what an amendment changes of any other record is said field by field, with the reason once") {
    LedgerBench bench(false);
    const PacketParts first = grave_parts(bench);
    const SealedPacket r1 = seal(first);
    std::vector<Change> changes;
    for (Torque torque : first.document.job.all<Torque>()) {
        torque.wrench_calibrated = Date{2020, 11, 30};
        changes.emplace_back(Put{torque, std::nullopt});
    }
    PacketParts second = revised(first, r1.fingerprint);
    const Job& job = first.document.job;
    second.document.job =
        good(apply(job, {job.id(), job.only<SignOff>()->at, "R. Alder", "the other wrench", changes}));
    bench.receive({bench.put(r1)});
    bench.receive({bench.put(seal(second))});
    const std::string before = first.document.job.all<Torque>()[0].wrench_calibrated->text();
    CHECK(bench.told[0].why.find("changed: torque, wheel nuts at axle1-left: 'wrench calibrated: " + before +
                                 "' before, 'wrench calibrated: 2020-11-30' now; torque") == 0);
    CHECK(bench.told[0].why.find("(R. Alder: the other wrench); and 1 more") != std::string::npos);
    CHECK(bench.told[0].why.find("R. Alder") == bench.told[0].why.rfind("R. Alder"));
    const TrailerPage page = page_of(bench);
    REQUIRE(page.changes.size() == 4);
    CHECK(page.changes[3].what == "torque, wheel nuts");
    CHECK(page.changes[3].place == Place::corner(2, Side::right));
    CHECK_FALSE(page.changes[3].eased());
}

TEST_CASE("revisions: a note that was changed after the sign-off is said, the hour of a record is not") {
    Job before = office_job(kNumber, {10, 2});
    Job now = before;
    now.all<Reading>()[0].note = "read once more";
    now.all<Reading>()[1].at.unix_s += 60;
    const auto changes = changes_between(before, now, 2);
    REQUIRE(changes.size() == 1);
    CHECK(changes[0].before == "without that");
    CHECK(changes[0].now == "note: read once more");
    before.all<SignOff>().clear();
    CHECK(changes_between(before, now, 2).empty());
}
