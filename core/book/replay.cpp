// Replay of edit lines.
#include "core/book/replay.h"

#include <cmath>

#include "core/survey/json.h"
#include "core/survey/json_visitors.h"

namespace cotter {

namespace {

constexpr std::uint64_t kLargestEditsFile = 256u << 20;
constexpr std::uint64_t kLargestPhotoFile = 128u << 20;

// Stands in for a picture that is not taken in yet, so that a line can be checked before.
const Json& photo_still_to_come() {
    static const Json json = to_json_value(PhotoRef{std::string(64, '0'), "image/jpeg", 1, 1, 1, {}, 0, 0, 0, 0});
    return json;
}

struct Line {
    std::size_t number = 0;
    Json json;
};

std::vector<std::string_view> lines_of(std::string_view text) {
    std::vector<std::string_view> out;
    while (!text.empty()) {
        const auto end = text.find('\n');
        std::string_view line = text.substr(0, end);
        if (line.ends_with('\r')) line.remove_suffix(1);
        out.push_back(line);
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    }
    return out;
}

// Calls f(change, file) for each change that names a picture.
template <class F>
Result<> each_photo(Json& edit, F&& f) {
    if (!edit.is_object() || !edit.contains("do") || !edit["do"].is_array()) return {};
    for (Json& change : edit["do"]) {
        if (!change.is_object() || !change.contains("photo_file")) continue;
        const Json file = change["photo_file"];
        change.erase("photo_file");
        if (!file.is_string() || change.value("put", "") != "shot" || !change["value"].is_object())
            return fail(Errc::refused, "a photo_file belongs to a put of a shot", "photo_file");
        COTTER_TRY(f(change, file.get<std::string>()));
    }
    return {};
}

Result<> understand(Json edit) {
    COTTER_TRY(each_photo(edit, [](Json& change, const std::string&) -> Result<> {
        change["value"]["photo"] = photo_still_to_come();
        return {};
    }));
    if (auto read = edit_from_json(compact_json(edit)); !read) return unexpected(read.error());
    return {};
}

Result<std::vector<Line>> read_lines(Files& files, const std::string& path) {
    COTTER_ASSIGN(const Bytes bytes, read_file(files, path, kLargestEditsFile));
    std::vector<Line> out;
    std::size_t number = 0;
    for (const std::string_view text : lines_of(as_text(bytes))) {
        ++number;
        if (text.empty()) continue;
        const std::string where = fmt::format("{}, line {}", path, number);
        auto json = parse_json(text);
        if (!json) return unexpected(context(json.error(), where));
        if (auto good = understand(*json); !good) return unexpected(context(good.error(), where));
        out.push_back({number, std::move(*json)});
    }
    if (out.empty()) return fail(Errc::refused, "there are no edits in it", path);
    return out;
}

// Figures are kept to what they mean, so that a CPU's last bits do not show in a packet.
double to_four_decimals(double value) {
    return std::round(value * 1e4) / 1e4;
}

Result<Edit> with_photos(Json json, PhotoVault& vault, Files& files, const std::string& folder, Replayed& done) {
    COTTER_TRY(each_photo(json, [&](Json& change, const std::string& name) -> Result<> {
        const std::string path = join_path(folder, name);
        COTTER_ASSIGN(const Bytes bytes, read_file(files, path, kLargestPhotoFile));
        auto stored = vault.take_in(bytes);
        if (!stored) return unexpected(context(stored.error(), path));
        change["value"]["photo"] = to_json_value(photo_ref(*stored));
        ++done.photos;
        return {};
    }));
    return edit_from_json(compact_json(json));
}

}  // namespace

PhotoRef photo_ref(const Stored& stored) {
    PhotoRef ref;
    ref.sha256 = stored.sha256;
    ref.media_type = stored.info.media == Media::png ? "image/png" : "image/jpeg";
    ref.bytes = static_cast<std::int64_t>(stored.size);
    ref.width = stored.info.width;
    ref.height = stored.info.height;
    ref.taken = stored.info.taken;
    ref.sharpness = to_four_decimals(stored.quality.sharpness);
    ref.mean_light = to_four_decimals(stored.quality.mean_light);
    ref.dark_share = to_four_decimals(stored.quality.dark_share);
    ref.bright_share = to_four_decimals(stored.quality.bright_share);
    return ref;
}

Result<Replayed> replay(Book& book, PhotoVault& vault, Files& files, const std::string& path,
                        const ReplayProgress& progress) {
    COTTER_ASSIGN(auto lines, read_lines(files, path));
    Replayed done;
    for (Line& line : lines) {
        const auto at_line = [&](const Error& error) {
            return unexpected(context(error, fmt::format("{}, line {}", path, line.number)));
        };
        auto edit = with_photos(std::move(line.json), vault, files, parent_folder(path), done);
        if (!edit) return at_line(edit.error());
        if (auto committed = book.commit(*edit); !committed) return at_line(committed.error());
        done.job = edit->job;
        ++done.edits;
        if (progress && !progress(done.edits, lines.size()))
            return fail(Errc::cancelled, fmt::format("stopped after {} of {} edits", done.edits, lines.size()), path);
    }
    return done;
}

}  // namespace cotter
