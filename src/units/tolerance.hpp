// What counts as over a limit, for whoever compares.
#pragma once

#include <cmath>

namespace mainbore {

// No gauge tells values apart that differ by less than a millionth: 620.528 kPa is 90 psi.
template <class Q>
[[nodiscard]] bool over(Q value, Q limit) {
  return value.base() > limit.base() + 1e-6 * std::fabs(limit.base());
}
[[nodiscard]] inline bool over(double value, double limit) { return value > limit + 1e-6 * std::fabs(limit); }

}  // namespace mainbore
