// Where the list of the desk's commands is compiled.
#include "app/desk/desk_command.h"

#include "app/asked_impl.h"

namespace cotter {

template class Asked<desk::Command>;

}  // namespace cotter
