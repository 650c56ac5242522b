// The two visitors that turn a record's field description into JSON and back. Included by json.cpp and by
// other core files that write records of their own kind.
#pragma once

#include <limits>
#include <span>

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

// What does not depend on a field's type is compiled once, in json_write.cpp: nlohmann's templates are dear.
[[nodiscard]] Json json_text(std::string text);
[[nodiscard]] Json json_flag(bool value);
[[nodiscard]] Json json_whole(std::int64_t value);
[[nodiscard]] Json json_number(double value);
[[nodiscard]] Json json_list(std::size_t size);  // empty, with room
void add_to_list(Json& list, Json value);

// A JSON text in one line, or indented by so many blanks. Bytes that are not UTF-8 become U+FFFD.
[[nodiscard]] std::string compact_json(const Json& json);
[[nodiscard]] std::string indented_json(const Json& json, int blanks);

template <class T>
Json to_json_value(const T& value);

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

struct JsonWriter {
    Json out = Json::object();

    template <class T>
    [[gnu::noinline]] void must(std::string_view name, const T& value) {
        put(name, to_json_value(value));
    }
    template <class T>
    [[gnu::noinline]] void may(std::string_view name, const T& value) {
        if constexpr (IsVector<T>::value || std::same_as<T, std::string>) {
            if (!value.empty()) must(name, value);
        } else if constexpr (IsOptional<T>::value) {
            if (value) must(name, value);
        } else {
            if (!(value == T{})) must(name, value);
        }
    }

private:
    void put(std::string_view name, Json value);
};

template <class T>
Json to_json_value(const T& value) {
    if constexpr (IsOptional<T>::value) {
        return to_json_value(*value);
    } else if constexpr (IsVector<T>::value) {
        Json list = json_list(value.size());
        for (const auto& item : value) add_to_list(list, to_json_value(item));
        return list;
    } else if constexpr (NamedEnum<T>) {
        return json_text(std::string(name_of(value)));
    } else if constexpr (TextValue<T>) {
        return json_text(value.text());
    } else if constexpr (HasFields<T>) {
        JsonWriter writer;
        T::each_field(value, writer);
        return std::move(writer.out);
    } else if constexpr (std::same_as<T, bool>) {
        return json_flag(value);
    } else if constexpr (std::integral<T>) {
        return json_whole(static_cast<std::int64_t>(value));
    } else if constexpr (std::floating_point<T>) {
        return json_number(static_cast<double>(value));
    } else {
        return json_text(std::string(value));
    }
}

// ---- reading -------------------------------------------------------------------------------------------------

// Where a value can be written in several ways: as people and other programs write it, or only as the packet's schema
// has it (ids in lower case, times with their offset in digits and without fractions of a second).
enum class Spelling { any, published };

// Fills `value`; it is of no use when this fails. `path`: where the object stands, for the line that says what is
// wrong.
template <HasFields T>
[[nodiscard]] Result<> read_fields(const Json& json, T& value, Spelling spelling = Spelling::any,
                                   std::string path = {});

// Reads fields into a record and remembers the first thing wrong; later fields are then skipped. What does not depend
// on a field's type is compiled once, in json_read.cpp.
class JsonReader {
public:
    explicit JsonReader(const Json& in, Spelling spelling = Spelling::any, std::string path = {});

    template <class T>
    [[gnu::noinline]] void must(std::string_view name, T& value) {
        if (const Json* found = look(name, true)) read(*found, value, path_to(name));
    }
    template <class T>
    [[gnu::noinline]] void may(std::string_view name, T& value) {
        if (const Json* found = look(name, false)) read(*found, value, path_to(name));
    }

    // After all fields: the first error, or `refused` for a field that nobody asked for.
    [[nodiscard]] Result<> finish();

private:
    const Json* look(std::string_view name, bool needed);  // nullptr: there is nothing to read
    void wrong(std::string what, std::string where);
    [[nodiscard]] std::string path_to(std::string_view name) const;

    const std::string* text_in(const Json& json, const std::string& path);
    std::size_t items_in(const Json& json, const std::string& path);
    std::int64_t whole_in(const Json& json, std::int64_t least, std::int64_t greatest, const std::string& path);
    std::size_t word_in(const Json& json, std::span<const std::string_view> words, const std::string& path);
    void take(Result<> nested);

    template <class T>
    void parse(const Json& json, T& value, const std::string& path);
    void read(const Json& json, std::string& value, const std::string& path);
    void read(const Json& json, bool& value, const std::string& path);
    void read(const Json& json, double& value, const std::string& path);
    void read(const Json& json, Uuid& value, const std::string& path);
    void read(const Json& json, Number& value, const std::string& path);
    void read(const Json& json, Instant& value, const std::string& path);
    void read(const Json& json, Date& value, const std::string& path);
    void read(const Json& json, Place& value, const std::string& path);
    template <class T>
    void read(const Json& json, T& value, const std::string& path);

    const Json& in_;
    Spelling spelling_;
    std::string path_;
    std::vector<std::string> seen_;
    std::optional<Error> error_;
};

[[nodiscard]] const Json& json_item(const Json& list, std::size_t at);
[[nodiscard]] std::string item_path(const std::string& path, std::size_t at);

template <class T>
void JsonReader::read(const Json& json, T& value, const std::string& path) {
    if constexpr (IsOptional<T>::value) {
        read(json, value.emplace(), path);
    } else if constexpr (IsVector<T>::value) {
        value.clear();
        const std::size_t items = items_in(json, path);
        for (std::size_t i = 0; i < items && !error_; ++i)
            read(json_item(json, i), value.emplace_back(), item_path(path, i));
    } else if constexpr (IsId<T>::value) {
        read(json, value.uuid, path);
    } else if constexpr (NamedEnum<T>) {
        static constexpr auto kWords = names(T{});
        value = static_cast<T>(word_in(json, kWords, path));
    } else if constexpr (std::integral<T>) {
        using Limits = std::numeric_limits<T>;
        constexpr auto kGreatest = std::in_range<std::int64_t>(Limits::max())
                                       ? static_cast<std::int64_t>(Limits::max())
                                       : std::numeric_limits<std::int64_t>::max();
        value = static_cast<T>(whole_in(json, std::int64_t{Limits::min()}, kGreatest, path));
    } else if constexpr (std::floating_point<T>) {
        double number = 0;
        read(json, number, path);
        value = static_cast<T>(number);
    } else {
        take(read_fields(json, value, spelling_, path));
    }
}

// Parses text as JSON without throwing; refuses bad UTF-8 and more than 64 levels of nesting.
[[nodiscard]] Result<Json> parse_json(std::string_view text);

template <HasFields T>
Result<> read_fields(const Json& json, T& value, Spelling spelling, std::string path) {
    JsonReader reader(json, spelling, std::move(path));
    T::each_field(value, reader);
    return reader.finish();
}

template <HasFields T>
[[nodiscard]] Result<T> fields_from_json(const Json& json, Spelling spelling = Spelling::any) {
    T value;
    COTTER_TRY(read_fields(json, value, spelling));
    return value;
}

}  // namespace cotter
