// The periodic inspection: every item, and what must be there before it can be signed.
#include "core/judge/inspection.h"

#include "core/survey/edit.h"
#include "core/survey/validate.h"
#include "tests/core/judge/judge_bench.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

std::vector<InspectionItem> form() {
    auto parsed = parse_inspection(asset("inspection.json"));
    REQUIRE_MESSAGE(parsed, (parsed ? "" : parsed.error().line()));
    return *parsed;
}

Inspection head() {
    return {{numbered(5000)},
            "A. Tester",
            "the nursery, 1 Gravel Lane, no. 7",
            Date{2026, 5, 14},
            "two years with trailers, letter of 2024",
            "brake course 2023, certificate",
            "Complete and true to the best of my knowledge.",
            moment(5),
            "A. Tester"};
}

}  // namespace

TEST_CASE("inspection: the form has every item once, and trailers answer theirs") {
    const auto items = form();
    CHECK(items.size() == 78);
    JudgeBench bench;
    const auto mine = items_to_answer(items, bench.trailer());
    for (const InspectionItem* item : mine) CHECK(item->scope != ItemScope::power_unit);
    bench.trailer().axles[0].brake = BrakeKind::air_untyped;
    CHECK(items_to_answer(items, bench.trailer()).size() > mine.size());
    CHECK_FALSE(parse_inspection("{\"items\":[{\"id\":\"\"}]}"));
}

TEST_CASE("inspection: complete only with every item answered and the qualification stated") {
    const auto items = form();
    JudgeBench bench;
    CHECK_FALSE(inspection_gaps(bench.job, items).complete());
    bench.job.all<Inspection>().push_back(head());
    bench.trailer().maker = "(invented)";
    bench.trailer().model_year = 2021;
    int n = 6000;
    for (const InspectionItem* item : items_to_answer(items, bench.trailer()))
        bench.job.all<InspectionAnswer>().push_back(
            {{numbered(n++)}, item->id, Answer::ok, "", moment(6), "A. Tester"});
    CHECK(inspection_gaps(bench.job, items).passes());
    auto& answers = bench.job.all<InspectionAnswer>();
    answers[0].answer = Answer::not_ok;
    CHECK(inspection_gaps(bench.job, items).complete());
    CHECK_FALSE(inspection_gaps(bench.job, items).passes());
    answers[0].answer = Answer::ok;
    answers.pop_back();
    CHECK(inspection_gaps(bench.job, items).missing.size() == 1);
    bench.job.all<Inspection>()[0].qualified_by.clear();
    CHECK(inspection_gaps(bench.job, items).missing.size() == 2);
}

TEST_CASE("inspection: the job cannot be signed without the inspector's qualification") {
    const auto signed_with = [](const Inspection& inspection) {
        const Job job = apply(sample_job(), edit_of({Put{inspection, {}}}, 7)).value();
        return apply(job, edit_of({Put{sample_sign_off(), {}}}, 60));
    };
    CHECK(signed_with(head()));
    for (std::string Inspection::*field : {&Inspection::qualified_by, &Inspection::brake_qualified_by,
                                           &Inspection::statement, &Inspection::inspector, &Inspection::carrier}) {
        Inspection lacking = head();
        (lacking.*field).clear();
        CHECK_FALSE(signed_with(lacking));
    }
    CHECK(apply(sample_job(), edit_of({Put{sample_sign_off(), {}}}, 60)));  // no inspection: a job sheet
}

TEST_CASE("inspection: an answer belongs to an inspection, says why, and is given once") {
    Job job = sample_job();
    const InspectionAnswer ok{{numbered(5001)}, "1a(1)", Answer::ok, "", moment(6), "A. Tester"};
    CHECK_FALSE(apply(job, edit_of({Put{ok, {}}})));
    job = apply(job, edit_of({Put{head(), {}}, Put{ok, {}}})).value();
    InspectionAnswer other = ok;
    other.id = {numbered(5002)};
    CHECK_FALSE(apply(job, edit_of({Put{other, {}}})));
    other.item = "1a(2)";
    other.answer = Answer::not_ok;
    CHECK_FALSE(apply(job, edit_of({Put{other, {}}})));
    other.remark = "pad missing, axle 1 left";
    CHECK(apply(job, edit_of({Put{other, {}}})));
}

TEST_CASE("inspection: twelve months on") {
    CHECK(months_later(Date{2026, 5, 14}, 12).text() == "2027-05-14");
    CHECK(months_later(Date{2024, 2, 29}, 12).text() == "2025-02-28");
    CHECK(months_later(Date{2026, 12, 31}, 14).text() == "2028-02-29");
}
