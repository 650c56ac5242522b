// Edits: applied whole or not at all, exactly invertible, amendments after sign-off.
#include <doctest/doctest.h>

#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

TEST_CASE("edit: every edit of the sample job has an exact inverse") {
    Job job;
    std::vector<Job> before;
    std::vector<Edit> back;
    for (const Edit& edit : sample_edits()) {
        before.push_back(job);
        back.push_back(inverse(job, edit));
        job = apply(job, edit).value();
    }
    for (std::size_t i = before.size(); i-- > 1;) {
        job = apply(job, back[i]).value();
        CHECK(job == before[i]);
    }
}

TEST_CASE("edit: taking a record out of the middle and back keeps the order") {
    Job job = sample_job();
    for (int n = 20; n < 23; ++n) {
        Finding more = sample_finding();
        more.id = {numbered(n)};
        job = apply(job, edit_of({Put{more, {}}})).value();
    }
    const Edit remove = edit_of({Remove{RecordKind::finding, numbered(21)}});
    const Job without = apply(job, remove).value();
    CHECK(without.all<Finding>().size() == 3);
    CHECK(apply(without, inverse(job, remove)).value() == job);
}

TEST_CASE("edit: what breaks the job is refused and changes nothing") {
    const Job job = sample_job();
    SUBCASE("another job's edit") {
        Edit edit = edit_of({Put{sample_finding(), {}}});
        edit.job = {numbered(99)};
        CHECK_FALSE(apply(job, edit));
    }
    SUBCASE("a finding that a tag refers to cannot go") {
        const auto done = apply(job, edit_of({Remove{RecordKind::finding, numbered(4)}}));
        REQUIRE_FALSE(done);
        CHECK(done.error().what == "the tag's finding is not in the job");
    }
    SUBCASE("tag and finding together can go") {
        CHECK(apply(job, edit_of({Remove{RecordKind::finding, numbered(4)}, Remove{RecordKind::tag, numbered(5)}})));
    }
    SUBCASE("nothing, nobody, unknown") {
        CHECK_FALSE(apply(job, edit_of({})));
        Edit nobody = edit_of({Put{sample_finding(), {}}});
        nobody.by.clear();
        CHECK_FALSE(apply(job, nobody));
        CHECK_FALSE(apply(job, edit_of({Remove{RecordKind::reading, numbered(99)}})));
        CHECK_FALSE(apply(job, edit_of({Remove{RecordKind::visit, numbered(1)}})));
    }
    SUBCASE("a second trailer") {
        Trailer second = sample_trailer();
        second.id = {numbered(50)};
        CHECK_FALSE(apply(job, edit_of({Put{second, {}}})));
    }
}

TEST_CASE("edit: after sign-off a correction needs a reason and keeps the old value") {
    const Job job = apply(sample_job(), edit_of({Put{sample_sign_off(), {}}}, 60)).value();
    Reading corrected = sample_reading();
    corrected.points[0].value = *Number::parse("3.25");
    CHECK_FALSE(apply(job, edit_of({Put{corrected, {}}}, 70)));
    const auto amended = apply(job, edit_of({Put{corrected, {}}}, 70, "misread the scale"));
    REQUIRE(amended);
    REQUIRE(amended->amendments.size() == 1);
    CHECK(amended->amendments[0].reason == "misread the scale");
    CHECK(amended->amendments[0].old_value.find("\"3.20\"") != std::string::npos);
    CHECK(amended->amendments[0].new_value.find("\"3.25\"") != std::string::npos);
    CHECK(amended->find(corrected.id)->points[0].value.text() == "3.25");
    CHECK_FALSE(apply(job, edit_of({Remove{RecordKind::sign_off, numbered(9)}}, 70, "second thoughts")));
}
