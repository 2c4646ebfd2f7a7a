// How deep to run a taper tap so that the corporation stop makes up with the wanted threads.
//
// One turn advances a thread by its pitch p, whatever the taper: a tap run one turn deeper lets the stop go in one turn
// further by hand. With L1 the gauge length and L2 the effective length of the stop's thread (taper_thread.hpp), and x
// the length that goes in by hand:
//     engaged after Nw wrench turns      x + Nw p
//     effective threads still showing    s = (L2 - x)/p - Nw
//     so for a wanted Nw and s           x = L2 - (Nw + s) p
//     tap stop relative to gauge         delta = x - L1         negative: stop that far short of gauge
//     tip of the tap below the surface   L1 + projection + delta
//     diametral interference             Nw p taper
// The vanish threads beyond L2 show as well, and are not counted in s. Geometry of ASME B1.20.1 threads; a real tap
// and a real stop each stray from the standard (a turn either way is the usual gauging band, recalled, not read), so a
// trial tap settles the depth.
//
//     makeup(three_quarter_npt, {2.0, 2.0}).stop_past_gauge        // -0.0790 in: 1.11 turns short of gauge
#pragma once

#include "mainbore/mechanics/engagement.hpp"
#include "mainbore/mechanics/taper_thread.hpp"
#include "mainbore/units.hpp"

namespace mainbore::mechanics {

struct MakeupGoal {
  double wrench_turns = 0.0;     // Nw, past hand-tight
  double threads_showing = 0.0;  // s, effective threads left outside the face after the wrench turns
};

struct Makeup {
  Length hand_tight_length;       // x. Zero or less: the goal asks for more than the thread has
  double hand_tight_turns = 0.0;  // x/p
  Length stop_past_gauge;         // delta
  double turns_past_gauge = 0.0;  // delta/p
  Length engaged_length;          // x + Nw p
  Length interference;            // on diameter, after the wrench turns
};

// Throws std::invalid_argument when the pitch is not positive and finite, or a goal is negative or not finite.
Makeup makeup(const TaperThread& thread, const MakeupGoal& goal);

// The other way round: effective threads left showing by a tap stopped `stop_past_gauge` past gauge (negative: short of
// it) after `wrench_turns`. Below zero the effective thread is buried. Throws as makeup() does.
double threads_showing(const TaperThread& thread, Length stop_past_gauge, double wrench_turns);

// Hand-tight length in a hole tapped `stop_past_gauge` past gauge.
constexpr Length hand_tight_length(const TaperThread& thread, Length stop_past_gauge) {
  return thread.gauge_length + stop_past_gauge;
}

// Tip of the tap below the outer surface at the crown of the pipe, for a tap of the given projection
// (taper_thread.hpp).
constexpr Length tap_tip_depth(const TaperThread& thread, Length projection, Length stop_past_gauge) {
  return tap_tip_depth_at_gauge(thread, projection) + stop_past_gauge;
}

// From the end of the tool to the opposite wall of the bore: inside diameter + near wall - tool depth, less the lining
// on the far side. `tool_depth` is below the outer surface at the crown: tap tip depth plus any drill ahead of the tap.
// Negative: the tool strikes the opposite wall.
constexpr Length tool_clearance(const Barrel& barrel, Length lining, Length tool_depth) {
  return barrel.outside_diameter - barrel.wall - lining - tool_depth;
}

// How far the stop's end stands inside the bore: engaged length - wall. Negative: it ends inside the wall.
constexpr Length protrusion(Length engaged_length, Length wall) { return engaged_length - wall; }

}  // namespace mainbore::mechanics
