// Whose keys the office trusts: an allowed_signers file as ssh-keygen(1) describes it. Pure; any thread.
//
// One key a line: principals, options, key type, key. Principals are patterns (* and ?, ! for 'not') separated by
// commas, in double quotes when there are blanks in them; here they are technicians' names as packets bear them,
// compared folded. Options: namespaces="…", valid-after="…", valid-before="…" (YYYYMMDD[HHMM[SS]][Z], without Z as
// UTC), cert-authority. Lines that begin with # and empty ones are skipped.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/time.h"

namespace cotter::ledger {

struct TrustedKey {
    int line = 0;
    std::vector<std::string> principals;                    // patterns, folded
    std::string key;                                        // "ssh-ed25519 AAAA…"
    std::vector<std::string> namespaces;                    // patterns; empty: all
    std::optional<std::int64_t> valid_after, valid_before;  // Unix seconds
};

enum class Trust { not_listed, listed, other_name, lapsed };

struct TrustList {
    std::vector<TrustedKey> keys;

    // How the list takes a signature in the packets' namespace by `key` for `technician`, handed over `at`.
    [[nodiscard]] Trust judge(std::string_view technician, std::string_view key, const Instant& at) const;
    // Does it name this technician at all?
    [[nodiscard]] bool names(std::string_view technician) const;
};

// Refused with the line's number for a line that ssh-keygen would not read either. Keys of other types than
// ssh-ed25519 and lines of certificate authorities are read and never match, as packets are not signed by them.
[[nodiscard]] Result<TrustList> parse_allowed_signers(std::string_view text);

}  // namespace cotter::ledger
