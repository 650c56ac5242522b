// Where the list of commands is compiled.
#include "app/command.h"

#include "app/asked_impl.h"

namespace cotter {

template class Asked<Command>;

}  // namespace cotter
