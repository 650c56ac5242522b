// Which torque of a job may lend its figure to another wheel: one at equal nuts, wheel and hub. For the torque page.
// Pure; any thread.
#pragma once

#include "core/survey/job.h"

namespace cotter {

// The newest torque of the job whose maker's figure may be taken over by `wanted`, which has none: the like joint at
// another corner, as many fasteners, on axles that are the same in all that is recorded of them (wheels, hub, brake,
// stud thread, model, rating). Where fasteners of `wanted` are not counted and the joint is none of the wheel's, any
// number fits. nullptr: there is none. Whether it is right stays a question to a person.
[[nodiscard]] const Torque* torque_to_lend(const Job& job, const Torque& wanted);

// `wanted` with figure and source of `lender`, as a person has said that they fit; and with its wrench and adapter when
// it has none of its own.
[[nodiscard]] Torque with_lent(Torque wanted, const Torque& lender);

// `torque` with another count of fasteners. A figure that was taken over from a wheel with the old one goes.
[[nodiscard]] Torque with_count(Torque torque, int fasteners);

}  // namespace cotter
