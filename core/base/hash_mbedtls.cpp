// Digests by mbedtls, in portable C, for platforms without OpenSSL. The only file that includes its headers.
#include "core/base/hash.h"

#include <mbedtls/md5.h>
#include <mbedtls/sha1.h>
#include <mbedtls/sha256.h>
#include <mbedtls/sha512.h>

#include <variant>

namespace cotter {

namespace {

// Each digest's functions under one name. Their return codes tell of hardware that failed; there is none.
struct Md5 : mbedtls_md5_context {
    static constexpr std::size_t kSize = 16;
    Md5() : mbedtls_md5_context{} {
        mbedtls_md5_init(this);
        mbedtls_md5_starts(this);
    }
    void add(ByteView bytes) { mbedtls_md5_update(this, bytes.data(), bytes.size()); }
    void finish(std::uint8_t* out) { mbedtls_md5_finish(this, out); }
};

struct Sha1 : mbedtls_sha1_context {
    static constexpr std::size_t kSize = 20;
    Sha1() : mbedtls_sha1_context{} {
        mbedtls_sha1_init(this);
        mbedtls_sha1_starts(this);
    }
    void add(ByteView bytes) { mbedtls_sha1_update(this, bytes.data(), bytes.size()); }
    void finish(std::uint8_t* out) { mbedtls_sha1_finish(this, out); }
};

struct Sha256 : mbedtls_sha256_context {
    static constexpr std::size_t kSize = 32;
    Sha256() : mbedtls_sha256_context{} {
        mbedtls_sha256_init(this);
        mbedtls_sha256_starts(this, 0);
    }
    void add(ByteView bytes) { mbedtls_sha256_update(this, bytes.data(), bytes.size()); }
    void finish(std::uint8_t* out) { mbedtls_sha256_finish(this, out); }
};

struct Sha512 : mbedtls_sha512_context {
    static constexpr std::size_t kSize = 64;
    Sha512() : mbedtls_sha512_context{} {
        mbedtls_sha512_init(this);
        mbedtls_sha512_starts(this, 0);
    }
    void add(ByteView bytes) { mbedtls_sha512_update(this, bytes.data(), bytes.size()); }
    void finish(std::uint8_t* out) { mbedtls_sha512_finish(this, out); }
};

using Digest = std::variant<Md5, Sha1, Sha256, Sha512>;

Digest digest(HashKind kind) {
    switch (kind) {
        case HashKind::md5:
            return Md5();
        case HashKind::sha1:
            return Sha1();
        case HashKind::sha512:
            return Sha512();
        case HashKind::sha256:
            break;
    }
    return Sha256();
}

}  // namespace

struct Hasher::State {
    Digest digest;
};

Hasher::Hasher(HashKind kind) : state_(std::make_unique<State>(State{digest(kind)})) {}
Hasher::~Hasher() = default;
Hasher::Hasher(Hasher&&) noexcept = default;
Hasher& Hasher::operator=(Hasher&&) noexcept = default;

void Hasher::add(ByteView bytes) {
    std::visit([&](auto& one) { one.add(bytes); }, state_->digest);
}

Bytes Hasher::finish() {
    return std::visit(
        [](auto& one) {
            Bytes out(one.kSize);
            one.finish(out.data());
            return out;
        },
        state_->digest);
}

}  // namespace cotter
