// Reading JSON values: the parser, and what does not depend on a field's type.
#include <algorithm>

#include "core/survey/json_visitors.h"

namespace cotter {

namespace {

// An id in lower case: the reader of ids takes either.
bool is_published(std::string_view text, const Uuid& id) {
    return text == id.text();
}

// With seconds, without parts of them, and with the offset in digits.
bool is_published(std::string_view text, const Instant&) {
    return text.size() == 25 && text[10] == 'T' && (text[19] == '+' || text[19] == '-');
}

template <class T>
bool is_published(std::string_view, const T&) {
    return true;
}

template <class T>
Result<> parse_into(const std::string& text, T& value, Spelling spelling) {
    COTTER_ASSIGN(value, T::parse(text));
    if (spelling == Spelling::published && !is_published(text, value))
        return fail(Errc::refused, fmt::format("'{}' is not spelled as the schema has it", one_line(text, 40)), {},
                    fmt::format("write it as {}", value.text()));
    return {};
}

}  // namespace

Result<Json> parse_json(std::string_view text) {
    if (!is_utf8(text)) return fail(Errc::refused, "the text is not UTF-8");
    bool too_deep = false;
    const auto depth_guard = [&](int depth, Json::parse_event_t, Json&) {
        too_deep = too_deep || depth > 64;
        return !too_deep;
    };
    Json json = Json::parse(text, depth_guard, false);
    if (too_deep) return fail(Errc::refused, "the JSON is nested too deeply");
    if (json.is_discarded()) return fail(Errc::refused, "this is not JSON, or it is cut off");
    return json;
}

const Json& json_item(const Json& list, std::size_t at) {
    return list[at];
}

std::string item_path(const std::string& path, std::size_t at) {
    return fmt::format("{}[{}]", path, at);
}

JsonReader::JsonReader(const Json& in, Spelling spelling, std::string path)
    : in_(in), spelling_(spelling), path_(std::move(path)) {
    if (!in.is_object()) wrong("an object is wanted here", path_);
}

Result<> JsonReader::finish() {
    if (error_) return unexpected(*error_);
    for (const auto& [key, unused] : in_.items())
        if (std::find(seen_.begin(), seen_.end(), key) == seen_.end()) wrong("there is no such field", path_to(key));
    if (error_) return unexpected(*error_);
    return {};
}

const Json* JsonReader::look(std::string_view name, bool needed) {
    seen_.emplace_back(name);
    if (error_) return nullptr;
    const auto found = in_.find(std::string(name));
    if (found != in_.end()) return &*found;
    if (needed) wrong("the field is missing", path_to(name));
    return nullptr;
}

void JsonReader::wrong(std::string what, std::string where) {
    if (!error_) error_ = Error{Errc::refused, std::move(what), std::move(where), {}};
}

std::string JsonReader::path_to(std::string_view name) const {
    if (name.empty()) return path_;
    return path_.empty() ? one_line(name, 60) : fmt::format("{}.{}", path_, one_line(name, 60));
}

const std::string* JsonReader::text_in(const Json& json, const std::string& path) {
    if (json.is_string()) return &json.get_ref<const std::string&>();
    wrong("a text is wanted here", path);
    return nullptr;
}

std::size_t JsonReader::items_in(const Json& json, const std::string& path) {
    if (json.is_array()) return json.size();
    wrong("a list is wanted here", path);
    return 0;
}

std::int64_t JsonReader::whole_in(const Json& json, std::int64_t least, std::int64_t greatest,
                                  const std::string& path) {
    if (!json.is_number_integer()) {
        wrong("a whole number is wanted here", path);
        return 0;
    }
    const auto number = json.get<std::int64_t>();
    if (number >= least && number <= greatest) return number;
    wrong("the number is out of range", path);
    return 0;
}

std::size_t JsonReader::word_in(const Json& json, std::span<const std::string_view> words, const std::string& path) {
    const std::string* text = text_in(json, path);
    if (text == nullptr) return 0;
    const auto found = std::find(words.begin(), words.end(), *text);
    if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
    take(unexpected(context({Errc::refused,
                             fmt::format("'{}' is not one of the words for this", one_line(*text, 40)),
                             {},
                             fmt::format("use one of: {}", fmt::join(words, ", "))},
                            path)));
    return 0;
}

void JsonReader::take(Result<> nested) {
    if (!nested && !error_) error_ = std::move(nested).error();
}

template <class T>
void JsonReader::parse(const Json& json, T& value, const std::string& path) {
    const std::string* text = text_in(json, path);
    if (text == nullptr) return;
    if (auto done = parse_into(*text, value, spelling_); !done) take(unexpected(context(done.error(), path)));
}

void JsonReader::read(const Json& json, std::string& value, const std::string& path) {
    if (const std::string* text = text_in(json, path)) value = *text;
}

void JsonReader::read(const Json& json, bool& value, const std::string& path) {
    if (!json.is_boolean()) return wrong("true or false is wanted here", path);
    value = json.get<bool>();
}

void JsonReader::read(const Json& json, double& value, const std::string& path) {
    if (!json.is_number()) return wrong("a number is wanted here", path);
    value = json.get<double>();
}

void JsonReader::read(const Json& json, Uuid& value, const std::string& path) {
    parse(json, value, path);
}

void JsonReader::read(const Json& json, Number& value, const std::string& path) {
    parse(json, value, path);
}

void JsonReader::read(const Json& json, Instant& value, const std::string& path) {
    parse(json, value, path);
}

void JsonReader::read(const Json& json, Date& value, const std::string& path) {
    parse(json, value, path);
}

void JsonReader::read(const Json& json, Place& value, const std::string& path) {
    parse(json, value, path);
}

}  // namespace cotter
