// Chords of a circle, in forms that neither overflow nor lose digits for a small chord.
#pragma once

#include <cmath>

#include "mainbore/mechanics/engagement.hpp"
#include "mainbore/units.hpp"
#include "precondition.hpp"

namespace mainbore::mechanics {

// sqrt(R^2 - x^2), for 0 <= x <= R and R > 0.
inline Length half_chord(Length radius, Length x) {
  const double q = x / radius;
  return radius * std::sqrt((1.0 - q) * (1.0 + q));
}

// R - sqrt(R^2 - x^2), for 0 <= x <= R and R > 0.
inline Length chord_drop(Length radius, Length x) {
  const double q = x / radius;
  return x * (q / (1.0 + std::sqrt((1.0 - q) * (1.0 + q))));
}

// A wall of some metal round a bore of some width.
inline bool is_barrel(const Barrel& barrel) {
  return is_positive(barrel.outside_diameter) && is_positive(barrel.wall) &&
         barrel.wall < barrel.outside_diameter / 2.0;
}

}  // namespace mainbore::mechanics
