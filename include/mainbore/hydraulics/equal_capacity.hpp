// How many small pipes or taps carry what one large one does, and the room they take on the main.
//
//   n = (D/d)^e        D: diameter of the large one   d: of the small one
//
// The exponent says what is held equal:
//
//   2.65    equal loss over an equal run of pipe: the municipal "equation of pipes" tables
//   2.63    the same by Hazen-Williams
//   2.5     rule of thumb
//   2       equal velocity; also short taps, where the entrance takes most of the loss
//
// A tap is short, so 2 to 2.5 describes the taps and 2.65 the runs behind them. Diameters are bores; published tables
// use nominal sizes, and so may the caller, since only the ratio counts.
//
//     taps_needed(equal_capacity(2.0 / 1.0, 2.65));                            // 6.28, so 7
#pragma once

#include "mainbore/units.hpp"

namespace mainbore::hydraulics {

// n, not rounded. Throws std::invalid_argument when the ratio or the exponent is not positive.
[[nodiscard]] double equal_capacity(double diameter_ratio, double exponent);

// n rounded up to whole taps, at least one. A result within a millionth above a whole number is that number:
// (1.5/0.75)^2 computed as 4.0000000001 is four taps, not five. Throws std::invalid_argument when n is not positive or
// above a million.
[[nodiscard]] int taps_needed(double equal_capacity);

// The straight barrel that n taps in a line take: (n - 1) spacing + 2 joint_clearance.
// Throws std::invalid_argument when n < 1.
[[nodiscard]] Length barrel_needed(int taps, Length spacing, Length joint_clearance);

}  // namespace mainbore::hydraulics
