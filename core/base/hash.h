// Message digests: SHA-256 for everything of ours, the older ones only to check bags made elsewhere.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/bytes.h"

namespace cotter {

enum class HashKind { md5, sha1, sha256, sha512 };

[[nodiscard]] std::string_view hash_name(HashKind kind);                      // "sha256"
[[nodiscard]] std::optional<HashKind> hash_from_name(std::string_view name);  // by that name

// A digest being computed. Not copyable; one thread at a time.
class Hasher {
public:
    explicit Hasher(HashKind kind = HashKind::sha256);
    ~Hasher();
    Hasher(Hasher&&) noexcept;
    Hasher& operator=(Hasher&&) noexcept;
    void add(ByteView bytes);
    [[nodiscard]] Bytes finish();  // once
    [[nodiscard]] std::string finish_hex() { return to_hex(finish()); }

private:
    struct State;
    std::unique_ptr<State> state_;
};

// Lower-case hex SHA-256 of `bytes`.
[[nodiscard]] std::string sha256_hex(ByteView bytes);

}  // namespace cotter
