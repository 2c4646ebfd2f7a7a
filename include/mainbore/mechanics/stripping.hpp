// Load at which a thread strips.
//
// FED-STD-H28/2B and ASME B1.1 appendix B, threads per inch n, engaged length L, K minor of the internal thread at its
// greatest, Es pitch of the external at its least, Ds major of the external at its least, En pitch of the internal at
// its greatest, tangent of the half angle 0.57735:
//     external shear area   As = pi n L K  [ 1/(2n) + 0.57735 (Es - K)  ]
//     internal shear area   An = pi n L Ds [ 1/(2n) + 0.57735 (Ds - En) ]
//     tensile stress area   At = pi/4 (D - 0.9743/n)^2
// For a taper pipe thread, made up line to line, K = E1 - h and Ds = E1 + h (derived from the above; no published
// form). Use the complete ring length as L. These areas are upper bounds: the load is never even along a short thread,
// so a factor for effectiveness goes with them (one half is a prudent choice, not a published one).
//
// No torque to strip is offered: the friction of doped or taped taper threads varies several-fold, and no sound formula
// for their stripping torque is published. The pressure's end load is far below the stripping load at any number of
// threads; wrench, bending and pull on the service govern.
//
//     const ShearAreas a = taper_shear_areas(three_quarter_npt, 0.2098 * units::inch);   // 0.591 and 0.663 in2
//     stripping_load(a, {26e3 * units::psi, 25e3 * units::psi}, 0.5)                     // 7384 lbf
#pragma once

#include "mainbore/mechanics/taper_thread.hpp"
#include "mainbore/units.hpp"

namespace mainbore::mechanics {

struct ShearAreas {
  Area external;  // of the stop
  Area internal;  // of the main
};

struct ShearStrengths {
  Pressure internal;  // material of the main
  Pressure external;  // material of the stop
};

// Limits of size of a mating pair of parallel 60 degree threads.
struct ThreadLimits {
  InverseLength threads_per_inch;
  Length external_major_min;  // Ds
  Length external_pitch_min;  // Es
  Length internal_pitch_max;  // En
  Length internal_minor_max;  // K
};

// Throws std::invalid_argument unless threads per inch is positive and finite.
ShearAreas shear_areas(const ThreadLimits& limits, Length engaged);
Area tensile_stress_area(Length major, InverseLength threads_per_inch);

// Taper pair made up line to line. Throws as shear_areas() does. A length of zero or less gives zero areas.
ShearAreas taper_shear_areas(const TaperThread& thread, Length engaged);

// The weaker side: effectiveness * min(An tau_main, As tau_stop).
Force stripping_load(const ShearAreas& areas, const ShearStrengths& strengths, double effectiveness);

// What the line pressure pushes on the stop with: p * pi/4 * (E1 + h)^2.
Force pressure_end_load(const TaperThread& thread, Pressure line);

}  // namespace mainbore::mechanics
