// What is searched: the words of a job, folded and cut so that every way of typing them finds it. Pure; any thread.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/survey/job.h"

namespace cotter::ledger {

// A text of a job and what it is: "finding", "hub cap, below line".
struct Field {
    std::string name;
    std::string text;
    bool operator==(const Field&) const = default;
};

// Everything of a job that is searched, in the order in which a hit is explained: unit, plate, VIN, customer, place,
// technician, findings, parts, notes. Empty and repeated texts left out.
[[nodiscard]] std::vector<Field> searched_fields(const Job& job);

// The words that stand for these fields in the index, each once, sorted, one blank between. Words are runs of letters
// and digits; a number like NUR-07 is there whole (nur07) and in parts; of a VIN also its last 8, 6 and 4.
[[nodiscard]] std::string index_words(const std::vector<Field>& fields);

// The words that somebody typed, at most 8 of at most 40 bytes.
[[nodiscard]] std::vector<std::string> typed_words(std::string_view text);

// The first field in which a word begins with `word`, cut to about 120 characters around it; an empty field when none.
[[nodiscard]] Field where_found(const std::vector<Field>& fields, std::string_view word);

// Fields as one text and back: "name\ttext\n" each.
[[nodiscard]] std::string fields_text(const std::vector<Field>& fields);
[[nodiscard]] std::vector<Field> fields_from_text(std::string_view text);

// One line for comparing names: folded, blanks made one.
[[nodiscard]] std::string name_key(std::string_view text);
// For plates, VINs and units: folded, letters and digits only.
[[nodiscard]] std::string number_key(std::string_view text);

}  // namespace cotter::ledger
