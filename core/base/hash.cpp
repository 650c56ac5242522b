// What of the digests does not depend on the library that computes them.
#include "core/base/hash.h"

namespace cotter {

namespace {
constexpr std::array<std::string_view, 4> kNames{"md5", "sha1", "sha256", "sha512"};
}  // namespace

std::string_view hash_name(HashKind kind) {
    return kNames[static_cast<std::size_t>(kind)];
}

std::optional<HashKind> hash_from_name(std::string_view name) {
    for (std::size_t i = 0; i < kNames.size(); ++i)
        if (kNames[i] == name) return static_cast<HashKind>(i);
    return std::nullopt;
}

std::string sha256_hex(ByteView bytes) {
    Hasher hasher;
    hasher.add(bytes);
    return hasher.finish_hex();
}

}  // namespace cotter
