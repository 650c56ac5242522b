// JSON of records, edits and jobs.
#include "core/survey/json.h"

#include "core/survey/json_value.h"

namespace cotter {

namespace {

template <std::size_t I = 0>
Result<Record> record_of(RecordKind kind, const Json& json) {
    if constexpr (I < std::variant_size_v<Record>) {
        if (static_cast<std::size_t>(kind) != I) return record_of<I + 1>(kind, json);
        COTTER_ASSIGN(auto record, (fields_from_json<std::variant_alternative_t<I, Record>>(json)));
        return Record{std::move(record)};
    } else {
        return fail(Errc::refused, "no such kind of record");
    }
}

Json json_of(const Record& record) {
    return std::visit([](const auto& r) { return to_json_value(r); }, record);
}

std::string compact(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
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
        out["value"] = json_of(p->record);
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

template <std::size_t I = 0>
Result<> read_lists(const Json& json, Job& job) {
    if constexpr (I < std::variant_size_v<Record>) {
        using R = std::variant_alternative_t<I, Record>;
        const std::string key(name_of(static_cast<RecordKind>(I)));
        if (const auto it = json.find(key); it != json.end()) {
            if (!it->is_array()) return fail(Errc::refused, "a list is wanted here", key);
            for (const Json& item : *it) {
                auto record = fields_from_json<R>(item);
                if (!record) return unexpected(context(record.error(), key));
                job.all<R>().push_back(std::move(*record));
            }
        }
        return read_lists<I + 1>(json, job);
    }
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

std::string record_json(const Record& record) {
    return compact(json_of(record));
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
    return compact(out);
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

std::string job_json(const Job& job) {
    Json out = Json::object();
    for (std::size_t i = 0; i < std::variant_size_v<Record>; ++i) {
        const auto kind = static_cast<RecordKind>(i);
        with_records(job, kind, [&](const auto& list) { out[std::string(name_of(kind))] = to_json_value(list); });
    }
    out["amendments"] = to_json_value(job.amendments);
    return out.dump(2, ' ', false, Json::error_handler_t::replace);
}

Result<Job> job_from_json(std::string_view text) {
    COTTER_ASSIGN(const Json json, parse_json(text));
    return job_from_json_value(json);
}

Result<Job> job_from_json_value(const Json& json) {
    Job job;
    COTTER_TRY(read_lists(json, job));
    if (const auto it = json.find("amendments"); it != json.end())
        for (const Json& item : *it) {
            COTTER_ASSIGN(auto amendment, fields_from_json<Amendment>(item));
            job.amendments.push_back(std::move(amendment));
        }
    return job;
}

std::string amendment_json(const Amendment& amendment) {
    return compact(to_json_value(amendment));
}

Result<Amendment> amendment_from_json(std::string_view text) {
    COTTER_ASSIGN(const Json json, parse_json(text));
    return fields_from_json<Amendment>(json);
}

}  // namespace cotter
