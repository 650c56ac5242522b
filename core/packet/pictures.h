// The pictures of a packet: copies without private data and with their tags as regions, copies with tags drawn in,
// smaller ones for the report. Calls may run on several threads at once.
#pragma once

#include <optional>

#include "core/packet/job_document.h"
#include "core/packet/seal.h"
#include "core/photo/marks.h"
#include "core/photo/regions.h"
#include "core/photo/vault.h"
#include "core/report/report.h"

namespace cotter {

struct ReadyShot {
    SealedFile photo;
    std::optional<SealedFile> tagged;
    ReportPicture report;
    bool cleaned = true;
};

class PictureMaker {
public:
    // All must outlive it. `font`: a TrueType file for the marks' texts.
    PictureMaker(PhotoVault& vault, const Job& job, ByteView font) : vault_(vault), job_(job), font_(font) {}

    [[nodiscard]] Result<ReadyShot> ready(const Shot& shot, const PacketPhoto& names) const;

private:
    // Upright, tags drawn in, the smaller the more pictures there are.
    [[nodiscard]] Result<ReportPicture> for_report(const Shot& shot) const;
    [[nodiscard]] std::vector<PhotoRegion> regions_of(const Shot& shot) const;
    [[nodiscard]] std::vector<Mark> marks_of(const Shot& shot) const;
    [[nodiscard]] Result<Image> tagged_image(const Shot& shot, int max_side) const;

    PhotoVault& vault_;
    const Job& job_;
    ByteView font_;
};

}  // namespace cotter
