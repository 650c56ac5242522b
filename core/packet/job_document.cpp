// job.json written and read.
#include "core/packet/job_document.h"

#include <map>

#include "core/survey/json.h"
#include "core/survey/json_schema.h"
#include "core/survey/json_value.h"

namespace cotter {

namespace {

constexpr const char* kSchemaFile = "job-1.schema.json";

// The fields of job.json before its records.
struct Head {
    std::string format{kJobFormat};
    std::string version = fmt::format("{}.{}", kJobMajor, kJobMinor);
    JobId job;
    int revision = 1;
    std::string previous;
    std::vector<PacketPhoto> photos;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("format", s.format);
        f.must("version", s.version);
        f.must("job", s.job);
        f.must("revision", s.revision);
        f.may("previous_tagmanifest_sha256", s.previous);
        f.must("photos", s.photos);
    }
};

Result<> check_version(const Json& json) {
    const auto format = json.is_object() ? json.find("format") : json.end();
    if (!json.is_object() || format == json.end() || *format != std::string(kJobFormat))
        return fail(Errc::not_ours, "this is not a Cotter job document");
    const auto version = json.find("version");
    const std::string text = version != json.end() && version->is_string() ? version->get<std::string>() : "";
    const int major = text.empty() ? 0 : std::atoi(text.c_str());
    if (major > kJobMajor)
        return fail(Errc::too_new,
                    fmt::format("the job document is of version {}, this program reads up to {}.x", one_line(text, 20),
                                kJobMajor),
                    {}, "use a newer Cotter");
    if (major < 1) return fail(Errc::damaged, "the job document has no version");
    return {};
}

// "1.0": the minor number, or nothing where there is none.
std::optional<long> minor_of(const std::string& version) {
    const std::string major = fmt::format("{}.", kJobMajor);
    const bool shaped = version.starts_with(major) && version.size() > major.size() &&
                        version.find_first_not_of("0123456789", major.size()) == std::string::npos;
    if (!shaped) return std::nullopt;
    return std::strtol(version.c_str() + major.size(), nullptr, 10);
}

Json job_schema() {
    Head sample;
    SchemaWriter writer;
    Head::each_field(sample, writer);
    Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                   {"$id", kSchemaFile},
                   {"title", "A job in a Cotter packet"}};
    schema.update(writer.object());
    schema["properties"]["format"] = {{"const", std::string(kJobFormat)}};
    schema["properties"]["version"] = text_schema(fmt::format("^{}[.][0-9]+$", kJobMajor));
    schema["properties"]["revision"]["minimum"] = 1;
    schema["properties"]["records"] = job_records_schema();
    schema["required"].push_back("records");
    return schema;
}

// Takes out of `value` what the schema does not know. False: the value itself is of a kind not known here, as a word
// that its list does not have, or an object that lacks what it needs without such a word.
bool keep_known(Json& value, const Json& schema) {
    if (const auto words = schema.find("enum"); words != schema.end())
        return std::find(words->begin(), words->end(), value) != words->end();
    if (const auto fields = schema.find("properties"); fields != schema.end() && value.is_object()) {
        Json kept = Json::object();
        for (auto& [name, field] : value.items()) {
            const auto known = fields->find(name);
            if (known != fields->end() && keep_known(field, *known)) kept[name] = std::move(field);
        }
        value = std::move(kept);
        const auto& needed = schema["required"];
        return std::all_of(needed.begin(), needed.end(), [&](const Json& name) { return value.contains(name); });
    }
    if (const auto items = schema.find("items"); items != schema.end() && value.is_array()) {
        Json kept = Json::array();
        for (Json& item : value)
            if (keep_known(item, *items)) kept.push_back(std::move(item));
        value = std::move(kept);
    }
    return true;
}

std::string dashed(std::string_view words) {
    std::string out(words);
    std::replace(out.begin(), out.end(), ' ', '-');
    return out;
}

}  // namespace

std::string job_document_json(const JobDocument& document) {
    Head head;
    head.job = document.job.id();
    head.revision = document.revision;
    head.previous = document.previous_tagmanifest_sha256;
    head.photos = document.photos;
    Json out = to_json_value(head);
    out["records"] = job_value(document.job);
    return indented_json(out, 2) + "\n";
}

Result<JobDocument> job_document_from_json(std::string_view text) {
    COTTER_ASSIGN(Json json, parse_json(text));
    COTTER_TRY(check_version(json));
    const auto minor = minor_of(json["version"].get<std::string>());
    if (!minor) return fail(Errc::damaged, "the job document's version is not two numbers", "version");
    JobDocument document;
    document.newer = *minor > kJobMinor;
    if (document.newer) (void)keep_known(json, job_schema());
    const auto records = json.find("records");
    if (records == json.end()) return fail(Errc::damaged, "the job document has no records");
    COTTER_ASSIGN(document.job, job_from_json_value(*records));
    json.erase("records");
    COTTER_ASSIGN(Head head, fields_from_json<Head>(json, Spelling::published));
    if (head.revision < 1) return fail(Errc::refused, "the revision is counted from 1", "revision");
    document.revision = head.revision;
    document.previous_tagmanifest_sha256 = std::move(head.previous);
    document.photos = std::move(head.photos);
    if (head.job != document.job.id())
        return fail(Errc::damaged, "the job document names another job than its records");
    return document;
}

std::string job_schema_text() {
    return indented_json(job_schema(), 1) + "\n";
}

std::vector<PacketPhoto> name_photos(const Job& job) {
    std::map<std::string, int> counts;
    std::vector<PacketPhoto> out;
    for (const Shot& shot : job.all<Shot>()) {
        const std::string stem =
            fmt::format("{}_{}_{}", shot.place.text(), dashed(name_of(shot.slot)), name_of(shot.stage));
        const char* extension = shot.photo.media_type == "image/png" ? "png" : "jpg";
        const std::string name = fmt::format("{}_{:02}", stem, ++counts[stem]);
        const auto& tags = job.all<Tag>();
        const bool tagged = std::any_of(tags.begin(), tags.end(), [&](const Tag& t) { return t.shot == shot.id; });
        out.push_back({shot.id,
                       fmt::format("photos/{}.{}", name, extension),
                       tagged ? fmt::format("tagged/{}.jpg", name) : std::string(),
                       {},
                       true});
    }
    return out;
}

}  // namespace cotter
