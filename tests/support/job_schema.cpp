// The only file that includes valijson.
#include "tests/support/job_schema.h"

#include <fstream>

#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

namespace cotter::test {

struct JobSchema::Ready {
    valijson::Schema schema;
    Ready() {
        std::ifstream file(COTTER_SOURCE_DIR "/assets/schema/job-1.schema.json");
        const auto text = nlohmann::json::parse(file);
        valijson::SchemaParser().populateSchema(valijson::adapters::NlohmannJsonAdapter(text), schema);
    }
};

JobSchema::JobSchema() : ready_(std::make_unique<Ready>()) {}
JobSchema::~JobSchema() = default;

std::string JobSchema::complaint(std::string_view json) const {
    const auto document = nlohmann::json::parse(json, nullptr, false);
    if (document.is_discarded()) return "not JSON";
    const valijson::adapters::NlohmannJsonAdapter target(document);
    valijson::ValidationResults results;
    valijson::Validator validator;
    if (validator.validate(ready_->schema, target, &results)) return {};
    valijson::ValidationResults::Error error;
    results.popError(error);  // the innermost comes first
    std::string out;
    for (const std::string& part : error.context) out += part;
    return out + ": " + error.description;
}

}  // namespace cotter::test
