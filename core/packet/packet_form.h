// What makes a bag one of our packets: names, labels and order, shared by who writes and who checks. See FORMAT.md.
#pragma once

#include <string_view>

#include "core/packet/zip_writer.h"

namespace cotter::packet_form {

inline constexpr std::string_view kDeclaration = "bagit.txt";
inline constexpr std::string_view kInfo = "bag-info.txt";
inline constexpr std::string_view kManifest = "manifest-sha256.txt";
inline constexpr std::string_view kTagManifest = "tagmanifest-sha256.txt";
inline constexpr std::string_view kSignature = "tagmanifest-sha256.txt.sig";
inline constexpr std::string_view kJob = "data/job.json";

inline constexpr std::string_view kAgentPrefix = "Cotter ";  // of Bag-Software-Agent

// Labels of bag-info.txt. The first five are RFC 8493's.
inline constexpr std::string_view kDateLabel = "Bagging-Date";
inline constexpr std::string_view kAgentLabel = "Bag-Software-Agent";
inline constexpr std::string_view kOxumLabel = "Payload-Oxum";
inline constexpr std::string_view kJobLabel = "External-Identifier";          // the job's UUID
inline constexpr std::string_view kNameLabel = "Internal-Sender-Identifier";  // the packet's name = its top folder
inline constexpr std::string_view kTimeLabel = "Packing-Time";                // RFC 3339; the time of every entry
inline constexpr std::string_view kRevisionLabel = "Revision";                // 1, 2, …
inline constexpr std::string_view kPreviousLabel = "Previous-Revision-Tagmanifest-SHA256";

// Pictures and PDF are packed already; everything else is text.
[[nodiscard]] constexpr Packing packing_of(std::string_view path) {
    for (const std::string_view ending : {".jpg", ".png", ".pdf"})
        if (path.ends_with(ending)) return Packing::store;
    return Packing::deflate;
}

}  // namespace cotter::packet_form
