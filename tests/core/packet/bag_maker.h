// Small packets and bags made in memory, for the tests of the check.
#pragma once

#include <map>
#include <string>

#include "core/base/hash.h"
#include "core/packet/check.h"
#include "core/packet/zip_writer.h"
#include "tests/support/memory_files.h"

namespace cotter::test {

// Path below the top folder → bytes.
using BagTexts = std::map<std::string, std::string>;

// A whole packet of ours around the sample job, signed with a fixed key, without pictures.
[[nodiscard]] BagTexts our_packet();

// A plain bag of another program: version, algorithm and payload as given, no bag-info.
[[nodiscard]] BagTexts plain_bag(const std::string& version, HashKind kind, const BagTexts& payload);

// The same files as one zip with the top folder "bag", as our own writer makes it.
[[nodiscard]] Bytes zipped(const BagTexts& texts);

// One zip of the entries as they are, valid or not.
struct BagEntry {
    std::string name;
    std::string text = "x";
};
[[nodiscard]] Bytes zip_of(const std::vector<BagEntry>& entries, Packing packing = Packing::store);

// check() of these bytes as a zip.
[[nodiscard]] CheckReport check_bytes(ByteView zip, const ZipLimits& limits = {});
// check() of these files as a folder.
[[nodiscard]] CheckReport check_folder(const BagTexts& texts);

// The first error, "where: what", or the empty text.
[[nodiscard]] std::string first_error(const CheckReport& report);

}  // namespace cotter::test
