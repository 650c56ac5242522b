// JSON of records, edits and jobs.
#include "core/survey/json.h"

#include "core/survey/json_value.h"

namespace cotter {

namespace {

template <class... R>
Result<> read_record(Record& to, RecordKind kind, const Json& json, std::variant<R...>*) {
    using Reader = Result<> (*)(Record&, const Json&);
    static constexpr Reader kReaders[] = {
        [](Record& into, const Json& from) { return read_fields(from, into.emplace<R>()); }...};
    return kReaders[static_cast<std::size_t>(kind)](to, json);
}

Result<Record> record_of(RecordKind kind, const Json& json) {
    Record record;
    COTTER_TRY(read_record(record, kind, json, static_cast<Record*>(nullptr)));
    return record;
}

Json record_value(const Record& record) {
    return std::visit([](const auto& r) { return to_json_value(r); }, record);
}

std::string text_of(const Json& json, const char* key) {
    const auto it = json.find(key);
    return it != json.end() && it->is_string() ? it->get<std::string>() : std::string();
}

Json change_json(const Change& change) {
    Json out = Json::object();
    if (const Put* p = std::get_if<Put>(&change)) {
        out["put"] = std::string(name_of(kind_of(p->record)));
        if (p->at) out["position"] = *p->at;
        out["value"] = record_value(p->record);
    } else {
        const Remove& r = std::get<Remove>(change);
        out["remove"] = std::string(name_of(r.kind));
        out["id"] = r.id.text();
    }
    return out;
}

Result<Change> put_from(const Json& json) {
    const auto kind = from_name<RecordKind>(text_of(json, "put"));
    if (!kind) return fail(Errc::refused, "no such kind of record", "put");
    const auto value = json.find("value");
    if (value == json.end()) return fail(Errc::refused, "the field is missing", "value");
    auto record = record_of(*kind, *value);
    if (!record) return unexpected(context(record.error(), name_of(*kind)));
    Put change{std::move(*record), std::nullopt};
    if (const auto at = json.find("position"); at != json.end()) {
        if (!at->is_number_unsigned()) return fail(Errc::refused, "a whole number from 0 is wanted here", "position");
        change.at = at->get<std::size_t>();
    }
    return change;
}

Result<Change> change_from(const Json& json) {
    if (!json.is_object()) return fail(Errc::refused, "an object is wanted here");
    const std::size_t expected = json.contains("put") && json.contains("position") ? 3 : 2;
    if (json.size() != expected)
        return fail(Errc::refused, "a change is {\"put\":kind,\"value\":…} or {\"remove\":kind,\"id\":…}");
    if (json.contains("put")) return put_from(json);
    const auto kind = from_name<RecordKind>(text_of(json, "remove"));
    if (!kind) return fail(Errc::refused, "no such kind of record", "remove");
    COTTER_ASSIGN(const Uuid id, Uuid::parse(text_of(json, "id")));
    return Remove{*kind, id};
}

// The fields of an edit line beside its changes.
struct EditHead {
    JobId job;
    Instant at;
    std::string by;
    std::string reason;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("job", s.job);
        f.must("at", s.at);
        f.must("by", s.by);
        f.may("reason", s.reason);
    }
};

// `list` gets the records at `path`, each as a packet has it.
template <class R>
Result<> read_list(const Json& json, std::vector<R>& list, const std::string& path) {
    if (!json.is_array()) return fail(Errc::refused, "a list is wanted here", path);
    for (std::size_t i = 0; i < json.size(); ++i)
        COTTER_TRY(read_fields(json[i], list.emplace_back(), Spelling::published, item_path(path, i)));
    return {};
}

}  // namespace

std::string record_json(const Record& record) {
    return compact_json(record_value(record));
}

Result<Record> record_from_json(RecordKind kind, std::string_view text) {
    COTTER_ASSIGN(const Json json, parse_json(text));
    return record_of(kind, json);
}

std::string edit_json(const Edit& edit) {
    Json out = to_json_value(EditHead{edit.job, edit.at, edit.by, edit.reason});
    Json list = Json::array();
    for (const Change& change : edit.changes) list.push_back(change_json(change));
    out["do"] = std::move(list);
    return compact_json(out);
}

Result<Edit> edit_from_json(std::string_view line) {
    COTTER_ASSIGN(Json json, parse_json(line));
    if (!json.is_object() || !json.contains("do") || !json["do"].is_array())
        return fail(Errc::refused, "an edit is an object with a list 'do'");
    const Json changes = std::move(json["do"]);
    json.erase("do");
    COTTER_ASSIGN(EditHead head, fields_from_json<EditHead>(json));
    Edit edit{head.job, head.at, std::move(head.by), std::move(head.reason), {}};
    for (std::size_t i = 0; i < changes.size(); ++i) {
        auto change = change_from(changes[i]);
        if (!change) return unexpected(context(change.error(), fmt::format("do[{}]", i)));
        edit.changes.push_back(std::move(*change));
    }
    return edit;
}

Json job_value(const Job& job) {
    Json out = Json::object();
    for (std::size_t i = 0; i < std::variant_size_v<Record>; ++i) {
        const auto kind = static_cast<RecordKind>(i);
        with_records(job, kind, [&](const auto& list) { out[std::string(name_of(kind))] = to_json_value(list); });
    }
    out["amendments"] = to_json_value(job.amendments);
    return out;
}

std::string job_json(const Job& job) {
    return indented_json(job_value(job), 2);
}

Result<Job> job_from_json(std::string_view text) {
    COTTER_ASSIGN(const Json json, parse_json(text));
    return job_from_json_value(json);
}

Result<Job> job_from_json_value(const Json& json) {
    if (!json.is_object()) return fail(Errc::refused, "an object is wanted here", "records");
    Job job;
    for (std::size_t i = 0; i < std::variant_size_v<Record>; ++i) {
        const auto kind = static_cast<RecordKind>(i);
        const std::string path = fmt::format("records.{}", name_of(kind));
        if (const auto it = json.find(std::string(name_of(kind))); it != json.end())
            COTTER_TRY(with_records(job, kind, [&](auto& list) { return read_list(*it, list, path); }));
        else if (is_kind_of_first_packets(kind))
            return fail(Errc::refused, "the list is missing", path);
    }
    const auto amendments = json.find("amendments");
    if (amendments == json.end()) return fail(Errc::refused, "the list is missing", "records.amendments");
    COTTER_TRY(read_list(*amendments, job.amendments, "records.amendments"));
    return job;
}

bool is_kind_of_first_packets(RecordKind kind) {
    return kind <= RecordKind::level || kind == RecordKind::sign_off;
}

std::string amendment_json(const Amendment& amendment) {
    return compact_json(to_json_value(amendment));
}

Result<Amendment> amendment_from_json(std::string_view text) {
    COTTER_ASSIGN(const Json json, parse_json(text));
    return fields_from_json<Amendment>(json);
}

}  // namespace cotter
