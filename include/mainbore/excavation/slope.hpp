// How steep the sides of an excavation may stand, after 29 CFR 1926 Subpart P, Appendix B, Table B-1.
//
// A slope is horizontal run per unit of rise, so 1.5 is 34 degrees and 0 is vertical; a greater number is flatter. The
// table is an input; Appendix B has stable rock 0, Type A 0.75 (0.5 short-term), Type B 1, Type C 1.5.
//
// Short-term slopes are for Type A, open at most 24 h and at most 12 ft deep; 24 h and 12 ft themselves still qualify.
// Where the ground shows distress (cracks beside the edge, a subsiding edge, slumping, bulging) a cave-in is imminent,
// and the sides are cut back by `distress_flattening` more than the greatest allowed slope.
//
//     allowed_slope({.soil = type_a, .depth = 12 * foot, .open_for = 25 * hour}, table, thresholds)->run;   // 0.75
#pragma once

#include <cmath>
#include <optional>

#include "mainbore/excavation/soil.hpp"
#include "mainbore/excavation/thresholds.hpp"
#include "mainbore/mechanics/angle.hpp"
#include "mainbore/units.hpp"

namespace mainbore::excavation {

// Horizontal run per unit of rise.
struct SlopeTable {
  double stable_rock;
  double type_a;
  double type_a_short_term;
  double type_b;
  double type_c;
  double distress_flattening;
};

struct SlopeCase {
  SoilType soil = SoilType::type_c;
  Length depth;
  Time open_for;  // how long the pit stays open
  bool distress = false;
};

struct AllowedSlope {
  double run = 0.0;         // per unit of rise
  bool short_term = false;  // holds only for the short term's time and depth
};

// The steepest slope the table allows, and nothing when the depth needs an engineer's design.
// Stable rock that shows distress is not stable: it is then taken as Type C.
// Throws std::invalid_argument when the depth or time is negative, a threshold used is not positive or a slope
// negative.
[[nodiscard]] std::optional<AllowedSlope> allowed_slope(const SlopeCase& slope_case, const SlopeTable& table,
                                                        const ExcavationThresholds& thresholds);

// The angle of a slope above horizontal: 1.5 is 33.69 degrees, which Table B-1 rounds to 34.
[[nodiscard]] inline mechanics::Angle slope_angle(double run) {
  return mechanics::Angle::radians(std::atan2(1.0, run));
}

}  // namespace mainbore::excavation
