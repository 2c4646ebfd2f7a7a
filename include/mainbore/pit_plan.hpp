// The pit: its ground, how it is kept from falling in, its size, and what lies around it.
//
// excavation/*.hpp have the rules and formulas (29 CFR 1926 Subpart P); the numbers are rules of the utility or state.
// Present in a plan whose job gives facts of the excavation, the cover and the main's diameter.
//
// The pit over a main stands in ground that was dug before, so that it is never Type A unless the job says that it was
// not, and soil that nobody has classified is Type C. A deeper pit or a weaker soil never betters an answer.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "mainbore/excavation/pit.hpp"
#include "mainbore/excavation/slope.hpp"
#include "mainbore/excavation/soil.hpp"
#include "mainbore/excavation/thresholds.hpp"
#include "mainbore/job.hpp"
#include "mainbore/units.hpp"

namespace mainbore {

namespace excavation {
// In the order of SoilType and SoilReason.
inline constexpr std::array<std::string_view, 4> soil_type_names = {"stable rock", "Type A", "Type B", "Type C"};
inline constexpr std::array<std::string_view, 10> soil_reason_names = {"nobody has classified it",
                                                                       "as claimed",
                                                                       "by its strength",
                                                                       "sand or gravel",
                                                                       "fissured",
                                                                       "vibration",
                                                                       "dug before",
                                                                       "layers dip toward the pit",
                                                                       "water seeps in",
                                                                       "it stands under water"};
[[nodiscard]] constexpr std::string_view name_of(SoilType type) {
  return soil_type_names[static_cast<std::size_t>(type)];
}
[[nodiscard]] constexpr std::string_view name_of(SoilReason reason) {
  return soil_reason_names[static_cast<std::size_t>(reason)];
}
}  // namespace excavation

// The lower part of a wall that may stand upright in Type A soil, and the slope above it.
struct UprightLower {
  Length height;
  double slope_above = 0.0;
};

// Steps in the wall instead of a slope: heights at most these, and never steeper overall than the slope.
struct Benches {
  Length first;
  Length later;
};

struct Tapers {
  Length merging;   // a lane ends
  Length shifting;  // a lane moves sideways
  Length shoulder;
};

struct PitPlan {
  excavation::Pit pit;  // bottom, depth, the slope it is dug at: 0 where walls stand upright
  excavation::PitTop top;
  Length main_od;
  Length main_to_far_wall;  // at the bottom, from the far side of the main
  Length cover;
  excavation::SoilClassification soil;
  excavation::ProtectiveSystem protective_system = excavation::ProtectiveSystem::required;
  std::optional<Protection> protection;           // as chosen
  std::optional<excavation::AllowedSlope> slope;  // steepest allowed; nothing where an engineer designs
  std::optional<UprightLower> upright_lower;
  std::optional<Benches> benches;
  Length shield_above;  // where a slope stands over it
  Length shield_below;
  Volume bank;
  std::optional<Volume>
      bank_otherwise;  // with a shield where it slopes, sloped where it has one: what the choice moves
  Volume loose;
  Force weight;
  excavation::SpoilPile spoil;  // heaped along one side, over the length of the top
  Length setback;
  Length occupied;      // from the middle of the pit to the far foot of the spoil
  bool ladder = false;  // required; over a main under pressure one stands there anyway
  int ladders = 1;
  Length ladder_length;  // leaning 1 to 4, with the rails above the edge, in whole feet
  Length egress_travel;
  bool atmosphere_test = false;
  bool engineer_design = false;
  bool guardrail = false;
  std::optional<Tapers> tapers;
  double notice_days = 0.0;
  Length zone_half_width;     // dug by hand, from the middle of the main
  std::string_view own_mark;  // color
  std::string_view stop_mark;
  Length hanging;            // of the main, laid bare
  bool joint_hangs = false;  // a joint or fitting lies in that length
  std::optional<Time> fill;  // by the open hole, to the crown of the main
};

}  // namespace mainbore
