// What if: how far each number of a job can move before the answer changes, found by asking the planner.
//
// For every numeric fact the job gives, or the planner assumed for it, the plan is made again with the fact moved up
// and down, all else as it is, and compared: the verdict, the method (direct, saddle, sleeve; how many; what size), and
// the findings that hold or stop it. A change is a bound:
//     line pressure   70 psi   up to 90 psi; at 91 psi hold: pressure.over-feed-limit
//     wall            0.27 in  down to 0.24 in; at 0.23 in hold: direct.thin-wall
//     nearest joint            no nearer than 24 in; at 23 in hold: place.moved
// Each bound lies between two neighboring readings of the gauge: `holds_to` still gives the answer at hand (of a
// second bound: the verdict at hand), `changes_at`, one reading further, does not. Readings are whole multiples of the
// step below, in the units asked for:
//     pressure 1 psi, 5 kPa     wall and diameter 0.01 in, 0.2 mm     circumference 1/16 in, 1 mm
//     along the main 1 in, 20 mm     temperature 1 degF, 0.5 degC     sizes: from one trade size to the next
// In each direction the nearest change is given and, where that leaves the verdict as it was, the nearest change of the
// verdict too. Facts the job leaves out start from what the planner assumed as if it had been read (`given` is false,
// and `at` says what that reading alone would make of the job); a wall from the tabulated one, a joint from beyond
// reach.
//
// Search: probes outward at growing distances, at most a sixteenth of the range apart, then bisection between the two
// that differ: at most 64 plans a fact and direction for the first change. A stretch of other answers that begins and
// ends between two probes can be missed; within 16 steps of the value nothing is.
//
//     for (const WhatIf& fact : what_if(job, planner)) ...
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/finding.hpp"
#include "mainbore/job.hpp"
#include "mainbore/planner.hpp"

namespace mainbore {

// What a plan comes down to.
struct Outcome {
  Verdict verdict = Verdict::no_go;
  Method method = Method::none;
  int count = 1;
  std::optional<NominalSize> tap;       // of each of a series of smaller taps; absent: the size asked
  std::vector<FindingCode> hindrances;  // codes that hold or stop, rising, each once

  friend bool operator==(const Outcome&, const Outcome&) = default;
};
[[nodiscard]] Outcome outcome_of(const Plan& plan);

enum class Effect : std::uint8_t { better, worse, other };  // other: another method, or one hold for another
[[nodiscard]] constexpr std::string_view name_of(Effect effect) {
  return effect == Effect::better ? "better" : effect == Effect::worse ? "worse" : "other";
}

// A Measure or a NominalSize.
using FactValue = Detail;

struct Bound {
  FactValue holds_to;    // the last reading before the change
  FactValue changes_at;  // the next one
  Effect effect = Effect::other;
  Outcome then;                      // at `changes_at`
  std::vector<FindingCode> arrives;  // hindrances that were not there before
  std::vector<FindingCode> leaves;   // and those that are gone; none is said to be when the verdict is no-go
};

struct WhatIf {
  std::string path;       // "main.pressure", "nearby[0].along"; "nearby" for a joint that the job does not list
  std::string_view name;  // "line pressure"
  bool given = false;
  FactValue value;  // as given or assumed
  Outcome at;       // with that value read: where it is given, the plan's own outcome
  FactValue least;  // the range searched
  FactValue greatest;
  std::vector<Bound> down;  // none: no change down to `least`; else the nearest, and the nearest change of the verdict
  std::vector<Bound> up;
};

// The facts in the order of the job. The job must have its four required facts: throws as Planner::plan() does.
[[nodiscard]] std::vector<WhatIf> what_if(const Job& job, const Planner& planner, UnitSystem system = UnitSystem::us);

// The job with one fact set to a reading, as the search sets it. The path and the value must be a WhatIf's.
// Throws std::invalid_argument for a path that is none.
[[nodiscard]] Job with_fact(Job job, std::string_view path, const FactValue& value);

}  // namespace mainbore
