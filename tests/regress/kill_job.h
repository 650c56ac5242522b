// What the writer that gets killed and the test that kills it agree on.
#pragma once

#include <string>

#include "core/survey/edit.h"

namespace cotter::test {

inline JobId kill_job() {
    return {Uuid::parse("c07e0000-0000-4000-8000-000000000001").value()};
}

// Who takes step `number`, counted from 1.
inline std::string kill_person(std::size_t number) {
    return "person " + std::to_string(number);
}

}  // namespace cotter::test
