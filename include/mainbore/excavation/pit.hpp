// The pit: room at the bottom, size at the top, volume, spoil.
//
//   bottom across the main = far side + OD + machine side        depth = cover + OD + room below
//   top                    = bottom + 2 z D                      each way, all four faces at z:1
//   V = L W D + z D^2 (L + W) + 4/3 z^2 D^3                      pit, four sloped faces
//   V = length x D (W + z D)                                     trench, two sloped faces, vertical ends
//
//   L, W: bottom along and across the main   D: depth   z: horizontal run per unit of rise
//
// The pit formula is the prismoidal rule in closed form and exact. The average of top and bottom areas over-states such
// a pit by 2/3 z^2 D^3, which is a quarter of the dig in a deep Type C pit.
//
// Dug soil takes more room: loose = bank (1 + swell). It is heaped in a windrow of triangular section whose sides stand
// at the angle of repose, its toe a set-back away from the edge:
//
//   height = sqrt(a / r)        base = 2 r height        a: section of the pile, loose volume per length   r: repose
//   run
//
//     const Pit pit{.along = 6 * foot, .across = 4 * foot, .depth = 6 * foot, .slope = 1.0};
//     pit_volume(pit) / yd3;                                                   // 29.33
#pragma once

#include "mainbore/units.hpp"

namespace mainbore::excavation {

// The clear room a crew and its machine need round the main; a utility's own figures.
struct PitRoom {
  Length along;         // along the main, for the machine, its chain and a person beside it
  Length machine_side;  // from the main to the wall where the machine and the corporation stop stand out
  Length far_side;      // from the main to the other wall, to pass the chain and clean the pipe
  Length below;         // under the main
};

struct Pit {
  Length along;   // bottom, along the main
  Length across;  // bottom, across the main
  Length depth;
  double slope = 0.0;  // horizontal run per unit of rise, on all four faces
};

// A pit at the main. Cover is from the surface to the top of the main.
// Throws std::invalid_argument when a length is negative, the outside diameter not positive or the slope negative.
[[nodiscard]] Pit size_pit(Length main_od, Length cover, const PitRoom& room, double slope);

struct PitTop {
  Length along;
  Length across;
};
[[nodiscard]] PitTop pit_top(const Pit& pit);
[[nodiscard]] Volume pit_volume(const Pit& pit);

// A trench for the service line, vertical at both ends.
[[nodiscard]] Volume trench_volume(Length length, Length bottom_width, Length depth, double slope);

// `swell` is the gain in volume as a fraction of the bank volume (0.25 for common earth).
[[nodiscard]] Volume loose_volume(Volume bank, double swell);

// A windrow along one side.
struct SpoilPile {
  Length height;
  Length base;  // width on the ground
};

// The windrow a loose volume makes over a length. Its sloping ends are left out, so a real pile is a little longer.
// Throws std::invalid_argument when the volume is negative or the length or the repose run not positive.
[[nodiscard]] SpoilPile spoil_windrow(Volume loose, Length pile_length, double repose_run);

// From the centerline of the cut to the far toe of the spoil: half the top width, the set-back and the base.
[[nodiscard]] Length occupied_strip(Length top_width, Length setback, const SpoilPile& pile);

}  // namespace mainbore::excavation
