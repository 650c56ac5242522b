// The pieces that check() is put together from. Private to the box.
#pragma once

#include <map>
#include <optional>

#include "core/packet/bag.h"
#include "core/packet/check.h"

namespace cotter {

// Collects reasons; after the first few hundred only counts, so that a hostile bag cannot fill memory with them.
class Reasons {
public:
    explicit Reasons(CheckReport& report) : report_(report) {}
    void add(Weight weight, std::string_view where, std::string what);
    void add(Weight weight, std::string_view where, const Error& error);  // its own `where` when it has one
    [[nodiscard]] bool good() const { return worst_ != Weight::error; }
    void close();  // says how many were left out and sets the verdict

private:
    CheckReport& report_;
    Weight worst_ = Weight::note;
    std::size_t left_out_ = 0;
};

// The tag files, read once; what is checked later is these bytes, not what a file may hold by then.
struct TagFiles {
    BagDeclaration declaration;
    BagInfo info;
    std::vector<Manifest> manifests;
    std::map<std::size_t, Bytes> held;  // by file number
    [[nodiscard]] const Bytes* bytes_of(const BagSource& bag, std::string_view path) const;
};

// What the one pass over a file found out.
struct FileFacts {
    std::map<HashKind, std::string> digests;
    std::optional<Error> unreadable;
    std::optional<Error> bad_picture;
    bool packed_otherwise = false;  // a deflated entry that our own writer would have packed in other bytes
    Bytes kept;
};

// ---- bag_rules.cpp: what the standard asks of any bag

// False when nothing more can be said about this bag.
[[nodiscard]] bool read_tag_files(const BagSource& bag, TagFiles& tags, Reasons& reasons);
// Everything listed is there and everything there is listed. `ours`: reasons that check_form gives are left to it.
void check_complete(const BagSource& bag, const TagFiles& tags, bool ours, Reasons& reasons);
void check_digests(const BagSource& bag, const TagFiles& tags, const std::vector<FileFacts>& facts, Reasons& reasons);

// ---- check_ours.cpp: what is asked of packets of ours beyond that

[[nodiscard]] bool is_ours(const BagSource& bag, const TagFiles& tags);
// Signature, labels of bag-info.txt, names and order of the files, headers of the archive; fills the report's facts.
void check_form(const BagSource& bag, const TagFiles& tags, CheckReport& report, Reasons& reasons);
// The job document against its schema, the bag around it, and the pictures it names.
void check_job(const BagSource& bag, const CheckHooks& hooks, std::vector<FileFacts>& facts, CheckReport& report,
               Reasons& reasons);

}  // namespace cotter
