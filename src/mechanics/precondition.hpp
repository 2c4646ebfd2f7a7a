// What the functions of this folder ask of their arguments.
#pragma once

#include <cmath>
#include <stdexcept>

#include "mainbore/units.hpp"

namespace mainbore::mechanics {

inline bool is_positive(double x) { return std::isfinite(x) && x > 0.0; }
inline bool is_not_negative(double x) { return std::isfinite(x) && x >= 0.0; }

template <int L, int F, int T>
bool is_positive(Quantity<L, F, T> q) {
  return is_positive(q.base());
}
template <int L, int F, int T>
bool is_not_negative(Quantity<L, F, T> q) {
  return is_not_negative(q.base());
}

inline void require(bool condition, const char* message) {
  if (!condition) throw std::invalid_argument(message);
}
inline void require_domain(bool condition, const char* message) {
  if (!condition) throw std::domain_error(message);
}

}  // namespace mainbore::mechanics
