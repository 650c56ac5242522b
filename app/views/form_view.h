// A form of fields, for pages that record what a plate or a tag says. Plain values; no ImGui.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace cotter {

enum class FormKind { amount, choice, words, yes };

struct FormField {
    std::string id;  // unique on the page
    std::string label;
    FormKind form = FormKind::amount;
    std::vector<std::string> units;    // amount: UCUM codes, the usual one first
    bool fractions = false;            // amount: read in /8, /16 or /32
    std::vector<std::string> choices;  // choice: the labels, in order
    std::string hint;                  // words, yes
    bool not_known_counts = false;     // 'not known' is offered as an answer
};

struct FormRow {
    FormField field;
    std::string value;                  // as people read it; empty: not entered
    bool not_known = false;             // answered so
    std::optional<std::size_t> choice;  // which is set; yes: any value
    std::string doubt;                  // what is odd about it; empty: nothing
    std::string error;                  // what was typed cannot be so; empty: it can
};

}  // namespace cotter
