// What a hole leaves of the pipe as a beam.
//
// The worst place for a hole in a barrel that bends is the extreme fiber: the crown over a hump, the invert over a sag.
// On the section through the middle of a hole of radius r there, the strip |x| <= r of the ring is gone on one side.
// With R and Ri the outer and inner radii, the removed strip's area, first and second moment about the axis of the ring
// are differences F(R) - F(Ri) of
//     A(a) = r sqrt(a^2 - r^2) + a^2 asin(r/a)
//     Q(a) = a^2 r - r^3/3
//     I(a) = (1/3) [ r/2 (a^2 - r^2)^(3/2) + 3/4 a^2 r sqrt(a^2 - r^2) + 3/4 a^4 asin(r/a) ]
// (r replaced by a in the inner terms where the hole is wider than the bore). The neutral axis moves away from the hole
// by e = Q/A_net, and I_net = I_gross - I - A_net e^2. Section modulus is I_net over the farther of the two extreme
// fibers: the edge of the hole, e + sqrt(R^2 - r^2), and the far side, R - e. Exact for the section; derived, not
// published.
//
// Past about half the diameter the edge of the hole has come so far in that the modulus may rise a little with the
// hole; the area still falls.
//
// It is a measure of how much section is lost, not a rating: stress concentration at the hole, thread roots and
// corrosion are left out.
//
//     net_section(six_inch, 1.315 * units::inch)->modulus_ratio       // 0.828 for 6.90 in by 0.25 in
#pragma once

#include <optional>

#include "mainbore/mechanics/engagement.hpp"
#include "mainbore/units.hpp"

namespace mainbore::mechanics {

struct NetSection {
  double area_ratio = 1.0;     // net over gross area of the wall
  double modulus_ratio = 1.0;  // net over gross section modulus, at the fiber that governs
  Length axis_shift;           // e
};

// No value where the hole is as wide as the pipe, negative or not finite, or where the barrel is not one
// (engagement.hpp) or has a wall under a millionth of its diameter. A hole of zero leaves everything.
std::optional<NetSection> net_section(const Barrel& barrel, Length hole_diameter);

// Hole over outside diameter. Throws std::invalid_argument unless the outside diameter is positive and finite.
double hole_ratio(Length hole_diameter, Length outside_diameter);

}  // namespace mainbore::mechanics
