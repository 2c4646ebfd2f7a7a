// Holding a machine to a pipe by a chain or strap and studs.
//
// Chain from an anchor at horizontal offset a and height b over the pipe's center, round under the pipe to the anchor
// on the other side, Rc = pipe radius + half the chain's thickness:
//     d = hypot(a, b);  l = sqrt(d^2 - Rc^2);  psi = atan2(a, b);  gamma = acos(Rc/d)
//     wrap = 2 pi - 2 (psi + gamma);   length = 2 l + Rc wrap;   leg from vertical = 90 deg - psi - gamma
// A negative leg angle is a chain that spreads outward going up. Anchors must be outside the chain's circle: d > Rc.
//     force on the pipe            2 T cos(leg)
//     tension needed               2 T cos(leg) >= p pi/4 G^2 + thrust + m p A_gasket,  and >= y A_gasket to seat it
//     contact pressure             T / (R w),  w the contact width;  far side of a wrap with friction T exp(-mu wrap)
//     stud                         T = torque / (K d), K 0.20 clean and dry, 0.15 lubricated, 0.10 to 0.30 met
// Gasket factors m and y: ASME BPVC VIII-1, appendix 2, table 2-5.1 (design values, not assembly stresses).
//
// Plastic pipe ovals under a chain. Ring stiffness (ASTM D2412), from modulus E: PS = 4.47 E / (DR - 1)^3
// (from PS = 6.7 E I/r^3, r the mean radius). Squeezed
// between two faces b wide with a force P: dy = P/(b PS); ovality = dy/Dm, Dm = OD - t. An upper bound: it takes no
// help from the pipe on either side, from the wrap or from pressure, so a low answer is safe and a high one asks for a
// wider saddle.
//
//     chain_path(6.9 * units::inch, {}, {3.45 * units::inch, 4.0 * units::inch})->length            // 18.84 in
#pragma once

#include <optional>

#include "mainbore/mechanics/angle.hpp"
#include "mainbore/mechanics/engagement.hpp"
#include "mainbore/units.hpp"

namespace mainbore::mechanics {

// Where a leg of the chain hooks on, from the center of the pipe.
struct ChainAnchor {
  Length offset;  // a, horizontally
  Length height;  // b, upward; negative below the center
};

struct ChainPath {
  Length length;    // anchor to anchor
  Length free_leg;  // l, each side
  Angle wrap;       // in contact
  Angle leg;        // from vertical
};

// No value where the anchor lies on or within the chain's circle, the offset is negative, the chain would not touch the
// pipe, or anything is not finite or not positive (a thickness of zero is allowed).
std::optional<ChainPath> chain_path(Length outside_diameter, Length chain_thickness, const ChainAnchor& anchor);

// The height b over which an anchor at this offset has a path: the chain's own circle there, else the center of the pipe.
// Throws std::invalid_argument unless the diameter is positive, and thickness and offset are not negative.
Length lowest_anchor(Length outside_diameter, Length chain_thickness, Length offset);

// 2 T cos(leg), along the bore of the machine, toward the pipe.
Force clamp_force(Force tension, Angle leg);

// What the clamp must hold.
struct ClampLoad {
  Pressure line;
  Length seal_diameter;        // G
  Force thrust;                // lifting the machine: the drill's feed force
  double gasket_factor = 0.0;  // m
  Area gasket_area;
  Pressure seating_stress;  // y
};

// Least force toward the pipe: the greater of holding and seating.
Force clamp_force_needed(const ClampLoad& load);

// Chain tension for it. No value at a leg angle of 90 degrees or beyond.
std::optional<Force> chain_tension_needed(const ClampLoad& load, Angle leg);

// exp(mu wrap): how far tension in one leg may exceed the other before a chain slips round the pipe.
double wrap_tension_ratio(double friction, Angle wrap);

// T / (R w). Throws std::invalid_argument unless diameter and width are positive.
Pressure contact_pressure(Force tension, Length outside_diameter, Length contact_width);

// A result under the least, the usual and the most friction.
struct NutFactors {
  double low = 0.10;
  double usual = 0.20;
  double high = 0.30;
};
struct StudTension {
  Force low;  // at the most friction
  Force usual;
  Force high;  // at the least
};
struct StudTorque {
  Torque low;  // at the least friction
  Torque usual;
  Torque high;  // at the most
};

// Both throw std::invalid_argument unless the stud's diameter is positive and 0 < low <= usual <= high.
StudTension stud_tension(Torque torque, Length stud_diameter, const NutFactors& factors);
StudTorque stud_torque(Force tension, Length stud_diameter, const NutFactors& factors);

// T / (pi/4 d^2), on the whole round of the stud. Throws std::invalid_argument unless the diameter is positive.
Pressure stud_stress(Force tension, Length stud_diameter);

// Least breaking load of a roller chain by its pitch, 12,500 psi * pitch^2 (ASME B29.1). A breaking load, not a working
// load.
Force roller_chain_breaking_load(Length pitch);

// Force per unit length per unit deflection, PS. Throws std::domain_error unless the barrel has a positive wall and an
// outside diameter over twice it.
Pressure ring_stiffness(const Barrel& barrel, Pressure modulus);

// Change of diameter over mean diameter under `force` across the pipe, borne on a length `width` along it. Throws as
// ring_stiffness() does, and std::invalid_argument unless width and modulus are positive.
double ovality(const Barrel& barrel, Pressure modulus, Force force, Length width);

}  // namespace mainbore::mechanics
