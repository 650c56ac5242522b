// Small packets and bags made in memory, for the tests of the box.
#pragma once

#include <map>
#include <string>

#include "core/packet/check.h"
#include "core/packet/seal.h"
#include "tests/support/memory_files.h"

namespace cotter::test {

// Path below the top folder → bytes.
using BagTexts = std::map<std::string, std::string>;

[[nodiscard]] DeviceKey test_key();
[[nodiscard]] PacketFace test_face();

// A whole packet of ours, sealed with the test key: a job document that only looks like one, a table, a "picture".
[[nodiscard]] Bytes our_zip(const PacketFace& face = test_face());
// Its files, without the archive around them.
[[nodiscard]] BagTexts our_packet();

// A plain bag of another program: version, algorithm and payload as given, no bag-info.
[[nodiscard]] BagTexts plain_bag(const std::string& version, HashKind kind, const BagTexts& payload);

// One line of a manifest of these bytes.
[[nodiscard]] std::string listed(HashKind kind, const std::string& path, const std::string& text);

// The same files as one zip with the top folder "bag".
[[nodiscard]] Bytes zipped(const BagTexts& texts);

// check() of these bytes as a zip, and of these files as a folder named "bag".
[[nodiscard]] CheckReport check_bytes(ByteView zip, const ZipLimits& limits = {}, const CheckHooks& hooks = {});
[[nodiscard]] CheckReport check_folder(const BagTexts& texts, const CheckHooks& hooks = {});

// The first reason of that weight, "where: what", or the empty text.
[[nodiscard]] std::string first(const CheckReport& report, Weight weight);
[[nodiscard]] inline std::string first_error(const CheckReport& report) {
    return first(report, Weight::error);
}
[[nodiscard]] inline std::string first_warning(const CheckReport& report) {
    return first(report, Weight::warning);
}

}  // namespace cotter::test
