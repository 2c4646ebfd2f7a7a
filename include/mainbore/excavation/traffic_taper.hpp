// Lengths of the cone tapers that close a lane or a shoulder beside the pit.
//
//   merging L = W S^2 / 60    S <= 40 mph           W: width closed, ft   S: speed, mph   L: ft
//   merging L = W S           S >= 45 mph
//   shifting L / 2            shoulder L / 3
//
// Manual on Uniform Traffic Control Devices, Part 6, Table 6H-4 (2009 edition). The manual speaks of posted
// speeds, which go by fives; a speed between 40 and 45 takes the longer, second formula.
//
//     taper_length(TaperKind::merging, 12 * foot, 35 * mph) / foot;            // 245
#pragma once

#include "mainbore/units.hpp"

namespace mainbore::excavation {

enum class TaperKind {
  merging,   // a lane ends and its traffic joins another
  shifting,  // a lane moves sideways
  shoulder,  // a shoulder closes
};

// The least length. Throws std::invalid_argument when the width or the speed is negative.
[[nodiscard]] Length taper_length(TaperKind kind, Length width, Velocity speed);

}  // namespace mainbore::excavation
