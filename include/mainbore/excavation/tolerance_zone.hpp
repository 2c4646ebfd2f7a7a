// The strip round a marked buried line in which only hand digging, vacuum or another gentle method may be used.
//
//   half width = facility width / 2 + margin          to each side of the center mark
//
// The margin is set by state law: 18 in and 24 in are the commonest. Where the mark does not show the width of the
// line, the width is unknown and must be asked for or taken at its greatest.
//
// Example: an 8-inch main of 9.05 in outside diameter with 18 in each side has a zone 45.05 in wide.
#pragma once

#include "mainbore/units.hpp"

namespace mainbore::excavation {

[[nodiscard]] constexpr Length tolerance_zone_half_width(Length facility_width, Length margin) {
  return facility_width / 2.0 + margin;
}
[[nodiscard]] constexpr Length tolerance_zone_width(Length facility_width, Length margin) {
  return 2.0 * tolerance_zone_half_width(facility_width, margin);
}

// Whether something `distance` from the center mark lies inside; the edge itself belongs to the zone.
[[nodiscard]] constexpr bool inside_tolerance_zone(Length distance, Length facility_width, Length margin) {
  return abs(distance) <= tolerance_zone_half_width(facility_width, margin);
}

}  // namespace mainbore::excavation
