// The guard that everything coming in passes: is this packet whole, unchanged, signed, and what it says it is?
// Works on any BagIt bag, folder or zip; more is asked of packets that Cotter made. Any thread.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/fields.h"
#include "core/base/ports.h"
#include "core/packet/bag_source.h"

namespace cotter {

enum class Weight { note, warning, error };
constexpr auto names(Weight) { return name_list("note", "warning", "error"); }

struct Reason {
    Weight weight = Weight::error;
    std::string where;  // the file or manifest it is about; may be empty
    std::string what;
    bool operator==(const Reason&) const = default;
};

enum class Verdict { valid, valid_with_warnings, invalid };
constexpr auto names(Verdict) { return name_list("valid", "valid with warnings", "invalid"); }

struct CheckReport {
    Verdict verdict = Verdict::invalid;
    std::vector<Reason> reasons;  // notes never change the verdict
    bool ours = false;            // a packet made by Cotter, not just any bag
    std::string bag_version;      // "1.0"
    std::vector<std::string> algorithms;
    std::string job;              // UUID, from bag-info
    int revision = 0;             // from job.json; 0 when unknown
    std::string previous_tagmanifest_sha256;
    std::string tagmanifest_sha256;  // the packet's fingerprint
    std::string signer_key;          // "ssh-ed25519 AAAA…"; empty when not signed
    std::string signer_fingerprint;
    std::size_t files = 0;
    std::uint64_t bytes = 0;
    Bytes job_json;  // as checked, for whoever takes the packet in; empty when there is none
};

// What the check cannot know by itself.
struct CheckHooks {
    // Is this really a picture within bounds?
    std::function<Result<>(const std::string& path, ByteView bytes)> image;
};

[[nodiscard]] CheckReport check(Files& files, Workers& workers, const std::string& path, const CheckHooks& hooks,
                                const ZipLimits& limits = {});

}  // namespace cotter
