// A screen that is driven by a script instead of hands: what a platform offers to the driver. One thread.
#pragma once

#include "app/ui/ui_stage.h"
#include "core/base/bytes.h"
#include "core/base/error.h"

namespace cotter {

class DriverHost {
public:
    virtual ~DriverHost() = default;
    virtual UiStage& stage() = 0;
    virtual void frame(double now_s) = 0;                                  // draws one
    virtual Result<Bytes> picture() = 0;                                   // the last frame as PNG
    virtual Result<> resize(float width, float height, double now_s) = 0;  // dp
};

}  // namespace cotter
