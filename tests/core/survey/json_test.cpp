// JSON forms: nothing lost either way, and bad input named in one line.
#include <doctest/doctest.h>

#include "core/survey/json.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

TEST_CASE("json: every edit and the whole job survive a round trip") {
    for (const Edit& edit : sample_edits()) {
        const std::string line = edit_json(edit);
        CHECK(line.find('\n') == std::string::npos);
        const auto back = edit_from_json(line);
        REQUIRE_MESSAGE(back, (back ? "" : back.error().line()));
        CHECK(*back == edit);
    }
    const Job job = apply(sample_job(), edit_of({Put{sample_sign_off(), {}}}, 60)).value();
    const auto back = job_from_json(job_json(job));
    REQUIRE(back);
    CHECK(*back == job);
}

TEST_CASE("json: numbers stay as entered") {
    CHECK(record_json(sample_reading()).find("\"3.20\"") != std::string::npos);
}

TEST_CASE("json: an undo's position is kept") {
    const Edit edit = edit_of({Put{sample_finding(), std::size_t{2}}, Remove{RecordKind::tag, numbered(5)}});
    CHECK(*edit_from_json(edit_json(edit)) == edit);
}

TEST_CASE("json: what is wrong is named with its field") {
    const auto line_of = [](std::string json) {
        const auto record = record_from_json(RecordKind::tag, json);
        return record ? std::string("accepted") : record.error().line();
    };
    CHECK(line_of("{") == "this is not JSON, or it is cut off");
    CHECK(line_of("{\"id\":7}") == "a text is wanted here: id");
    CHECK(line_of("{\"id\":\"x\"}") == "not an id (UUID): id: 'x'");
    const std::string good = record_json(sample_tag());
    CHECK(line_of(good) == "accepted");
    CHECK(line_of(good.substr(0, good.size() - 1) + ",\"colour\":1}") == "there is no such field: colour");
    std::string wrong_word = good;
    wrong_word.replace(wrong_word.find("box"), 3, "orb");
    CHECK(line_of(wrong_word).starts_with("'orb' is not one of the words for this: shape"));
    CHECK_FALSE(record_from_json(RecordKind::tag, "{\"id\":\"\xff\"}"));
    CHECK_FALSE(record_from_json(RecordKind::tag, std::string(100'000, '[')));
}

TEST_CASE("json: half an edit line is refused") {
    const std::string line = edit_json(sample_edits()[2]);
    for (std::size_t cut = 0; cut < line.size(); cut += 7) CHECK_FALSE(edit_from_json(line.substr(0, cut)));
}
