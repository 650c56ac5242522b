// The records' schema, put together from the kinds of record.
#include "core/survey/json_schema.h"

#include "core/survey/json_value.h"

namespace cotter {

namespace {
template <std::size_t I = 0>
void add_kinds(Json& properties, Json& required) {
    if constexpr (I < std::variant_size_v<Record>) {
        const std::string kind(name_of(static_cast<RecordKind>(I)));
        properties[kind] = schema_of<std::vector<std::variant_alternative_t<I, Record>>>();
        if (is_kind_of_first_packets(static_cast<RecordKind>(I))) required.push_back(kind);
        add_kinds<I + 1>(properties, required);
    }
}
}  // namespace

void SchemaWriter::put(std::string_view name, Json schema, bool must) {
    properties[std::string(name)] = std::move(schema);
    if (must) required.push_back(std::string(name));
}

Json SchemaWriter::object() const {
    return {{"type", "object"}, {"properties", properties}, {"required", required}};
}

Json type_schema(const char* type) {
    return {{"type", type}};
}

Json text_schema(std::string_view pattern) {
    return {{"type", "string"}, {"pattern", std::string(pattern)}};
}

Json list_schema(Json items) {
    return {{"type", "array"}, {"items", std::move(items)}};
}

Json words_schema(std::span<const std::string_view> words) {
    Json list = Json::array();
    for (const std::string_view word : words) list.push_back(std::string(word));
    return {{"enum", std::move(list)}};
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
