// Which duties an excavation brings with it at a given depth, after 29 CFR 1926.651 and 1926.652.
//
// The depths are inputs, without defaults: states set lower ones. What is fixed here is on which side the limit itself
// falls, because that is how the rules read:
//
//   protective system   depth >= limit   (5 ft; 5.00 needs one, 4.99 does not once a competent person finds no sign of
//                                         a cave-in; none in stable rock throughout)
//   way out             depth >= limit   (4 ft)
//   atmosphere test     depth >  limit   (4 ft, and only where bad air is to be expected)
//   engineer's design   depth >  limit   (20 ft; 20.00 may use the tables)
//   short-term slope    depth <= limit and open time <= limit   (12 ft and 24 h)
//   spoil               distance from the edge >= limit         (2 ft)
//   guard rail          depth >= limit   (6 ft, at a crossing)
//
// Depths are often converted from meters, and 1.2192 m is 4 ft only to the last bit of a double: a depth counts as at
// the limit when it is within one part in a million million of it.
#pragma once

#include <optional>

#include "mainbore/excavation/soil.hpp"
#include "mainbore/units.hpp"

namespace mainbore::excavation {

struct ExcavationThresholds {
  Length protective_system_depth;
  Length egress_depth;
  Length egress_travel;     // greatest way along the trench to a ladder (25 ft)
  Length ladder_extension;  // of the side rails above the top (3 ft)
  Length atmosphere_depth;
  Length engineer_depth;
  Length short_term_depth;
  Time short_term_open;
  Length spoil_setback;
  Length guardrail_depth;
};

// What a competent person found when looking for signs of a cave-in.
enum class GroundFinding { not_examined, no_sign, sign };

struct Opening {
  Length depth;
  SoilType soil = SoilType::type_c;
  GroundFinding finding = GroundFinding::not_examined;
  bool atmosphere_hazard_expected = false;
  bool public_crossing = false;               // people cross it on a walkway or bridge
  std::optional<Length> spoil_distance = {};  // from the edge to the toe of the spoil; nothing when not yet placed
};

enum class ProtectiveSystem {
  not_required,
  needs_finding,  // shallow, and nobody has looked: required until a competent person finds no sign
  required,
};

struct ExcavationDuties {
  ProtectiveSystem protective_system = ProtectiveSystem::required;
  bool egress = false;
  bool atmosphere_test = false;
  bool engineer_design = false;
  bool guardrail = false;
  bool spoil_too_near = false;
};

// Throws std::invalid_argument when the depth is negative or a threshold is not positive.
[[nodiscard]] ExcavationDuties duties_at(const Opening& opening, const ExcavationThresholds& thresholds);

// Ladders for a trench that is occupied from end to end, so that nobody is further than `travel` from one: the ladders
// stand at most 2 x travel apart and travel from the ends. 60 ft with 25 ft of travel takes 2. At least one.
// Throws std::invalid_argument when the length is negative or the travel not positive.
[[nodiscard]] int ladders_needed(Length trench_length, Length travel);

}  // namespace mainbore::excavation
