// job.json: read back whole, kept to the published schema, which follows the code.
#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "core/packet/job_document.h"
#include "core/report/csv.h"
#include "core/work/torque_check.h"
#include "core/work/wrench.h"
#include "tests/core/survey/sample_job.h"
#include "tests/support/project_files.h"

using namespace cotter;
using namespace cotter::test;

namespace {
JobDocument sample_document() {
    JobDocument document;
    document.job = apply(sample_job(), edit_of({Put{sample_sign_off(), {}}}, 60)).value();
    document.photos = name_photos(document.job);
    document.photos[0].sha256 = std::string(64, 'b');
    return document;
}
}  // namespace

TEST_CASE("job document: read back whole") {
    const JobDocument document = sample_document();
    const std::string json = job_document_json(document);
    const auto back = job_document_from_json(json);
    REQUIRE_MESSAGE(back, (back ? "" : back.error().line()));
    CHECK(back->job == document.job);
    CHECK(back->photos == document.photos);
    CHECK(job_document_json(*back) == json);
}

TEST_CASE("job document: kept to its schema, and the line says where it is not") {
    const std::string good = job_document_json(sample_document());
    const auto refusal = [&](const std::string& what, const std::string& by) {
        std::string json = good;
        json.replace(json.find(what), what.size(), by);
        const auto read = job_document_from_json(json);
        return read ? std::string("accepted") : read.error().line();
    };
    CHECK(refusal("\"box\"", "\"orb\"").starts_with("'orb' is not one of the words for this: records.tag[0].shape"));
    CHECK(refusal("08:02:00-05:00", "08:02:00.5-05:00") ==
          "'2026-05-14T08:02:00.5-05:00' is not spelled as the schema has it: records.shot[0].added; write it as "
          "2026-05-14T08:02:00-05:00");
    CHECK(refusal("\"reading\": [", "\"read\": [") == "the list is missing: records.reading");
    CHECK(refusal("\"revision\": 1", "\"revision\": 0") == "the revision is counted from 1: revision");
}

TEST_CASE("job document: newer and foreign ones are told apart") {
    std::string json = job_document_json(sample_document());
    CHECK(job_document_from_json("{}").error().code == Errc::not_ours);
    json.replace(json.find("\"1.1\""), 5, "\"2.0\"");
    CHECK(job_document_from_json(json).error().code == Errc::too_new);
}

TEST_CASE("job document: version 1.0 with an adapter behind the wrench's id still reads and means what it meant") {
    std::stringstream kept;
    kept << std::ifstream(COTTER_SOURCE_DIR "/tests/fixtures/packet/job-1.0-adapter.json").rdbuf();
    const auto document = job_document_from_json(kept.str());
    REQUIRE_MESSAGE(document, (document ? "" : document.error().line()));
    const Torque& torque = document->job.all<Torque>().at(0);
    CHECK(at_nut(torque.passes.back()).text() == "120 lb-ft");
    CHECK(proves_torque(check_torque(torque)));
    // Written again as it was: what was handed over is not changed by being read.
    CHECK(torque.wrench == "TW-3, adapter 2 in beyond 16 in at 0°");
    const std::string again = job_document_json(*document), before = kept.str();
    const auto from = before.find("\"torque\": [");
    CHECK(again.find(before.substr(from, before.find("\"level\":") - from)) != std::string::npos);
    // Its table has each in its own column.
    const std::string csv = torques_csv(document->job);
    CHECK(csv.find(",4,8,8,106.7,[lbf_av].[ft_i],120,") != std::string::npos);
    CHECK(csv.find(",TW-3,2026-01-09,") != std::string::npos);
    CHECK(csv.ends_with(",120,[lbf_av].[ft_i],2,[in_i],16,[in_i],0,deg,,\r\n"));
}

TEST_CASE("job document: the published schema is the one in force") {
    const std::string path = project_file("assets/schema/job-1.schema.json");
    if (std::getenv("COTTER_UPDATE_GOLDEN") != nullptr) std::ofstream(path) << job_schema_text();
    std::stringstream published;
    published << std::ifstream(path).rdbuf();
    CHECK(published.str() == job_schema_text());
}

TEST_CASE("job document: photo names count within their slot") {
    Job job = sample_job();
    Shot second = sample_shot();
    second.id = {numbered(30)};
    second.photo.media_type = "image/png";
    job = apply(job, edit_of({Put{second, {}}})).value();
    const auto names = name_photos(job);
    CHECK(names[0].file == "photos/axle1-left_cap_before_01.jpg");
    CHECK(names[0].tagged_file == "tagged/axle1-left_cap_before_01.jpg");
    CHECK(names[1].file == "photos/axle1-left_cap_before_02.png");
    CHECK(names[1].tagged_file.empty());
}
