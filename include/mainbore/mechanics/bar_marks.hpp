// Marks on the boring bar: how far it is fed past the place where its tool touches the pipe.
//
// In a closed chamber nobody sees the tool. The bar is marked where it enters the machine when the tool touches the crown
// of the pipe, and everything else is feed f past that mark, along the axis of the bar:
//     the tool comes out in the bore      f = t                                 not before: t is the least wall
//     the hole is full width              f = t + [Ri - sqrt(Ri² - r²)] + (d/2)/tan(phi) + c      t the greatest wall
//     the tap catches                     f = a
//     stop tapping                        f = a + z, or as a trial found it with this very tool
//     the tool is at the far wall         f = D - t                             not past: least D, greatest t
//     the stop, on the bar, touches       f = T - I
// with D the outside diameter, t the wall, Ri = D/2 - t, d = 2 r the width cut, phi half the angle of the drill's point
// (90 degrees: a shell cutter), c what the drill is run past that (boring.hpp), a the tool ahead of the first thread of its
// tap, z how deep the tap's point goes below the outside of the pipe (makeup.hpp), T the tool and I the insertion tool with
// the stop on it, both from the same shoulder of the bar to the end.
// While it cuts, a tap leads itself by its pitch p: z takes z/p turns. A feed of pitch P takes f/P.
//
// Drawn back by b, the tool's end stands b over the pipe. It is clear of a valve or of the plug of a stop that reaches u
// over the pipe when b >= u; another tool on the same bar stands b + T - I over it.
//
// Lengths must be finite and not negative; the pipe must be one (engagement.hpp). Geometry alone: there is nothing to
// publish. A shell cutter of 1.000 in through a 0.250 in wall of 6.900 in outside: Ri = 3.200, drop 0.0393, full at 0.289 in.
#pragma once

#include <optional>

#include "mainbore/mechanics/boring.hpp"
#include "mainbore/mechanics/engagement.hpp"
#include "mainbore/units.hpp"

namespace mainbore::mechanics {

// What the pipe may be, by all that is known of it.
struct PipeRange {
  Length least_od;
  Length planned_od;
  Length least_wall;
  Length greatest_wall;
  Length farthest_wall;  // the far wall with its lining: no gauge was held to it
};

struct BarTool {
  Length width;                            // d
  Angle point = Angle::degrees(180.0);     // of the drill
  Length beyond;                           // c
  std::optional<Length> lead;              // a; absent: to be measured
  std::optional<Length> tap_depth;         // z; absent: by trial
  std::optional<Length> found_by_trial;    // feed at which the trial was stopped
  std::optional<Length> length;            // T
  std::optional<Length> insertion_length;  // I
};

struct BarMarks {
  Length breakthrough;               // the earliest
  std::optional<Length> full_width;  // the latest; absent where the tool is wider than the bore
  std::optional<Length> catches;
  std::optional<Length> stop_tapping;
  Length far_wall;                     // the tool's end touches it at the earliest
  std::optional<Length> stop_touches;  // negative: short of the tool's own mark
};

// Throws std::invalid_argument where a length is negative or not finite, or a wall leaves no bore.
[[nodiscard]] BarMarks bar_marks(const PipeRange& pipe, const BarTool& tool);

// b + T - I: how far over the pipe the end of the other tool stands with the bar drawn back by b.
[[nodiscard]] constexpr Length drawn_back_with(Length drawn_back, Length tool, Length other) {
  return drawn_back + tool - other;
}

}  // namespace mainbore::mechanics
