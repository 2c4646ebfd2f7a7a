#include "mainbore/hydraulics/equal_capacity.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace mainbore::hydraulics {

double equal_capacity(double diameter_ratio, double exponent) {
  if (!(diameter_ratio > 0.0) || !(exponent > 0.0)) {
    throw std::invalid_argument("equal_capacity: the ratio and the exponent must be positive");
  }
  return std::pow(diameter_ratio, exponent);
}

int taps_needed(double equal_capacity) {
  if (!(equal_capacity > 0.0) || equal_capacity > 1e6) {
    throw std::invalid_argument("taps_needed: the number must be positive and at most a million");
  }
  constexpr double rounding = 1e-6;
  return std::max(1, static_cast<int>(std::ceil(equal_capacity - rounding)));
}

Length barrel_needed(int taps, Length spacing, Length joint_clearance) {
  if (taps < 1) throw std::invalid_argument("barrel_needed: at least one tap");
  return (taps - 1) * spacing + 2.0 * joint_clearance;
}

}  // namespace mainbore::hydraulics
