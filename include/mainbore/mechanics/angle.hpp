// A plane angle.
//
//     Angle::degrees(118).radians()   -> 2.0595
//     std::cos(leg.radians())
#pragma once

#include <compare>
#include <numbers>

namespace mainbore::mechanics {

class Angle {
 public:
  constexpr Angle() = default;
  static constexpr Angle radians(double value) { return Angle(value); }
  static constexpr Angle degrees(double value) { return Angle(value * (std::numbers::pi / 180.0)); }
  [[nodiscard]] constexpr double radians() const { return radians_; }
  [[nodiscard]] constexpr double degrees() const { return radians_ * (180.0 / std::numbers::pi); }
  constexpr auto operator<=>(const Angle&) const = default;

 private:
  explicit constexpr Angle(double value) : radians_(value) {}
  double radians_ = 0.0;
};

}  // namespace mainbore::mechanics
