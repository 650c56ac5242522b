// job.json and its published schema: the program writes what keeps to it, and its reader refuses all that does not.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "core/packet/job_document.h"
#include "tests/core/survey/sample_job.h"
#include "tests/support/effort.h"
#include "tests/support/job_schema.h"
#include "tests/support/office_packets.h"

using namespace cotter;
using namespace cotter::test;

namespace {

using Json = nlohmann::ordered_json;
using Pointer = Json::json_pointer;

// The sample job, then jobs of the office: together they have most kinds of record.
std::vector<JobDocument> documents() {
    std::vector<JobDocument> out(1);
    out[0].job = apply(sample_job(), edit_of({Put{sample_sign_off(), {}}}, 60)).value();
    out[0].photos = name_photos(out[0].job);
    out[0].photos[0].sha256 = std::string(64, 'b');
    const PhotoMaker photos(10);
    for (const int number : {0, 7, 104}) out.push_back(office_parts(office_job(number, {}), number, photos).document);
    return out;
}

// The place of every value, the document itself apart; of a list its first item, as the others are of the same kind.
void collect(const Json& json, const Pointer& at, std::vector<Pointer>& out) {
    if (!at.empty()) out.push_back(at);
    if (json.is_object())
        for (const auto& [name, value] : json.items()) collect(value, at / name, out);
    else if (json.is_array() && !json.empty())
        collect(json.front(), at / 0, out);
}

// What may stand there instead: other types, and texts that some readers take for the same.
std::vector<Json> others(const Json& value) {
    std::vector<Json> out{nullptr, true, 7, -1, 1.5, "", "word", Json::array(), Json::object(), Json::array({1})};
    if (!value.is_string()) return out;
    const auto text = value.get<std::string>();
    std::string upper = text;
    for (char& c : upper) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    for (const std::string& other : {upper, text + " ", " " + text, text + "0", text.substr(0, text.size() / 2)})
        out.push_back(other);
    if (text.size() == 25 && text[10] == 'T')
        for (const std::string& other :
             {text.substr(0, 19) + "Z", text.substr(0, 19) + ".5" + text.substr(19),
              text.substr(0, 10) + "t" + text.substr(11), text.substr(0, 19) + ".1234Z", text.substr(0, 19)})
            out.push_back(other);
    return out;
}

struct Held {
    int refused_by_both = 0;
    int taken_by_both = 0;

    void hold(const JobSchema& schema, const Json& json, const Pointer& at) {
        const std::string text = json.dump();
        const std::string complaint = schema.complaint(text);
        const auto read = job_document_from_json(text);
        if (complaint.empty()) {
            taken_by_both += read.has_value();
            return;
        }
        CHECK_MESSAGE(!read, "read, but at " << at.to_string() << " the schema says " << complaint);
        if (!read) CHECK_FALSE(read.error().what.empty());
        ++refused_by_both;
    }
};

}  // namespace

TEST_CASE("schema: what is written keeps to it, of every kind of document that these tests make") {
    const JobSchema schema;
    for (const JobDocument& document : documents()) {
        const std::string json = job_document_json(document);
        CHECK(schema.complaint(json) == "");
        CHECK(job_document_from_json(json));
    }
}

TEST_CASE("schema: what it refuses the reader refuses, whatever is changed in a document") {
    const JobSchema schema;
    Held held;
    const auto all = documents();
    for (std::size_t which = 0; which < (few() ? 1 : 2); ++which) {
        const Json good = Json::parse(job_document_json(all[which]));
        std::vector<Pointer> places;
        collect(good, Pointer(), places);
        for (const Pointer& at : places) {
            for (const Json& other : others(good.at(at))) {
                Json changed = good;
                changed[at] = other;
                held.hold(schema, changed, at);
            }
            if (Json without = good; without.at(at.parent_pointer()).is_object()) {
                without.at(at.parent_pointer()).erase(at.back());
                held.hold(schema, without, at);
            }
        }
    }
    CHECK(held.refused_by_both > 1'000);
    CHECK(held.taken_by_both > 100);
}

TEST_CASE("schema: versions it does not know are refused") {
    const JobSchema schema;
    Json json = Json::parse(job_document_json(documents()[0]));
    for (const char* version : {"1", "1.", "1.x", "1.0 ", "01.0", "1.0.0", "x", "", "0.9", "2.0", "10.0"}) {
        json["version"] = version;
        CHECK(schema.complaint(json.dump()) != "");
        CHECK_MESSAGE(!job_document_from_json(json.dump()), version);
    }
}
