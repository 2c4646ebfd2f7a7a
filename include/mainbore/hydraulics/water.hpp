// Water as the hydraulic formulas need it: its weight and its viscosity.
//
//   h = p / w        head of a pressure       h: head   p: pressure   w: weight of water per unit volume
//   p = w h          pressure of a head
//
// Plumbing codes round the gradient of cold water to 0.433 psi per foot of height (International Plumbing Code,
// Appendix E, E103.2.2: a fixture 20 ft above the source costs 8.66 psi). In these types that gradient is a unit
// weight:
//
//     const UnitWeight w = 0.433 * units::psi / units::foot;                  // 62.35 lbf/ft3
//     pressure_of_head(20 * units::foot, w) / units::psi;                      // 8.66
#pragma once

#include <span>

#include "mainbore/units.hpp"

namespace mainbore::hydraulics {

struct Water {
  UnitWeight weight;
  KinematicViscosity viscosity;

  [[nodiscard]] constexpr Density density() const { return weight / units::standard_gravity; }
};

// One row of a table of water properties.
struct WaterPoint {
  Temperature temperature;
  Water water;
};

// The properties at a temperature, by straight lines between the rows of `table`.
//
// Outside the table the nearest end row is kept. Below freezing there is no flow to compute; above the last row the
// true viscosity is less than the kept one, so friction is over-stated, which is the safe side.
// Throws std::invalid_argument when the table is empty or its temperatures do not increase from row to row.
[[nodiscard]] Water water_at(Temperature temperature, std::span<const WaterPoint> table);

[[nodiscard]] constexpr Length head_of_pressure(Pressure pressure, UnitWeight weight) { return pressure / weight; }
[[nodiscard]] constexpr Pressure pressure_of_head(Length head, UnitWeight weight) { return weight * head; }

// V^2 / 2g, the head a moving stream carries in its speed.
[[nodiscard]] constexpr Length velocity_head(Velocity velocity) {
  return velocity * velocity / (2.0 * units::standard_gravity);
}

}  // namespace mainbore::hydraulics
