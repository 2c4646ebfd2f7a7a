// Comparing with a limit, when the value may have come through a conversion of units.
//
// 1.2192 m is 4 ft, but reaches us as 47.99999999999999 in. A value within one part in a million million of the limit
// is at the limit; that is far below anything a tape can show and far above what a conversion can lose.
#pragma once

namespace mainbore::excavation::detail {

inline constexpr double conversion_slack = 1e-12;

template <class T>
constexpr bool at_least(T value, T limit) {
  return value >= limit * (1.0 - conversion_slack);
}
template <class T>
constexpr bool at_most(T value, T limit) {
  return value <= limit * (1.0 + conversion_slack);
}
template <class T>
constexpr bool exceeds(T value, T limit) {
  return !at_most(value, limit);
}

}  // namespace mainbore::excavation::detail
