// Reading them.
#include "core/packet/pack_rules.h"

namespace cotter {

namespace {
constexpr std::uint64_t kLargest = 8u << 20;  // of a font or a list
}  // namespace

Result<PackRules> load_pack_rules(Files& files, const std::string& share_folder) {
    PackRules out;
    COTTER_ASSIGN(out.judging, load_register(files, share_folder));
    COTTER_ASSIGN(const Bytes due, read_file(files, join_path(share_folder, "procedures/rechecks.json"), kLargest));
    COTTER_ASSIGN(out.rechecks, rechecks_from_json(as_text(due)));
    COTTER_ASSIGN(out.font, read_file(files, join_path(share_folder, "fonts/DejaVuSans.ttf"), kLargest));
    COTTER_ASSIGN(out.font_bold, read_file(files, join_path(share_folder, "fonts/DejaVuSans-Bold.ttf"), kLargest));
    return out;
}

}  // namespace cotter
