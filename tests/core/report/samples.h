// Jobs to print: a usual one with every kind of record, and one made to break the layout.
#pragma once

#include "core/report/report.h"

namespace cotter::test {

[[nodiscard]] Job full_job();  // signed off, amended, with accents and symbols, something not accessible
// Work led step by step, with a step passed without proof; a quote that was offered and one that was only drafted. The
// trailer has hydraulic brakes, and nobody entered how they are actuated.
[[nodiscard]] Job led_job();
[[nodiscard]] Job hostile_job();  // a note of 10,000 characters, 200 photos, emoji, right-to-left, bad UTF-8, no spaces
// The sample job as a periodic inspection with every field and item of the form answered; one item was repaired, one
// does not pass.
[[nodiscard]] Job inspected_job(std::span<const InspectionItem> items);

// A real JPEG of that size in one colour.
[[nodiscard]] ReportPicture plain_picture(int width, int height);

// Inputs with plain pictures; the fonts stay to be filled in.
[[nodiscard]] ReportInputs plain_inputs();

}  // namespace cotter::test
