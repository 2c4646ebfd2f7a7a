// Losses at fittings, at changes of bore and in the meter.
//
//   p = K w V^2/2g           K: loss coefficient   w: weight of water   V: mean velocity in the bore K refers to
//   L_e = K d / f            the length of plain pipe that loses as much   d: bore   f: Darcy friction factor
//
// Handbooks give K for the smaller bore; so do these functions. A square-edged entrance from the main is about K = 0.5
// and the exit into still water exactly 1; fittings come as K or as an equivalent length, never as both.
//
//     minor_loss(6.5, 2.515 * m_per_s, 62.4 * lbf_per_ft3) / psi;              // 2.98
#pragma once

#include <span>

#include "mainbore/hydraulics/water.hpp"
#include "mainbore/units.hpp"

namespace mainbore::hydraulics {

[[nodiscard]] constexpr Pressure minor_loss(double k, Velocity velocity, UnitWeight weight) {
  return k * (weight * velocity_head(velocity));
}

[[nodiscard]] constexpr Length equivalent_length(double k, double friction_factor, Length bore) {
  return k / friction_factor * bore;
}
[[nodiscard]] constexpr double loss_coefficient(Length equivalent_length, double friction_factor, Length bore) {
  return friction_factor * (equivalent_length / bore);
}

// K of a fitting from one measurement: it loses `drop` when it passes `flow` through `bore`. A flow coefficient Cv is
// such a measurement, Cv gpm at 1 psi: Cv 20 in a 1 in bore is K = 2.23. The flow must be positive.
[[nodiscard]] double measured_loss_coefficient(Flow flow, Pressure drop, Length bore, UnitWeight weight);

// Sudden contraction, K = (1 - (d/D)^2) / 2, and sudden expansion, K = (1 - (d/D)^2)^2 (Borda and Carnot), both on the
// smaller bore d. Throw std::invalid_argument unless 0 < small <= large.
[[nodiscard]] double sudden_contraction_coefficient(Length small_bore, Length large_bore);
[[nodiscard]] double sudden_expansion_coefficient(Length small_bore, Length large_bore);

// One row of a meter's loss table.
struct MeterPoint {
  Flow flow;
  Pressure loss;
};

// A meter: its loss table and the greatest flow its standard allows it to pass for short times (for displacement
// meters, ANSI/AWWA C700: 20 gpm for 5/8 in, 30 for 3/4, 50 for 1, 100 for 1-1/2, 160 for 2). The table is looked over
// once, for solvers ask one meter for many flows, and is not copied: it must outlive the Meter. An empty table, flows
// that do not increase from row to row or losses that fall throw std::invalid_argument.
class Meter {
 public:
  Meter(std::span<const MeterPoint> table, Flow safe_maximum);
  [[nodiscard]] std::span<const MeterPoint> table() const { return table_; }
  [[nodiscard]] Flow safe_maximum() const { return safe_maximum_; }

 private:
  std::span<const MeterPoint> table_;
  Flow safe_maximum_;
};

struct MeterLoss {
  Pressure loss;
  bool over_safe_maximum = false;
};

// The loss at a flow, by straight lines between the rows and from no flow, no loss to the first row.
//
// Past the last row the loss grows with the square of the flow, as the upper half of every published column does.
// The safe maximum itself may be used; more is over. A negative flow throws std::invalid_argument.
[[nodiscard]] MeterLoss meter_loss(const Meter& meter, Flow flow);

}  // namespace mainbore::hydraulics
