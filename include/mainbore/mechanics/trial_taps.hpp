// The tap's depth from trial taps: the only honest depth where the thread's dimensions are not known.
//
// A trial is a hole tapped in a scrap of the same pipe (or in a plate, if the mark is taken from where the tap touches)
// with the tool and a stop of the lot to be used: the tap is run to a depth mark d on bar or feed screw, the stop is
// turned in by hand and then by the wrench, and the threads still showing outside the face are counted.
//
// Why one turn deeper is one turn more by hand, whatever the taper. Run on by a depth e, a tap of taper T (diameter per
// length) leaves the hole wider by T e at every level. The stop's thread, of the same taper, is as wide as the hole
// again when it has gone in further by T e / T = e. A thread of pitch p moves p a turn, the tap's as well as the
// stop's:
//     one more turn of the tap  ->  e = p deeper  ->  one more turn of the stop by hand         (T has dropped out)
// So with h turns by hand, w by the wrench, s threads showing after them, of trial i:
//     c = d - h p             the same in every trial of this tool and stop; its spread tests the counting of h
//     n = h + w + s           the thread of this stop, in turns: the same in every trial
// and for wanted w*, s* the stop must go in h* = n - w* - s* by hand, the tap therefore to
//     d* = c + h* p = d + (w + s - w* - s*) p
// in which h does not appear: turns by hand need not be counted, and where they are they check the rest.
// The mark is the mean of the trials that agree. Depth counts from any mark as long as it is the same one throughout.
//
// The pitch must be that of the stop at hand: for the AWWA taper, whose standard was not read, count the threads over
// an inch. Nothing here is published; the geometry is derived as above.
//
//     // 14 threads per inch; two wrench turns and two threads showing are wanted; 2-1/2 turns and 3 threads were had.
//     const TrialTap trial{1.50 * units::inch, 4.0, 2.5, 3.0};
//     trial_taps({&trial, 1}, 14.0 * units::per_inch, {2.0, 2.0}).mark    // 1.607 in: 1.5 turns deeper
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "mainbore/mechanics/makeup.hpp"
#include "mainbore/units.hpp"

namespace mainbore::mechanics {

struct TrialTap {
  Length depth;                      // d, from the mark used throughout
  std::optional<double> hand_turns;  // h; absent: not counted
  double wrench_turns = 0.0;         // w
  double threads_showing = 0.0;      // s; below zero: buried by so many, as counted on a longer stop
};

// Of turns of a stop by wrench an eye tells a quarter apart.
inline constexpr double quarter_turn = 0.25;

// When trials may be believed. Common practice: no publication asks for a number of trials.
struct TrialLimits {
  int least_agreeing = 3;  // trials that must agree
  double spread = 0.5;     // turns between the least and the greatest mark of trials that agree
  double reach = 1.0;      // turns by which the mark may lie outside the depths tried
};

// Why the mark is not to be used yet.
enum class TrialDoubt : std::uint8_t {
  too_few,            // fewer trials agree than are wanted
  do_not_agree,       // a trial lies further off than the spread: it is left out of the mean where the rest agree
  outside_tried,      // the mark lies further from every trial than the reach: tap the next trial there
  hand_turns_differ,  // c spreads too wide: wrong pitch, miscounted turns, another tap or another stop
  thread_too_short,   // h* is zero or less: this stop has not the turns that are wanted
};

[[nodiscard]] constexpr std::string_view name_of(TrialDoubt doubt) {
  constexpr std::array<std::string_view, 5> names = {"too-few", "do-not-agree", "outside-tried", "hand-turns-differ",
                                                     "thread-too-short"};
  return names[static_cast<std::size_t>(doubt)];
}

struct TrialResult {
  Length mark;                       // d*, mean of the trials that agree
  double turns_from_last = 0.0;      // of the tap, from the last trial's depth to the mark; positive: deeper
  Length spread;                     // greatest less least d* of the trials that agree
  double spread_turns = 0.0;         // the same over p
  std::vector<Length> marks;         // d* by each trial, in the order given
  std::vector<std::size_t> stray;    // places in that order of the trials left out
  std::optional<double> hand_turns;  // h*, what to count at the mark; where any trial that agrees counted
  std::vector<TrialDoubt> doubts;    // empty: the mark may be used
  int further_trials = 0;            // at least so many more, tapped at `mark`

  [[nodiscard]] bool settled() const { return doubts.empty(); }
};

// Which trials agree: of all groups of trials whose marks lie within the spread, the largest; of equals, the one that
// spreads least, then the shallower, because a hole tapped short can be tapped on.
// Throws std::invalid_argument when there is no trial, the pitch is not positive and finite, a depth or a count is not
// finite, turns or a wanted count is negative, or a limit is negative or asks for less than one trial.
[[nodiscard]] TrialResult trial_taps(std::span<const TrialTap> trials, InverseLength threads_per_inch,
                                     const MakeupGoal& wanted, const TrialLimits& limits = {});

}  // namespace mainbore::mechanics
