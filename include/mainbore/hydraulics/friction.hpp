// Friction loss in a full round pipe: Hazen-Williams and Darcy-Weisbach.
//
// Hazen-Williams, in the form of NFPA 13 and the NCEES handbook with the exponents unrounded:
//
//   p = 4.52 L Q^1.852 / (C^1.852 d^4.8704)        p: psi   L: ft   Q: gpm   d: in   C: roughness coefficient
//
// An empirical fit for water near 60 degF in turbulent flow: C 80 to 150, bores of about 1/2 in and more, velocities to
// about 10 ft/s. The SI form (10.67) and the head form (4.727, ft and cfs) agree with this one within 0.5 %. Outside
// the range it still computes: it over-states slow (laminar) and under-states cold or very fast flow.
//
// Darcy-Weisbach:
//
//   p = f (L/d) w V^2/2g        Re = V d / nu
//
//   f = 64 / Re                                               laminar,     Re <= 2000
//   1/sqrt(f) = -2 log10(e/(3.7 d) + 2.51/(Re sqrt(f)))       turbulent,   Re >= 4000 (Colebrook)
//   f on the straight line between the two ends               transition,  2000 < Re < 4000
//
//   f: Darcy friction factor   w: weight of water   nu: kinematic viscosity   e: roughness height of the wall
//
// Nobody can say what f is in the transition; the line makes the loss continuous there, and makes it rise with every
// increase of flow, length and roughness and fall with every increase of bore, which a solver may rely on.
//
//     hazen_williams_loss(20 * gpm, 0.995 * inch, 100 * foot, 130) / psi;       // 14.46, one-inch Type K copper
//     friction_factor(57732.0, 5.935e-5);                                       // 0.02047
#pragma once

#include "mainbore/hydraulics/water.hpp"
#include "mainbore/units.hpp"

namespace mainbore::hydraulics {

inline constexpr double laminar_limit = 2000.0;    // Reynolds number up to which f = 64/Re
inline constexpr double turbulent_limit = 4000.0;  // Reynolds number from which Colebrook holds

// Zero at no flow. Throws std::invalid_argument when the bore or C is not positive, or the flow or length is negative.
[[nodiscard]] Pressure hazen_williams_loss(Flow flow, Length bore, Length length, double c);

[[nodiscard]] double reynolds_number(Velocity velocity, Length bore, KinematicViscosity viscosity);

// Swamee and Jain (1976): f = 0.25 / log10(e/(3.7 d) + 5.74/Re^0.9)^2, explicit and within 3 % of Colebrook for
// Re 5000 to 1e8 and e/d 1e-6 to 0.05.
[[nodiscard]] double swamee_jain_factor(double reynolds, double relative_roughness);

// Colebrook, by Newton's method on 1/sqrt(f) from the Swamee-Jain value: at most 20 steps, in practice 3, to 1e-13.
//
// Both fit turbulent flow, and both throw std::invalid_argument when Re is below 2000 or the relative roughness is not
// in [0, 1). Measurements behind them reach a relative roughness of 0.05.
[[nodiscard]] double colebrook_factor(double reynolds, double relative_roughness);

// f in whichever regime the Reynolds number falls, as above. Throws std::invalid_argument when Re is not positive or,
// above the laminar limit, when the relative roughness is not in [0, 1).
[[nodiscard]] double friction_factor(double reynolds, double relative_roughness);

// Zero at no flow. Throws std::invalid_argument when the bore or viscosity is not positive, or the flow, length or
// roughness is negative.
[[nodiscard]] Pressure darcy_weisbach_loss(Flow flow, Length bore, Length length, Length roughness, const Water& water);

}  // namespace mainbore::hydraulics
