// What a wrench does at the nut: an adapter changes its lever, so that what it is set to and what the nut gets differ.
// For the torque page, the report, the office and the checks. Pure; any thread.
#pragma once

#include <optional>
#include <string>

#include "core/survey/records.h"

namespace cotter {

// What to set on the wrench for `wanted` at the nut: wanted × L / (L + E·cos angle), in wanted's unit, to one decimal;
// L is the wrench's length, E the adapter's. Refused: units that are no torque, length or angle, a wrench's length not
// above zero, an adapter's below zero, an angle outside 0…180°, an adapter folded back as far as the grip.
[[nodiscard]] Result<Amount> wrench_setting(const Amount& wanted, const Adapter& adapter);
// What a setting does at the nut through the adapter, in the setting's unit, to one decimal. Refused as above.
[[nodiscard]] Result<Amount> torque_at_nut(const Amount& setting, const Adapter& adapter);

// The torque that a pass brought to the nuts. Records made before it had a field of its own hold it as the setting.
[[nodiscard]] const Amount& at_nut(const Pass& pass);

// Older records hold an adapter as words behind the wrench's id, "T-3, adapter 2 in beyond 16 in at 0°", and as setting
// of their passes the torque at the nut. This gives the same record with each in its own field; a record in the present
// form, or with words that do not read, as it is.
[[nodiscard]] Torque in_present_form(Torque torque);

// The record with the adapter on the wrench, or none. What the wrench was set to in the passes made already stays, and
// what that was at the nut follows from it. Refused as wrench_setting().
[[nodiscard]] Result<Torque> with_adapter(Torque torque, const std::optional<Adapter>& adapter);

// "2 in at 0° on a wrench of 16 in".
[[nodiscard]] std::string adapter_words(const Adapter& adapter);

}  // namespace cotter
