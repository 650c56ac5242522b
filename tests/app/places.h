// Places that the tests of the app go to again and again.
#pragma once

#include "core/trailer/place.h"

namespace cotter {

inline const Place kTrailer = Place::at(Station::trailer);
inline const Place kLeft = Place::corner(1, Side::left);
inline const Place kRight = Place::corner(1, Side::right);
inline const Place kRear = Place::corner(2, Side::right);

}  // namespace cotter
