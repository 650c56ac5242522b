// Signed packets of the invented office, good ones and bad ones, without the cost of reports. For tests and benches.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <functional>
#include <map>

#include "core/packet/job_document.h"
#include "core/packet/signature.h"
#include "tests/support/office_jobs.h"

namespace cotter::test {

// The value; ends the program where making test data failed.
template <class T>
T sure(Result<T> result) {
    if (!result) {
        std::fprintf(stderr, "test data: %s\n", result.error().line().c_str());
        std::abort();
    }
    if constexpr (!std::is_void_v<T>) return std::move(*result);
}

// A technician's key, always the same for the same name.
[[nodiscard]] DeviceKey office_key(const std::string& name);
// An allowed_signers file with all of the office's technicians.
[[nodiscard]] std::string office_signers();

// A real JPEG of about that size that no other has.
class PhotoMaker {
public:
    explicit PhotoMaker(int kilobytes);
    [[nodiscard]] Bytes photo(int number, int part) const;

private:
    Bytes base_;
};

// What a packet is made of, so that tests may change it before it is sealed.
struct PacketParts {
    JobDocument document;
    std::map<std::string, Bytes> photos;            // by path below data/
    std::string signer;                             // whose key; at first the technician's
    int revision = 1;                               // of bag-info.txt
    std::function<void(std::string&)> change_json;  // the text of job.json
    std::string more_file;                          // a further payload file
};
[[nodiscard]] PacketParts office_parts(const Job& job, int number, const PhotoMaker& photos);
// The next revision of a packet whose fingerprint is `previous`.
[[nodiscard]] PacketParts revised(PacketParts parts, const std::string& previous);

struct SealedPacket {
    std::string name;
    Bytes zip;
    std::string fingerprint;
};
[[nodiscard]] SealedPacket seal(const PacketParts& parts);
[[nodiscard]] SealedPacket office_packet(int number, const OfficeShape& shape, const PhotoMaker& photos);

// A packet that must be refused: as a zip, or as the files of a folder, and what the reason must say.
struct BadPacket {
    std::string kind;
    std::string says;                    // a part of the reason
    Bytes zip;                           // empty: see files
    std::map<std::string, Bytes> files;  // below the folder
};
inline constexpr int kBadKinds = 25;
[[nodiscard]] BadPacket bad_packet(int kind, int number, const OfficeShape& shape, const PhotoMaker& photos);

}  // namespace cotter::test
