// The records' schema, put together from the kinds of record.
#include "core/survey/json_schema.h"

#include "core/survey/job.h"

namespace cotter {

namespace {
// Kinds that came later are absent from packets made before, which must still pass.
bool kind_of_first_packets(RecordKind kind) {
    return kind <= RecordKind::level || kind == RecordKind::sign_off;
}

template <std::size_t I = 0>
void add_kinds(Json& properties, Json& required) {
    if constexpr (I < std::variant_size_v<Record>) {
        const std::string kind(name_of(static_cast<RecordKind>(I)));
        properties[kind] = schema_of<std::vector<std::variant_alternative_t<I, Record>>>();
        if (kind_of_first_packets(static_cast<RecordKind>(I))) required.push_back(kind);
        add_kinds<I + 1>(properties, required);
    }
}
}  // namespace

Json text_schema(std::string_view pattern) {
    return {{"type", "string"}, {"pattern", std::string(pattern)}};
}

Json job_records_schema() {
    Json properties = Json::object();
    Json required = Json::array();
    add_kinds(properties, required);
    properties["amendments"] = schema_of<std::vector<Amendment>>();
    required.push_back("amendments");
    return {{"type", "object"}, {"properties", properties}, {"required", required}};
}

}  // namespace cotter
