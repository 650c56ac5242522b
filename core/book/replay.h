// Replaying a file of edits, one a line, into a book. Any thread, one replay per book at a time.
#pragma once

#include <functional>
#include <string>

#include "core/book/book.h"
#include "core/photo/vault.h"

namespace cotter {

struct Replayed {
    std::size_t edits = 0;   // lines committed
    std::size_t photos = 0;  // pictures taken into the vault
    JobId job;               // of the last line
};

// Told after each line; returns false to stop (the error is then `cancelled`).
using ReplayProgress = std::function<bool(std::size_t done, std::size_t total)>;

// Commits every line of `path` in turn. A line is an edit's JSON form; a put of a shot may name its picture beside
// its value ("photo_file":"photos/x.jpg", taken from the edits file's folder), which is then taken into the vault and
// fills the shot's `photo`. All lines are read and understood before the first is committed, so that a cut or
// mistyped file changes nothing. A line that the job itself refuses stops the replay with its number; the lines
// before it stay.
[[nodiscard]] Result<Replayed> replay(Book& book, PhotoVault& vault, Files& files, const std::string& path,
                                      const ReplayProgress& progress);

// The photo record of a picture that is in the vault.
[[nodiscard]] PhotoRef photo_ref(const Stored& stored);

}  // namespace cotter
