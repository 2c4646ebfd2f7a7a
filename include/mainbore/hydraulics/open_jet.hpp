// A hole open to the air: how much comes out, how hard it pushes, how long until the pit is full.
//
//   V = sqrt(2 g h) = sqrt(2 p g / w)       speed of an ideal jet
//   Q = c_d A V                             flow      (29.84 c d^2 sqrt(p): gpm, in, psi; NFPA 291)
//   F = 2 c_d c_v A p                       reaction  (2 A p for an ideal jet)
//
//   p: pressure behind the hole   w: weight of water   A: area of the hole   c_d: discharge coefficient   c_v: velocity
//   coefficient. A sharp-edged hole has c_d about 0.61 and c_v about 0.98; a short open tube, such as an open
//   corporation stop, about 0.8 and 0.8; a smooth rounded outlet 0.9.
//
// The pressure is taken as held: a main that falls while it spills gives less, so these are upper bounds, as a warning
// should be. A bore that is blocked rather than open is pushed with p A only.
//
//     open_jet_flow(1 * inch, 60 * psi, 0.61, 62.37 * lbf_per_ft3) / gpm;       // 141
#pragma once

#include <optional>

#include "mainbore/units.hpp"

namespace mainbore::hydraulics {

// The pressure is above that of the air and must not be negative, the weight must be positive and coefficients must lie
// in (0, 1]; otherwise these throw std::invalid_argument.
[[nodiscard]] Velocity jet_velocity(Pressure pressure, UnitWeight weight);
[[nodiscard]] Flow open_jet_flow(Length bore, Pressure pressure, double discharge_coefficient, UnitWeight weight);
[[nodiscard]] Force jet_force(Length bore, Pressure pressure, double discharge_coefficient,
                              double velocity_coefficient);

// The time to fill a volume, and nothing when the pumps keep up with the inflow.
[[nodiscard]] std::optional<Time> time_to_fill(Volume volume, Flow inflow, Flow pumped_out = {});

}  // namespace mainbore::hydraulics
