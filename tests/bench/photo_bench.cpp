// Takes one photo into a vault in a new folder, as the app does, and says what came of it. photo_bench.py times it.
#include <cstdio>

#include "core/photo/vault.h"
#include "platform/desktop/ports.h"

int main(int argc, char** argv) {
    using namespace cotter;
    if (argc != 3) {
        std::fputs("use: photo_bench FOLDER PHOTO\n", stderr);
        return 2;
    }
    const auto files = make_system_files();
    const auto workers = make_thread_workers();
    const auto bytes = read_file(*files, argv[2], kMostPhotoBytes);
    if (!bytes) {
        std::fprintf(stderr, "%s\n", bytes.error().line().c_str());
        return 1;
    }
    PhotoVault vault(*files, *workers, argv[1]);
    const auto stored = vault.take_in(*bytes);
    if (!stored) {
        std::fprintf(stderr, "%s\n", stored.error().line().c_str());
        return 1;
    }
    std::printf("%s %d x %d\n", stored->sha256.c_str(), stored->info.width, stored->info.height);
    return 0;
}
