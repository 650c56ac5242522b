// Loading the register.
#include "core/judge/register.h"

namespace cotter {

namespace {
constexpr std::uint64_t kLargest = 1u << 20;
}

Result<JudgeRegister> load_register(Files& files, const std::string& share) {
    JudgeRegister out;
    const std::string limits = join_path(share, "limits/limits.json"),
                      form = join_path(share, "limits/inspection.json");
    COTTER_ASSIGN(const Bytes limit_text, read_file(files, limits, kLargest));
    COTTER_ASSIGN(const Bytes form_text, read_file(files, form, kLargest));
    auto parsed = parse_limits(as_text(limit_text));
    if (!parsed) return unexpected(context(parsed.error(), limits));
    auto items = parse_inspection(as_text(form_text));
    if (!items) return unexpected(context(items.error(), form));
    out.limits = std::move(*parsed);
    out.inspection = std::move(*items);
    return out;
}

}  // namespace cotter
