// The quote for the customer, on the turned phone. What goes out: the offer, answers as they are given, the signature.
#pragma once

#include "app/command.h"
#include "app/ui/sign_pad.h"
#include "app/ui/ui.h"
#include "app/views/customer_view.h"

namespace cotter {

struct CustomerState {
    bool signing = false;
    SignPadState pad;
};

void draw_customer(UiContext& ui, const CustomerView& view, CustomerState& state, Commands& out);

}  // namespace cotter
