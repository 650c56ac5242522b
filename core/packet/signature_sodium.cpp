// The only file that includes libsodium. All numbers in SSH formats are big-endian and lengths come before bytes.
#include "core/packet/signature.h"

#include <algorithm>
#include <optional>

#include <sodium.h>

#include "core/base/hash.h"

namespace cotter {

namespace {

constexpr std::string_view kKeyType = "ssh-ed25519";
constexpr std::string_view kSignatureMagic = "SSHSIG";
constexpr std::string_view kHash = "sha512";
constexpr std::string_view kPrivateMagic{"openssh-key-v1\0", 15};
constexpr std::size_t kLineWidth = 70;

// ---- SSH's wire format

class SshWriter {
public:
    SshWriter& raw(std::string_view text) {
        out_.insert(out_.end(), text.begin(), text.end());
        return *this;
    }
    SshWriter& number(std::uint32_t value) {
        for (int shift = 24; shift >= 0; shift -= 8) out_.push_back(static_cast<std::uint8_t>(value >> shift));
        return *this;
    }
    SshWriter& text(std::string_view text) { return number(static_cast<std::uint32_t>(text.size())).raw(text); }
    SshWriter& bytes(ByteView bytes) { return text(as_text(bytes)); }
    [[nodiscard]] const Bytes& out() const { return out_; }

private:
    Bytes out_;
};

// Reads; anything missing makes it bad for good.
class SshReader {
public:
    explicit SshReader(ByteView bytes) : bytes_(bytes) {}
    void expect(std::string_view raw) {
        const bool there = bytes_.size() >= raw.size() && as_text(bytes_.first(raw.size())) == raw;
        if (there)
            bytes_ = bytes_.subspan(raw.size());
        else
            bad_ = true;
    }
    std::uint32_t number() {
        if (bytes_.size() < 4) return spoil(), 0;
        std::uint32_t value = 0;
        for (int i = 0; i < 4; ++i) value = value << 8 | bytes_[static_cast<std::size_t>(i)];
        bytes_ = bytes_.subspan(4);
        return value;
    }
    ByteView bytes() {
        const std::size_t size = number();
        if (size > bytes_.size()) return spoil(), ByteView{};
        const ByteView out = bytes_.first(size);
        bytes_ = bytes_.subspan(size);
        return out;
    }
    void expect_text(std::string_view text) {
        if (as_text(bytes()) != text) spoil();
    }
    [[nodiscard]] ByteView rest() const { return bytes_; }
    [[nodiscard]] bool good() const { return !bad_; }

private:
    void spoil() { bad_ = true; }
    ByteView bytes_;
    bool bad_ = false;
};

std::string base64(ByteView bytes, int variant = sodium_base64_VARIANT_ORIGINAL) {
    std::string out(sodium_base64_encoded_len(bytes.size(), variant), '\0');
    sodium_bin2base64(out.data(), out.size(), bytes.data(), bytes.size(), variant);
    out.pop_back();  // its zero byte
    return out;
}

Bytes from_base64(std::string_view text) {
    Bytes out(text.size() / 4 * 3 + 3);
    std::size_t size = 0;
    if (sodium_base642bin(out.data(), out.size(), text.data(), text.size(), "\n", &size, nullptr,
                          sodium_base64_VARIANT_ORIGINAL) != 0)
        return {};
    out.resize(size);
    return out;
}

std::string armor(std::string_view kind, ByteView bytes) {
    std::string out = "-----BEGIN " + std::string(kind) + "-----\n";
    const std::string text = base64(bytes);
    for (std::size_t at = 0; at < text.size(); at += kLineWidth) out += text.substr(at, kLineWidth) + "\n";
    return out + "-----END " + std::string(kind) + "-----\n";
}

// The bytes between the two lines; empty when the text is not exactly what armor() writes for them.
Bytes unarmor(std::string_view kind, std::string_view text) {
    const auto body = text.find('\n');
    const auto end = text.rfind("-----END ");
    if (body == std::string_view::npos || end == std::string_view::npos || end < body) return {};
    Bytes bytes = from_base64(text.substr(body + 1, end - body - 1));
    return armor(kind, bytes) == text ? bytes : Bytes{};
}

Bytes public_blob(ByteView key) {
    return SshWriter().text(kKeyType).bytes(key).out();
}

std::string fingerprint_of(ByteView blob) {
    Hasher hasher;
    hasher.add(blob);
    return "SHA256:" + base64(hasher.finish(), sodium_base64_VARIANT_ORIGINAL_NO_PADDING);
}

// What is really signed: the namespace and a digest of the message.
Bytes to_be_signed(ByteView message, std::string_view name_space) {
    Hasher hasher(HashKind::sha512);
    hasher.add(message);
    return SshWriter().raw(kSignatureMagic).text(name_space).text("").text(kHash).bytes(hasher.finish()).out();
}

}  // namespace

Result<DeviceKey> DeviceKey::from_seed(ByteView seed, const std::string& comment) {
    if (sodium_init() < 0) return fail(Errc::io, "the signing library cannot start");
    if (seed.size() != crypto_sign_SEEDBYTES) return fail(Errc::refused, "a key seed has 32 bytes");
    DeviceKey key;
    crypto_sign_seed_keypair(key.public_.data(), key.secret_.data(), seed.data());
    key.comment_ = comment;
    return key;
}

std::string DeviceKey::sign(ByteView message, std::string_view name_space) const {
    const Bytes text = to_be_signed(message, name_space);
    std::array<std::uint8_t, crypto_sign_BYTES> signature{};
    crypto_sign_detached(signature.data(), nullptr, text.data(), text.size(), secret_.data());
    const Bytes blob = SshWriter().text(kKeyType).bytes(signature).out();
    return armor("SSH SIGNATURE", SshWriter()
                                      .raw(kSignatureMagic)
                                      .number(1)
                                      .bytes(public_blob(public_))
                                      .text(name_space)
                                      .text("")
                                      .text(kHash)
                                      .bytes(blob)
                                      .out());
}

std::string DeviceKey::public_line() const {
    return std::string(kKeyType) + " " + base64(public_blob(public_)) + " " + comment_;
}

std::string DeviceKey::fingerprint() const {
    return fingerprint_of(public_blob(public_));
}

Bytes DeviceKey::private_file(ByteView check) const {
    SshWriter inner;
    inner.raw(as_text(check)).raw(as_text(check)).text(kKeyType).bytes(public_).bytes(secret_).text(comment_);
    std::string padded(as_text(inner.out()));
    for (char pad = 1; padded.size() % 8 != 0; ++pad) padded += pad;
    const Bytes whole = SshWriter()
                            .raw(kPrivateMagic)
                            .text("none")
                            .text("none")
                            .text("")
                            .number(1)
                            .bytes(public_blob(public_))
                            .text(padded)
                            .out();
    return to_bytes(armor("OPENSSH PRIVATE KEY", whole));
}

Result<DeviceKey> DeviceKey::parse_private(std::string_view text, const std::string& path) {
    const Bytes whole = unarmor("OPENSSH PRIVATE KEY", text);
    SshReader r(whole);
    r.expect(kPrivateMagic);
    for (const char* none : {"none", "none", ""}) r.expect_text(none);
    if (r.number() != 1) r.expect("bad");
    (void)r.bytes();
    SshReader inner(r.bytes());
    const bool same_check = inner.number() == inner.number();
    inner.expect_text(kKeyType);
    const ByteView stated = inner.bytes();
    const ByteView secret = inner.bytes();
    const std::string comment(as_text(inner.bytes()));
    if (!r.good() || !inner.good() || !same_check || secret.size() != crypto_sign_SECRETKEYBYTES)
        return fail(Errc::damaged, "this is not an unencrypted ed25519 key of OpenSSH", path,
                    "put the right key back, or move this file away to have a new key made");
    COTTER_ASSIGN(DeviceKey key, from_seed(secret.first(crypto_sign_SEEDBYTES), comment));
    if (!std::ranges::equal(stated, key.public_) || !std::ranges::equal(secret, key.secret_))
        return fail(Errc::damaged, "the two halves of this key do not belong together", path, "put the right key back");
    return key;
}

Result<DeviceKey> DeviceKey::make(Files& files, Random& random, const std::string& path, const std::string& comment) {
    std::array<std::uint8_t, crypto_sign_SEEDBYTES> seed{};
    std::array<std::uint8_t, 4> check{};
    random.fill(seed);
    random.fill(check);
    auto key = from_seed(seed, comment);
    sodium_memzero(seed.data(), seed.size());
    if (!key) return key;
    COTTER_TRY(files.make_folders(parent_folder(path)));
    COTTER_TRY(replace_file(files, path, key->private_file(check), true));
    return key;
}

Result<DeviceKey> DeviceKey::load_or_make(Files& files, Random& random, const std::string& path,
                                          const std::string& comment) {
    constexpr std::uint64_t largest = 64 * 1024;
    const auto there = files.info(path);
    if (!there && there.error().code != Errc::not_found) return unexpected(there.error());
    std::optional<DeviceKey> key;
    if (there) {
        COTTER_ASSIGN(const Bytes text, read_file(files, path, largest));
        COTTER_ASSIGN(key, parse_private(as_text(text), path));
    } else {
        COTTER_ASSIGN(key, make(files, random, path, comment));
    }
    const std::string public_path = path + ".pub";  // missing too when power was lost between the two
    const auto beside = files.info(public_path);
    if (!beside && beside.error().code != Errc::not_found) return unexpected(beside.error());
    if (!beside) COTTER_TRY(replace_file(files, public_path, as_bytes(key->public_line() + "\n")));
    return *key;
}

Result<SignedBy> verify_signature(std::string_view armored, ByteView message, std::string_view name_space) {
    if (sodium_init() < 0) return fail(Errc::io, "the signing library cannot start");
    const Bytes whole = unarmor("SSH SIGNATURE", armored);
    SshReader r(whole);
    r.expect(kSignatureMagic);
    if (r.number() != 1) r.expect("bad");
    const ByteView key_blob = r.bytes();
    const std::string_view space = as_text(r.bytes());
    r.expect_text("");
    r.expect_text(kHash);
    SshReader signature_blob(r.bytes());
    SshReader key(key_blob);
    key.expect_text(kKeyType);
    const ByteView public_key = key.bytes();
    signature_blob.expect_text(kKeyType);
    const ByteView signature = signature_blob.bytes();
    const bool whole_read = r.rest().empty() && key.rest().empty() && signature_blob.rest().empty();
    if (!r.good() || !key.good() || !signature_blob.good() || !whole_read ||
        public_key.size() != crypto_sign_PUBLICKEYBYTES || signature.size() != crypto_sign_BYTES)
        return fail(Errc::damaged, "the signature is not an SSH signature by an ed25519 key with sha512");
    if (space != name_space) return fail(Errc::refused, "the signature was made for another purpose");
    const Bytes text = to_be_signed(message, name_space);
    if (crypto_sign_verify_detached(signature.data(), text.data(), text.size(), public_key.data()) != 0)
        return fail(Errc::refused, "the signature does not fit: what was signed has been changed");
    return SignedBy{std::string(kKeyType) + " " + base64(key_blob), fingerprint_of(key_blob)};
}

}  // namespace cotter
