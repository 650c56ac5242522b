// Error values as text.
#include "core/base/error.h"

namespace cotter {

std::string Error::line() const {
    std::string out = what;
    if (!where.empty()) out += ": " + where;
    if (!todo.empty()) out += "; " + todo;
    return out;
}

unexpected<Error> fail(Errc code, std::string what, std::string where, std::string todo) {
    return unexpected<Error>(Error{code, std::move(what), std::move(where), std::move(todo)});
}

Error context(Error error, std::string_view outer) {
    error.where = error.where.empty() ? std::string(outer) : std::string(outer) + ": " + error.where;
    return error;
}

}  // namespace cotter
