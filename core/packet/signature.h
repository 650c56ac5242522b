// SSH signatures (PROTOCOL.sshsig of OpenSSH) with an Ed25519 device key, as ssh-keygen -Y makes and checks them.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "core/base/files.h"
#include "core/base/ports.h"

namespace cotter {

inline constexpr std::string_view kPacketNamespace = "cotter-packet";

// The key that signs what leaves this device. Any thread once made.
class DeviceKey {
public:
    // The key in `path`, an unencrypted OpenSSH private key of type ssh-ed25519; made there (mode 0600, with
    // `path`.pub beside it, folders too) when there is none. Fails `damaged` for any other content.
    [[nodiscard]] static Result<DeviceKey> load_or_make(Files& files, Random& random, const std::string& path,
                                                        const std::string& comment);
    // The same key for the same 32 bytes. For tests and for the demo, whose key is no secret.
    [[nodiscard]] static Result<DeviceKey> from_seed(ByteView seed, const std::string& comment);

    // The armored signature over `message`; the same every time.
    [[nodiscard]] std::string sign(ByteView message, std::string_view name_space) const;
    [[nodiscard]] std::string public_line() const;  // "ssh-ed25519 AAAA… comment"
    [[nodiscard]] std::string fingerprint() const;  // "SHA256:…" as ssh-keygen -l prints it

private:
    DeviceKey() = default;
    [[nodiscard]] Bytes private_file(ByteView check) const;
    static Result<DeviceKey> make(Files& files, Random& random, const std::string& path, const std::string& comment);
    static Result<DeviceKey> parse_private(std::string_view text, const std::string& path);
    std::array<std::uint8_t, 64> secret_{};  // seed, then public key
    std::array<std::uint8_t, 32> public_{};
    std::string comment_;
};

struct SignedBy {
    std::string public_key;   // "ssh-ed25519 AAAA…"
    std::string fingerprint;  // "SHA256:…"
};

// Who signed `message`. Fails `refused` when the signature is not for these bytes or another namespace, `damaged` when
// it is not a signature in exactly the form that sign() and ssh-keygen write.
[[nodiscard]] Result<SignedBy> verify_signature(std::string_view armored, ByteView message,
                                                std::string_view name_space);

}  // namespace cotter
