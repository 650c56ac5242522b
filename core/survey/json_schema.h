// The JSON Schema (2020-12) of a job's records, made from the same field descriptions that read and write them.
#pragma once

#include <string>

#include "core/survey/json_visitors.h"

namespace cotter {

// The schema of one field's type. Words are enumerated; numbers as entered, times, dates and places have patterns.
template <class T>
Json schema_of();

struct SchemaWriter {
    Json properties = Json::object();
    Json required = Json::array();

    template <class T>
    void must(std::string_view name, T&) {
        properties[std::string(name)] = schema_of<std::remove_const_t<T>>();
        required.push_back(std::string(name));
    }
    template <class T>
    void may(std::string_view name, T&) {
        properties[std::string(name)] = schema_of<std::remove_const_t<T>>();
    }
    // Fields of later minor versions are allowed, so nothing is said about other properties.
    [[nodiscard]] Json object() const {
        return {{"type", "object"}, {"properties", properties}, {"required", required}};
    }
};

[[nodiscard]] Json text_schema(std::string_view pattern);

template <class T>
Json pattern_schema() {
    if constexpr (IsId<T>::value)
        return text_schema("^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$");
    else if constexpr (std::same_as<T, Number>)
        return text_schema("^-?([0-9]+ )?[0-9]+([.][0-9]+|/[0-9]+)?$");
    else if constexpr (std::same_as<T, Date>)
        return text_schema("^[0-9]{4}-[0-9]{2}-[0-9]{2}$");
    else if constexpr (std::same_as<T, Place>)
        return text_schema("^(axle[1-4]-(left|right)(-inner|-outer)?|trailer|drawbar|actuator|frame|lights)$");
    else
        return text_schema("^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}[+-][0-9]{2}:[0-9]{2}$");
}

template <class T>
Json schema_of() {
    if constexpr (IsOptional<T>::value) {
        return schema_of<typename T::value_type>();
    } else if constexpr (IsVector<T>::value) {
        return {{"type", "array"}, {"items", schema_of<typename T::value_type>()}};
    } else if constexpr (NamedEnum<T>) {
        Json words = Json::array();
        for (const auto name : names(T{})) words.push_back(std::string(name));
        return {{"enum", words}};
    } else if constexpr (TextValue<T>) {
        return pattern_schema<T>();
    } else if constexpr (HasFields<T>) {
        T sample{};
        SchemaWriter writer;
        T::each_field(sample, writer);
        return writer.object();
    } else if constexpr (std::same_as<T, bool>) {
        return {{"type", "boolean"}};
    } else if constexpr (std::integral<T>) {
        return {{"type", "integer"}};
    } else if constexpr (std::floating_point<T>) {
        return {{"type", "number"}};
    } else {
        return {{"type", "string"}};
    }
}

// The schema of the `records` object that job_json() writes.
[[nodiscard]] Json job_records_schema();

}  // namespace cotter
