// How much thread a curved pipe wall can hold.
//
// A hole of radius r bored straight into a pipe of outside radius R and wall t meets the outside of the barrel first on
// the line along the pipe, and lower down on the two sides. Threads close all the way round only below the sides:
//     drop                 s = R - sqrt(R^2 - r^2)                the sagitta
//     complete ring length L = t - s                              down to the crown of the bore
//     complete threads     n = L * threads per inch
// Above and below these rings the thread is cut too, but not all round. Every line down the hole carries at least t of
// thread: t on the line along the pipe, sqrt(R^2 - r^2) - sqrt(Ri^2 - r^2) on the line across it, Ri = R - t.
// Geometry, exact for a hole of constant radius; no published rule is behind it. Taking r as half the thread's major
// diameter asks for the most wall; half the pitch diameter gives up to a tenth of a thread more.
//
// A taper hole, of radius r at the outer face and narrowing by k = taper/2 in radius per unit depth, meets the sides at
//     z = r^2 / [ R + k r + sqrt(R^2 + 2 k R r - r^2) ]
// above s, so the constant hole is the safe one. The difference is about k r^3/(2 R^2): for 1 in 16 under 0.001 in for
// a 1 in tap from a 4 in main up and 2 in from a 10 in main up, 0.002 in for 2 in on 6 in.
//
// Every function here is defined for every input: a hole that does not fit is a result (HoleFit), not an error, and no
// number returned is a NaN. Cast lining holds no thread: leave it out of the wall.
//
//     const Barrel six_inch{6.90 * units::inch, 0.25 * units::inch};
//     engagement(six_inch, one_inch_npt).complete_threads          // 2.15
//     wall_needed(6.90 * units::inch, one_inch_npt, 2.0)           // 0.237 in
#pragma once

#include <optional>

#include "mainbore/mechanics/taper_thread.hpp"
#include "mainbore/units.hpp"

namespace mainbore::mechanics {

struct Barrel {
  Length outside_diameter;
  Length wall;  // of the metal or plastic that takes the thread

  [[nodiscard]] constexpr Length inside_diameter() const { return outside_diameter - 2.0 * wall; }
};

enum class HoleFit {
  complete_rings,    // some length of thread closes all the way round
  no_complete_ring,  // the drop takes the whole wall: no thread closes
  wider_than_bore,   // the hole never comes clear of the side walls: it cannot be drilled as a service tap
  wider_than_pipe,   // the hole is as wide as the pipe or wider: all lengths are zero
  undefined,         // not a pipe or not a thread (zero, negative or not finite): all lengths are zero
};

struct Engagement {
  HoleFit fit = HoleFit::undefined;
  Length drop;                    // s, or z for a taper hole
  Length complete_ring_length;    // L, not below zero
  double complete_threads = 0.0;  // n, not below zero
  Length axial_along;             // length of thread on the line along the pipe: the wall
  Length axial_transverse;        // on the line across the pipe; down to the axis where the hole is wider than the bore
  Length mean_axial;              // mean round the hole
};

// How far the outside of a cylinder falls away at half the width of a hole. Needs 0 <= hole diameter <= outside
// diameter; anything else gives no value.
std::optional<Length> sagitta(Length outside_diameter, Length hole_diameter);

// Hole of constant radius, half of thread.major. The rule to plan by.
Engagement engagement(const Barrel& barrel, const ThreadForm& thread);

// Hole that narrows with the thread's taper, thread.major wide at the outer face. A negative taper is undefined.
// The axial lengths along and across, which the taper hardly moves, are those of the constant hole.
Engagement taper_engagement(const Barrel& barrel, const ThreadForm& thread);

// The wall that gives `complete_threads` in a hole of constant radius: n/tpi + s. Inverts
// engagement().complete_threads. No value where no pipe of that outside diameter can hold them (hole too wide, wall
// half the diameter or more), or an input is negative or not finite.
std::optional<Length> wall_needed(Length outside_diameter, const ThreadForm& thread, double complete_threads);

}  // namespace mainbore::mechanics
