// data/job.json of a packet: every record of a job, with where its pictures lie. Format and version in FORMAT.md.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/survey/job.h"

namespace cotter {

inline constexpr std::string_view kJobFormat = "cotter-job";
inline constexpr int kJobMajor = 1;  // a reader refuses a higher one
inline constexpr int kJobMinor = 1;  // a reader takes a higher one and keeps what it does not know

// Where one shot lies in the packet. `cleaned`: private data was taken out of the copy.
struct PacketPhoto {
    Id<Shot> shot;
    std::string file;         // "photos/axle1-left_cap_before_01.jpg", below data/
    std::string tagged_file;  // the same with tags drawn in, or empty
    std::string sha256;       // of `file` as it lies in the packet
    bool cleaned = true;

    bool operator==(const PacketPhoto&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("shot", s.shot);
        f.must("file", s.file);
        f.may("tagged_file", s.tagged_file);
        f.must("sha256", s.sha256);
        f.must("cleaned", s.cleaned);
    }
};

struct JobDocument {
    int revision = 1;
    std::string previous_tagmanifest_sha256;  // of revision − 1; empty for the first
    std::vector<PacketPhoto> photos;
    Job job;
    bool newer = false;  // of a later minor version: the document holds what is not here
};

[[nodiscard]] std::string job_document_json(const JobDocument& document);

// Reads what keeps to the published schema, and of this minor version nothing that is not in it. Fails `not_ours` for
// other JSON, `too_new` for a higher major, else `refused` or `damaged`; the line names the place in the document. Of a
// later minor version what is not known here is left out: fields, kinds of record, and records with words that are not
// known.
[[nodiscard]] Result<JobDocument> job_document_from_json(std::string_view json);

// The published schema of job.json, as assets/schema holds it.
[[nodiscard]] std::string job_schema_text();

// File names for all shots of a job, in the job's order: <place>_<slot>_<stage>_<nn>.<jpg|png>, nn counted from 01
// among shots of the same place, slot and stage. Tagged file only for shots with tags; sha256 left empty.
[[nodiscard]] std::vector<PacketPhoto> name_photos(const Job& job);

}  // namespace cotter
