// What is asked of packets that Cotter made, beyond being a valid bag. Called by check().
#pragma once

#include "core/packet/bag.h"
#include "core/packet/check.h"

namespace cotter {

inline constexpr std::string_view kTagManifest = "tagmanifest-sha256.txt";
inline constexpr std::string_view kSignatureFile = "tagmanifest-sha256.txt.sig";

// Signature, form of the archive, job document against schema and bag-info; adds reasons and facts to `report`.
void check_our_packet(const BagSource& bag, const BagInfo& info, CheckReport& report);

}  // namespace cotter
