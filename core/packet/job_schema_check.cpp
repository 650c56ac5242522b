// Validation of job.json by valijson; the only file that includes it.
#include "core/packet/job_document.h"

#include "core/survey/json_visitors.h"

#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

namespace cotter {

Result<> check_job_schema(std::string_view text) {
    COTTER_TRY(parse_json(text));  // UTF-8 and depth, before the second parser sees it
    const auto document = nlohmann::json::parse(text, nullptr, false);
    const auto schema_json = nlohmann::json::parse(job_schema_text());
    valijson::Schema schema;
    valijson::SchemaParser parser;
    parser.populateSchema(valijson::adapters::NlohmannJsonAdapter(schema_json), schema);
    valijson::Validator validator;
    valijson::ValidationResults results;
    const valijson::adapters::NlohmannJsonAdapter target(document);
    if (validator.validate(schema, target, &results)) return {};
    valijson::ValidationResults::Error error;
    results.popError(error);  // the innermost comes first
    std::string where;
    for (const std::string& part : error.context) where += part;
    return fail(Errc::refused, "it does not keep to the schema of a job: " + one_line(error.description),
                one_line(where));
}

}  // namespace cotter
