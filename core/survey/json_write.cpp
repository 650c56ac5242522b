// Writing JSON values: what does not depend on a field's type.
#include "core/survey/json_visitors.h"

namespace cotter {

Json json_text(std::string text) {
    return text;
}

Json json_flag(bool value) {
    return value;
}

Json json_whole(std::int64_t value) {
    return value;
}

Json json_number(double value) {
    return value;
}

Json json_list(std::size_t size) {
    Json list = Json::array();
    list.get_ref<Json::array_t&>().reserve(size);
    return list;
}

void add_to_list(Json& list, Json value) {
    list.push_back(std::move(value));
}

void JsonWriter::put(std::string_view name, Json value) {
    out[std::string(name)] = std::move(value);
}

std::string compact_json(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string indented_json(const Json& json, int blanks) {
    return json.dump(blanks, ' ', false, Json::error_handler_t::replace);
}

}  // namespace cotter
