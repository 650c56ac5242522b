// What can be entered on the plate page: every figure and choice that decides what is looked at and what towing is
// judged by. One row of data a field; the page, its keypad and its choices are drawn from these. Pure; any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/views/form_view.h"
#include "core/survey/job.h"
#include "core/trade/point.h"

namespace cotter {

// What the page changes. The commands that record it are PutTrailer and PutVisit.
struct PlateData {
    Trailer trailer;
    Visit visit;
};

struct PlateSection {
    std::string title;
    std::vector<FormField> fields;
    std::size_t axle = 0;  // counted from 1; 0: of no axle
};

// Of this layout: the tow vehicle's weights only where they count, axle rows for each axle.
[[nodiscard]] std::vector<PlateSection> plate_sections(const PlateData& data);

// The value of a field as people read it; empty: not entered.
[[nodiscard]] std::string plate_value(const PlateData& data, const FormField& field);
// Which choice is set; none: not entered.
[[nodiscard]] std::optional<std::size_t> plate_choice(const PlateData& data, const FormField& field);
[[nodiscard]] bool plate_not_known(const PlateData& data, const FormField& field);

// The data with the field set. Setting it takes 'not known' back, and the other way round.
[[nodiscard]] PlateData with_amount(PlateData data, const FormField& field, const std::optional<Amount>& amount);
[[nodiscard]] PlateData with_choice(PlateData data, const FormField& field, std::size_t choice);
[[nodiscard]] PlateData with_words(PlateData data, const FormField& field, const std::string& words);
[[nodiscard]] PlateData with_not_known(PlateData data, const FormField& field);

// The axle (counted from 1) with everything that axle 1 has.
[[nodiscard]] PlateData with_axle_like_first(PlateData data, std::size_t axle);

// The point that a field answers; nullopt: none.
[[nodiscard]] std::optional<PointId> plate_point(const std::string& field);
// The first field that answers the point of this title, of the axle where it has one; empty: none does.
[[nodiscard]] std::string plate_field(std::string_view title, int axle);
// How 'not known' is held in Trailer::not_known: the point's id and the field's, "plate.gawr gawr 2".
[[nodiscard]] std::string not_known_id(const std::string& field);

}  // namespace cotter
