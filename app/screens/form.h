// A form of fields: figures by the keypad, choices by a sheet, words by the keyboard, switches. For pages that record
// what a plate or a tag says.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>

#include "app/command.h"
#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"
#include "app/views/form_view.h"

namespace cotter {

struct FormState {
    std::string asking;  // the field that is being keyed or chosen; empty: none
    std::optional<KeypadModel> pad;
};

// What was entered into a field: exactly one of them.
struct FormEntry {
    const FormRow* row = nullptr;
    std::optional<Amount> amount;
    std::optional<std::size_t> choice;
    std::optional<std::string> words;
    bool not_known = false;
};
using FormSink = std::function<void(const FormEntry&)>;

// The rows, in the body of a screen.
void draw_form(UiContext& ui, std::span<const FormRow> rows, const Drafts& drafts, FormState& state,
               const FormSink& sink, Commands& out);
// The keypad or the choices of the field that is asked for, over the screen.
void draw_form_sheet(UiContext& ui, std::span<const FormRow> rows, FormState& state, const FormSink& sink);

}  // namespace cotter
