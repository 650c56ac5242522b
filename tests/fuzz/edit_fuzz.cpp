// Fuzzes the reading of edit lines; what is accepted must survive a round trip and be appliable or refused.
#include <cstdlib>

#include "core/base/bytes.h"
#include "core/survey/json.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace cotter;
    const auto edit = edit_from_json(as_text({data, size}));
    if (!edit) return 0;
    const auto again = edit_from_json(edit_json(*edit));
    if (!again || !(*again == *edit)) std::abort();
    (void)apply(Job{}, *edit);
    return 0;
}
