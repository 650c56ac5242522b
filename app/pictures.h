// Gives the platform the pictures that screens ask for, decoded beside the screen from the vault's small copies.
// The frame's thread only. A picture's id is the photo's SHA-256.
#pragma once

#include "app/tasks.h"
#include "app/ui/ui_ports.h"
#include "core/photo/vault.h"

namespace cotter {

class PictureServer {
public:
    // All of them outlive the tasks it starts.
    PictureServer(PictureStore& store, PhotoVault& vault, TaskRunner& tasks)
        : store_(store), vault_(vault), tasks_(tasks) {}

    void serve();  // once a frame, after drawing

private:
    PictureStore& store_;
    PhotoVault& vault_;
    TaskRunner& tasks_;
};

}  // namespace cotter
