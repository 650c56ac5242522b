// The guard that everything coming in passes: is this packet whole, unchanged, signed, and what it says it is?
// Works on any BagIt bag, folder or zip; more is asked of packets that Cotter made. Any thread.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/base/fields.h"
#include "core/base/ports.h"
#include "core/packet/bag_source.h"

namespace cotter {

enum class Weight { note, warning, error };
constexpr auto names(Weight) {
    return name_list("note", "warning", "error");
}

struct Reason {
    Weight weight = Weight::error;
    std::string where;  // the file or manifest it is about; may be empty
    std::string what;
    bool operator==(const Reason&) const = default;
};

enum class Verdict { valid, valid_with_warnings, invalid };
constexpr auto names(Verdict) {
    return name_list("valid", "valid with warnings", "invalid");
}

struct CheckReport {
    Verdict verdict = Verdict::invalid;
    std::vector<Reason> reasons;  // in the order of the checks; notes never change the verdict
    bool ours = false;            // a packet made by Cotter, not just any bag
    std::string bag_version;      // "1.0"
    std::vector<std::string> algorithms;
    std::string job;   // UUID, from bag-info
    int revision = 0;  // from bag-info; 0 when unknown
    std::string previous_tagmanifest_sha256;
    std::string tagmanifest_sha256;  // the packet's fingerprint; empty when there is no such tag manifest
    std::string signer_key;          // "ssh-ed25519 AAAA…"; empty when not signed
    std::string signer_fingerprint;  // "SHA256:…" as OpenSSH prints it
    std::size_t files = 0;           // of the payload
    std::uint64_t bytes = 0;
    Bytes job_json;  // as checked, for whoever takes the packet in; empty when there is none
};

// What a job document says of itself, to be held against the bag around it.
struct JobFacts {
    std::string job;  // UUID
    int revision = 1;
    std::string previous_tagmanifest_sha256;
    std::vector<std::string> pictures;                           // paths below data/ that it names
    std::vector<std::pair<std::string, std::string>> digests{};  // of those whose SHA-256 it says: path, hex
};

// What the box cannot know by itself. Each may be left empty: then that is not done.
struct CheckHooks {
    // Is this really a picture within bounds? Called on several threads, only for files whose checksums are right.
    std::function<Result<>(const std::string& path, ByteView bytes)> image{};
    // Does a job document of ours keep to its schema, and what does it say? Never called for bags of others.
    std::function<Result<JobFacts>(ByteView json)> job{};
    // Told of each picture of a packet of ours that was found good, with its SHA-256: for whoever keeps them should the
    // packet turn out valid. Called on several threads; a failure makes the packet invalid.
    std::function<Result<>(const std::string& path, const std::string& sha256, ByteView bytes)> kept{};
};

// Order: structure, names and sizes of the archive; tag files; completeness; signature and form; checksums; pictures;
// job document. The image and job hooks see nothing before all that stands earlier has been found good.
[[nodiscard]] CheckReport check(Files& files, Workers& workers, const std::string& path, const CheckHooks& hooks,
                                const ZipLimits& limits = {});

}  // namespace cotter
