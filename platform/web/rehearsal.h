// The start of the app without a page to start in, for a worker: a browser compiles each function of a program when it
// is first called, which takes a third of a phone's start. What was called here the page finds compiled.
#pragma once

namespace cotter {

// Opens the book as it lies in this memory, or makes one, and draws a frame of it to nowhere. `width` and `height` in
// dp. That something of it fails is no matter.
void rehearse(float width, float height, float px_per_dp);

}  // namespace cotter
