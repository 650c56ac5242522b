// See work_away.h.
#include "platform/web/work_away.h"

#include "app/session/photo_order.h"
#include "app/session/work_here.h"
#include "core/packet/signature.h"
#include "core/survey/json.h"
#include "core/survey/json_visitors.h"
#include "platform/web/browser_ports.h"
#include "platform/web/bridge.h"

namespace cotter {

namespace {

constexpr const char* kKeyFile = "device_key";
constexpr std::uint64_t kLargestKey = 64u << 10;

std::string text_of(const Json& json) {
    return compact_json(json);
}

Json json_of(const Error& error) {
    return {{"code", static_cast<int>(error.code)}, {"what", error.what}, {"where", error.where}, {"todo", error.todo}};
}

Json json_of(const PacketFacts& facts) {
    return {{"revision", facts.revision},
            {"content_sha256", facts.content_sha256},
            {"tagmanifest_sha256", facts.tagmanifest_sha256},
            {"name", facts.name}};
}

PacketFacts facts_of(const Json& json) {
    return {json.at("revision"), json.at("content_sha256"), json.at("tagmanifest_sha256"), json.at("name")};
}

// The answer as it was sent, or the error that it brings.
Result<Json> read_answer(const std::string& text) {
    const Json json = Json::parse(text, nullptr, false);
    if (json.is_object() && !json.contains("error")) return json;
    if (!json.is_object() || !json["error"].is_object())
        return fail(Errc::io, "the browser stopped the work", "", "try again; nothing that was saved is lost");
    const Json& error = json["error"];
    return fail(static_cast<Errc>(error.at("code").get<int>()), error.at("what"), error.at("where"), error.at("todo"));
}

// ---- the worker's side ----

Result<Json> take_in_here(Files& files, PhotoVault& vault, const Json& order) {
    COTTER_ASSIGN(const PhotoRef photo, take_in_photo(files, vault, order.at("path")));
    return Json{{"photo", to_json_value(photo)}};
}

Result<Json> order_here(Files& files, const Json& order) {
    std::vector<PhotoWhen> seen;
    for (const std::string path : order.at("paths")) seen.push_back(photo_when(files, path));
    return Json{{"paths", in_order(std::move(seen))}};
}

Result<Json> pack_here(const WorkPlace& place, const Json& order) {
    PackOrder out;
    COTTER_ASSIGN(out.job, job_from_json(order.at("job").get<std::string>()));
    for (const std::string visit : order.at("visits")) {
        COTTER_ASSIGN(Job job, job_from_json(visit));
        out.visits.push_back(std::move(job));
    }
    for (const Json& facts : order.at("earlier")) out.earlier.push_back(facts_of(facts));
    out.paper = from_name<Paper>(order.at("paper").get<std::string>()).value_or(Paper::letter);
    out.out_folder = order.at("out_folder");
    COTTER_TRY(replace_file(place.files, join_path(place.book_folder, kKeyFile),
                            as_bytes(order.at("key").get<std::string>())));
    COTTER_ASSIGN(const Packed packed, make_packet(place, out));
    return Json{{"path", packed.path}, {"unchanged", packed.unchanged}, {"facts", json_of(packed.facts)}};
}

}  // namespace

int WorkAway::send(const std::string& json, std::function<void(const std::string&)> done) {
    waiting_[++last_] = std::move(done);
    cotter_js_work(last_, json.c_str());
    return last_;
}

void WorkAway::answered(int order, const std::string& json) {
    const auto waiting = waiting_.find(order);
    if (waiting == waiting_.end()) return;
    const auto done = std::move(waiting->second);
    waiting_.erase(waiting);
    done(json);
}

void WorkAway::order(std::vector<std::string> paths, std::function<void(std::vector<std::string>)> done) {
    send(text_of({{"kind", "order"}, {"paths", paths}}), [paths, done = std::move(done)](const std::string& text) {
        const auto answer = read_answer(text);
        done(answer ? answer->at("paths").get<std::vector<std::string>>() : paths);
    });
}

void WorkAway::take_in(const std::string& path, std::function<void(Result<PhotoRef>)> done) {
    send(text_of({{"kind", "take_in"}, {"path", path}}), [done = std::move(done)](const std::string& text) {
        done(
            read_answer(text).and_then([](const Json& answer) { return fields_from_json<PhotoRef>(answer["photo"]); }));
    });
}

// The key is made here, beside the book, so that it is kept with it.
void WorkAway::pack(PackOrder order, std::function<void(Result<Packed>)> done) {
    const std::string key_path = join_path(kBookFolder, kKeyFile);
    if (const auto key = DeviceKey::load_or_make(files_, random_, key_path, "cotter device key"); !key)
        return done(unexpected(key.error()));
    const auto key = read_file(files_, key_path, kLargestKey);
    if (!key) return done(unexpected(key.error()));
    Json json{{"kind", "pack"},
              {"job", job_json(order.job)},
              {"visits", Json::array()},
              {"earlier", Json::array()},
              {"paper", std::string(name_of(order.paper))},
              {"out_folder", order.out_folder},
              {"key", std::string(as_text(*key))}};
    for (const Job& visit : order.visits) json["visits"].push_back(job_json(visit));
    for (const PacketFacts& facts : order.earlier) json["earlier"].push_back(json_of(facts));
    for (const Shot& shot : order.job.all<Shot>()) json["photos"].push_back(shot.photo.sha256);
    send(text_of(json), [done = std::move(done)](const std::string& text) {
        done(read_answer(text).map([](const Json& answer) {
            return Packed{answer.at("path"), answer.at("unchanged"), facts_of(answer.at("facts"))};
        }));
    });
}

std::string carry_out(Files& files, Random& random, const std::string& software, const std::string& order) {
    const Json json = Json::parse(order, nullptr, false);
    if (const auto made = files.make_folders(kBookFolder); !made) return text_of({{"error", json_of(made.error())}});
    SerialWorkers workers;
    PhotoVault vault(files, workers, kBookFolder);
    const std::string kind = json.at("kind");
    const auto answer = kind == "take_in" ? take_in_here(files, vault, json)
                        : kind == "order"
                            ? order_here(files, json)
                            : pack_here({files, random, workers, vault, kShareFolder, software, kBookFolder}, json);
    return text_of(answer ? *answer : Json{{"error", json_of(answer.error())}});
}

}  // namespace cotter
