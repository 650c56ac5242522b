// Validation of job.json by valijson; the only file that includes it.
#include "core/packet/job_value.h"

#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

namespace cotter {

struct JobSchema::Ready {
    Json text = job_schema();
    valijson::Schema schema;

    Ready() {
        const auto parsed = nlohmann::json::parse(text.dump());
        valijson::SchemaParser parser;
        parser.populateSchema(valijson::adapters::NlohmannJsonAdapter(parsed), schema);
    }

    [[nodiscard]] Result<> check(const Json& json) const {
        const nlohmann::json document = json;  // the validator knows only this kind
        const valijson::adapters::NlohmannJsonAdapter target(document);
        valijson::Validator validator;
        if (validator.validate(schema, target, nullptr)) return {};
        valijson::ValidationResults results;
        (void)validator.validate(schema, target, &results);  // once more, now for the reasons
        valijson::ValidationResults::Error error;
        results.popError(error);  // the innermost comes first
        std::string where;
        for (const std::string& part : error.context) where += part;
        return fail(Errc::refused, "it does not keep to the schema of a job: " + one_line(error.description),
                    one_line(where));
    }
};

JobSchema::JobSchema() : ready_(std::make_unique<Ready>()) {}
JobSchema::~JobSchema() = default;

Result<> JobSchema::check(std::string_view text) const {
    COTTER_ASSIGN(Json json, parse_json(text));
    const auto newer = is_newer(json);  // what this refuses, the schema refuses with its place
    if (newer && *newer) forget_unknown(json, ready_->text);
    return ready_->check(json);
}

Result<JobDocument> JobSchema::read(std::string_view text) const {
    COTTER_ASSIGN(Json json, parse_json(text));
    COTTER_ASSIGN(const bool newer, is_newer(json));
    if (newer) forget_unknown(json, ready_->text);
    COTTER_TRY(ready_->check(json));
    return job_document_from_json_value(std::move(json), newer);
}

Result<> check_job_schema(std::string_view text) {
    return JobSchema().check(text);
}

}  // namespace cotter
