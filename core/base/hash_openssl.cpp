// Digests by OpenSSL, which uses the CPU's SHA instructions. The only file that includes its headers.
#include "core/base/hash.h"

#include <openssl/evp.h>

namespace cotter {

namespace {
const EVP_MD* method(HashKind kind) {
    switch (kind) {
        case HashKind::md5:
            return EVP_md5();
        case HashKind::sha1:
            return EVP_sha1();
        case HashKind::sha512:
            return EVP_sha512();
        case HashKind::sha256:
            break;
    }
    return EVP_sha256();
}
}  // namespace

struct Hasher::State {
    EVP_MD_CTX* context = EVP_MD_CTX_new();
    State() = default;
    State(const State&) = delete;
    State& operator=(const State&) = delete;
    ~State() { EVP_MD_CTX_free(context); }
};

Hasher::Hasher(HashKind kind) : state_(std::make_unique<State>()) {
    EVP_DigestInit_ex(state_->context, method(kind), nullptr);
}
Hasher::~Hasher() = default;
Hasher::Hasher(Hasher&&) noexcept = default;
Hasher& Hasher::operator=(Hasher&&) noexcept = default;

void Hasher::add(ByteView bytes) {
    EVP_DigestUpdate(state_->context, bytes.data(), bytes.size());
}

Bytes Hasher::finish() {
    Bytes out(EVP_MAX_MD_SIZE);
    unsigned size = 0;
    EVP_DigestFinal_ex(state_->context, out.data(), &size);
    out.resize(size);
    return out;
}

}  // namespace cotter
