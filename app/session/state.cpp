// See state.h.
#include "app/session/state.h"

#include "core/survey/json_visitors.h"

namespace cotter {

namespace {

constexpr std::uint64_t kLargestState = 4u << 20;
constexpr const char* kStateFile = "app_state.json";
constexpr const char* kSettingsFile = "settings.json";

template <class T>
T load(Files& files, const std::string& path) {
    const auto bytes = read_file(files, path, kLargestState);
    if (!bytes) return {};
    const auto json = parse_json({reinterpret_cast<const char*>(bytes->data()), bytes->size()});
    if (!json) return {};
    return fields_from_json<T>(*json).value_or(T{});
}

template <class T>
Result<> save(Files& files, const std::string& path, const T& value) {
    const std::string text = indented_json(to_json_value(value), 1) + "\n";
    return replace_file(files, path, as_bytes(text));
}

}  // namespace

AppState load_state(Files& files, const std::string& folder) {
    return load<AppState>(files, join_path(folder, kStateFile));
}
Settings load_settings(Files& files, const std::string& folder) {
    return load<Settings>(files, join_path(folder, kSettingsFile));
}
Result<> save_state(Files& files, const std::string& folder, const AppState& state) {
    return save(files, join_path(folder, kStateFile), state);
}
Result<> save_settings(Files& files, const std::string& folder, const Settings& settings) {
    return save(files, join_path(folder, kSettingsFile), settings);
}

}  // namespace cotter
