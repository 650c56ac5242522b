// The jobs of an invented office, as many as wanted: the same number gives the same job. For tests and benches.
#pragma once

#include "core/survey/job.h"

namespace cotter::test {

struct OfficeShape {
    int trailers = 100;  // job i is visit i / trailers to trailer i % trailers
    int photos = 2;      // before-and-after pairs count as two
};

// Signed off, with readings that wear from visit to visit, findings, tightenings, levels and a quote, partly accepted.
// Its shots name no photos yet.
[[nodiscard]] Job office_job(int number, const OfficeShape& shape);

// An id made of a number and what it is for.
[[nodiscard]] Uuid office_id(int number, int part);
[[nodiscard]] std::string office_technician(int number);

}  // namespace cotter::test
