// Flushing a new service: how hard, how much water, how long.
//
//   Q = V A                flow for a scouring velocity V in the bore
//   t = n volume / Q       time for n changes of the water in the line
//
// Field guides ask for at least 2.5 ft/s to move dirt (1 ft/s only rinses) and two or three changes. At a velocity V
// one change of a single bore takes length / V: 100 ft at 2.5 ft/s is 40 s.
//
//     const FlushReach reach{1.0 * inch, 60 * foot};
//     flushing_at_velocity({&reach, 1}, 2.5 * ft_per_s, 3).time / second;      // 72
#pragma once

#include <span>

#include "mainbore/units.hpp"

namespace mainbore::sanitary {

// A run of one bore.
struct FlushReach {
  Length bore;
  Length length;
};

struct Flushing {
  Flow flow;
  Volume line_volume;  // what the line holds
  Volume discharged;   // what goes to waste: changes x line_volume
  Time time;
};

// Flushing so that even the widest reach sees the velocity: the narrower ones then run faster.
// Throws std::invalid_argument when there is no reach, a bore or the velocity is not positive, or a length or the
// number of changes is negative.
[[nodiscard]] Flushing flushing_at_velocity(std::span<const FlushReach> reaches, Velocity velocity, double changes);

// Flushing at the flow that can be had, when the line cannot reach the velocity. Same preconditions, on the flow.
[[nodiscard]] Flushing flushing_at_flow(std::span<const FlushReach> reaches, Flow flow, double changes);

}  // namespace mainbore::sanitary
