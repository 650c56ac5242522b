// The two visitors that turn a record's field description into JSON and back. Included by json.cpp and by
// other core files that write records of their own kind.
#pragma once

#include <nlohmann/json.hpp>

#include <fmt/format.h>

#include "core/base/amount.h"
#include "core/base/fields.h"
#include "core/base/id.h"
#include "core/base/text.h"
#include "core/base/time.h"
#include "core/trailer/place.h"

namespace cotter {

using Json = nlohmann::ordered_json;  // keeps fields in the order they are written

// ---- writing -------------------------------------------------------------------------------------------------

template <class T>
Json to_json_value(const T& value);

struct JsonWriter {
    Json out = Json::object();

    template <class T>
    void must(std::string_view name, const T& value) {
        out[std::string(name)] = to_json_value(value);
    }
    template <class T>
    void may(std::string_view name, const T& value) {
        if (!(value == T{})) must(name, value);
    }
};

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
struct IsVector : std::false_type {};
template <class T>
struct IsVector<std::vector<T>> : std::true_type {};
template <class T>
struct IsId : std::false_type {};
template <class T>
struct IsId<Id<T>> : std::true_type {};
template <class T>
concept TextValue = std::same_as<T, Number> || std::same_as<T, Instant> || std::same_as<T, Date> ||
    std::same_as<T, Place> || IsId<T>::value;

template <class T>
Json to_json_value(const T& value) {
    if constexpr (IsOptional<T>::value) {
        return to_json_value(*value);
    } else if constexpr (IsVector<T>::value) {
        Json list = Json::array();
        for (const auto& item : value) list.push_back(to_json_value(item));
        return list;
    } else if constexpr (NamedEnum<T>) {
        return std::string(name_of(value));
    } else if constexpr (TextValue<T>) {
        return value.text();
    } else if constexpr (HasFields<T>) {
        JsonWriter writer;
        T::each_field(value, writer);
        return std::move(writer.out);
    } else {
        return value;  // string, bool, integer or double
    }
}

// ---- reading -------------------------------------------------------------------------------------------------

// Reads fields into a record and remembers the first thing wrong; later fields are then skipped.
class JsonReader {
public:
    explicit JsonReader(const Json& in, std::string path = {}) : in_(in), path_(std::move(path)) {
        if (!in.is_object()) wrong("an object is wanted here");
    }

    template <class T>
    void must(std::string_view name, T& value) {
        if (!read(name, value) && !error_) wrong("the field is missing", name);
    }
    template <class T>
    void may(std::string_view name, T& value) {
        (void)read(name, value);
    }

    // After all fields: the first error, or `refused` for a field that nobody asked for.
    [[nodiscard]] Result<> finish() {
        if (error_) return unexpected(*error_);
        for (const auto& [key, unused] : in_.items())
            if (std::find(seen_.begin(), seen_.end(), key) == seen_.end()) wrong("there is no such field", key);
        if (error_) return unexpected(*error_);
        return {};
    }

private:
    void wrong(std::string what, std::string_view name = {}) {
        if (!error_) error_ = Error{Errc::refused, std::move(what), path_to(name), {}};
    }
    [[nodiscard]] std::string path_to(std::string_view name) const {
        if (name.empty()) return path_;
        return path_.empty() ? one_line(name, 60) : fmt::format("{}.{}", path_, one_line(name, 60));
    }

    template <class T>
    bool read(std::string_view name, T& value) {
        seen_.emplace_back(name);
        if (error_) return false;
        const auto it = in_.find(std::string(name));
        if (it == in_.end()) return false;
        if (auto done = from_json_value(*it, value, path_to(name)); !done) error_ = done.error();
        return true;
    }

    template <class T>
    static Result<> from_json_value(const Json& json, T& value, const std::string& path);
    template <class T>
    static Result<> from_text(const Json& json, T& value, const std::string& path);

    const Json& in_;
    std::string path_;
    std::vector<std::string> seen_;
    std::optional<Error> error_;
};

template <class T>
Result<T> parse_text_value(const std::string& text) {
    if constexpr (IsId<T>::value) {
        COTTER_ASSIGN(const Uuid id, Uuid::parse(text));
        return T{id};
    } else if constexpr (NamedEnum<T>) {
        if (const auto found = from_name<T>(text)) return *found;
        std::string all;
        for (const auto name : names(T{})) all += fmt::format("{}{}", all.empty() ? "" : ", ", name);
        return fail(Errc::refused, fmt::format("'{}' is not one of the words for this", one_line(text, 40)), {},
                    "use one of: " + all);
    } else {
        return T::parse(text);
    }
}

template <class T>
Result<> JsonReader::from_text(const Json& json, T& value, const std::string& path) {
    if (!json.is_string()) return fail(Errc::refused, "a text is wanted here", path);
    auto parsed = parse_text_value<T>(json.get_ref<const std::string&>());
    if (!parsed) return unexpected(context(parsed.error(), path));
    value = std::move(*parsed);
    return {};
}

template <class T>
Result<> JsonReader::from_json_value(const Json& json, T& value, const std::string& path) {
    if constexpr (IsOptional<T>::value) {
        value.emplace();
        return from_json_value(json, *value, path);
    } else if constexpr (IsVector<T>::value) {
        if (!json.is_array()) return fail(Errc::refused, "a list is wanted here", path);
        value.clear();
        for (std::size_t i = 0; i < json.size(); ++i) {
            COTTER_TRY(from_json_value(json[i], value.emplace_back(), fmt::format("{}[{}]", path, i)));
        }
        return {};
    } else if constexpr (NamedEnum<T> || TextValue<T>) {
        return from_text(json, value, path);
    } else if constexpr (std::same_as<T, bool>) {
        if (!json.is_boolean()) return fail(Errc::refused, "true or false is wanted here", path);
        value = json.get<bool>();
        return {};
    } else if constexpr (std::integral<T>) {
        if (!json.is_number_integer()) return fail(Errc::refused, "a whole number is wanted here", path);
        const auto number = json.get<std::int64_t>();
        if (!std::in_range<T>(number)) return fail(Errc::refused, "the number is out of range", path);
        value = static_cast<T>(number);
        return {};
    } else if constexpr (std::floating_point<T>) {
        if (!json.is_number()) return fail(Errc::refused, "a number is wanted here", path);
        value = json.get<T>();
        return {};
    } else if constexpr (std::same_as<T, std::string>) {
        if (!json.is_string()) return fail(Errc::refused, "a text is wanted here", path);
        value = json.get<std::string>();
        return {};
    } else {
        JsonReader reader(json, path);
        T::each_field(value, reader);
        return reader.finish();
    }
}

// Parses text as JSON without throwing; refuses bad UTF-8 and more than 64 levels of nesting.
[[nodiscard]] Result<Json> parse_json(std::string_view text);

template <HasFields T>
[[nodiscard]] Result<T> fields_from_json(const Json& json) {
    T value;
    JsonReader reader(json);
    T::each_field(value, reader);
    if (auto done = reader.finish(); !done) return unexpected(done.error());
    return value;
}

}  // namespace cotter
