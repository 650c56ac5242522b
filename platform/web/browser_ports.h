// A browser's answers to core's and the app's ports. The page's thread or the worker's.
#pragma once

#include <memory>
#include <string>

#include "app/device.h"
#include "app/long_work.h"
#include "core/base/files.h"
#include "core/base/ports.h"

namespace cotter {

// Photos, packets and what was chosen lie outside the program's memory, as blobs of the browser; all else in memory, of
// which the page keeps copies. Which is which is told by the folder: see blob_path().
[[nodiscard]] std::unique_ptr<Files> make_browser_files();
[[nodiscard]] bool blob_path(const std::string& path);

[[nodiscard]] std::unique_ptr<Clock> make_browser_clock();    // with the UTC offset of that moment
[[nodiscard]] std::unique_ptr<Random> make_browser_random();  // the browser's, fit for keys
[[nodiscard]] std::unique_ptr<Device> make_browser_device();

inline constexpr const char* kBookFolder = "/book";
inline constexpr const char* kShareFolder = "/share";
inline constexpr const char* kLettersFile = "/letters/kept";  // of an earlier start: see app/ui/kept_letters.h
inline constexpr std::uint64_t kMostLetters = 16 << 20;       // its bytes at most

}  // namespace cotter
