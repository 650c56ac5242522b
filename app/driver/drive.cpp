// See drive.h.
#include "app/driver/drive.h"

namespace cotter {

namespace {

constexpr std::uint64_t kMostBytes = 1 << 20;

Result<> keep_shot(Files& files, const std::string& folder, const std::string& name, ByteView png) {
    if (folder.empty()) return fail(Errc::refused, "no folder for shots", name, "name one with --shots");
    COTTER_TRY(files.make_folders(folder));
    return replace_file(files, join_path(folder, name.ends_with(".png") ? name : name + ".png"), png);
}

}  // namespace

Result<RunOutcome> drive(DriverHost& host, Files& files, const DriveSpec& spec,
                         const std::function<void(std::string_view)>& say) {
    COTTER_ASSIGN(const Bytes text, read_file(files, spec.script, kMostBytes));
    const auto named = [&](const Error& error) { return unexpected(context(error, base_name(spec.script))); };
    const auto commands = parse_script(as_text(text));
    if (!commands) return named(commands.error());
    const auto keep = [&](const std::string& name, ByteView png) { return keep_shot(files, spec.shots, name, png); };
    ScriptRunner runner(host, {say, keep, spec.audit, spec.limits});
    auto outcome = runner.run(*commands);
    if (!outcome) return named(outcome.error());
    return outcome;
}

}  // namespace cotter
