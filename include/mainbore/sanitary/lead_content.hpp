// Lead content of an assembly, averaged over its wetted surfaces.
//
//   average = sum(lead_i area_i) / sum(area_i)
//
// The Safe Drinking Water Act, section 1417, calls pipe, fittings and fixtures lead free at a weighted average of at
// most 0.25 % (solder and flux: 0.2 %), averaged as in NSF/ANSI/CAN 372. The limit itself is the caller's.
//
// Example: 60 % of the wetted area without lead, 30 % at 0.25 % and 10 % at 1.5 % average 0.225 %.
#pragma once

#include <span>

#include "mainbore/sanitary/concentration.hpp"
#include "mainbore/units.hpp"

namespace mainbore::sanitary {

struct WettedPart {
  Concentration lead;  // by weight of the metal
  Area wetted_area;
};

// Throws std::invalid_argument when a value is negative or the total wetted area is zero.
[[nodiscard]] Concentration weighted_lead_average(std::span<const WettedPart> parts);

}  // namespace mainbore::sanitary
