// A book opened with all that packing a job needs: vault, device key, fonts. One thread.
#pragma once

#include <memory>
#include <string>

#include "app/cli/cli.h"
#include "core/book/book.h"
#include "core/packet/pack.h"
#include "core/photo/vault.h"

namespace cotter::cli {

struct Workshop {
    std::string folder;
    std::unique_ptr<Book> book;
    std::unique_ptr<PhotoVault> vault;
};

[[nodiscard]] Result<Workshop> open_workshop(Ports& ports, const std::string& folder, OpenMode mode);

// The visits before this job to the same trailer: those that the book holds of the same unit.
[[nodiscard]] Result<std::vector<Job>> earlier_visits(Book& book, const Job& job);

// Packs one job of the book into `out_folder` with `key` and files the revision in the book.
[[nodiscard]] Result<Packed> pack_job(Ports& ports, Workshop& workshop, const DeviceKey& key, const JobId& job,
                                      const std::string& out_folder, Paper paper);

}  // namespace cotter::cli
