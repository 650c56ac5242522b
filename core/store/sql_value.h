// What an SQL statement can be given and can answer. Values; any thread.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "core/base/bytes.h"
#include "core/base/error.h"

namespace cotter {

using SqlValue = std::variant<std::monostate, std::int64_t, std::string, Bytes>;  // NULL, INTEGER, TEXT, BLOB
using SqlValues = std::vector<SqlValue>;

}  // namespace cotter
