// The JSON Schema (2020-12) of a job's records, made from the same field descriptions that read and write them.
#pragma once

#include <string>

#include "core/survey/json_visitors.h"

namespace cotter {

// The schema of one field's type. Words are enumerated; numbers as entered, times, dates and places have patterns.
template <class T>
Json schema_of();

// What does not depend on a field's type is compiled once, in json_schema.cpp.
struct SchemaWriter {
    Json properties = Json::object();
    Json required = Json::array();

    template <class T>
    [[gnu::noinline]] void must(std::string_view name, T&) {
        put(name, schema_of<std::remove_const_t<T>>(), true);
    }
    template <class T>
    [[gnu::noinline]] void may(std::string_view name, T&) {
        put(name, schema_of<std::remove_const_t<T>>(), false);
    }
    // Fields of later minor versions are allowed, so nothing is said about other properties.
    [[nodiscard]] Json object() const;

private:
    void put(std::string_view name, Json schema, bool must);
};

[[nodiscard]] Json type_schema(const char* type);
[[nodiscard]] Json text_schema(std::string_view pattern);
[[nodiscard]] Json list_schema(Json items);
[[nodiscard]] Json words_schema(std::span<const std::string_view> words);

template <class T>
const char* pattern_of() {
    if constexpr (IsId<T>::value)
        return "^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$";
    else if constexpr (std::same_as<T, Number>)
        return "^-?([0-9]+ )?[0-9]+([.][0-9]+|/[0-9]+)?$";
    else if constexpr (std::same_as<T, Date>)
        return "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";
    else if constexpr (std::same_as<T, Place>)
        return "^(axle[1-4]-(left|right)(-inner|-outer)?|trailer|drawbar|actuator|frame|lights)$";
    else
        return "^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}[+-][0-9]{2}:[0-9]{2}$";
}

template <class T>
Json schema_of() {
    if constexpr (IsOptional<T>::value) {
        return schema_of<typename T::value_type>();
    } else if constexpr (IsVector<T>::value) {
        return list_schema(schema_of<typename T::value_type>());
    } else if constexpr (NamedEnum<T>) {
        return words_schema(names(T{}));
    } else if constexpr (TextValue<T>) {
        return text_schema(pattern_of<T>());
    } else if constexpr (HasFields<T>) {
        T sample{};
        SchemaWriter writer;
        T::each_field(sample, writer);
        return writer.object();
    } else if constexpr (std::same_as<T, bool>) {
        return type_schema("boolean");
    } else if constexpr (std::integral<T>) {
        return type_schema("integer");
    } else if constexpr (std::floating_point<T>) {
        return type_schema("number");
    } else {
        return type_schema("string");
    }
}

// The schema of the `records` object that job_json() writes.
[[nodiscard]] Json job_records_schema();

}  // namespace cotter
