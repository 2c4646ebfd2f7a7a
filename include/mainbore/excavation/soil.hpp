// Soil type of the ground around the pit, after 29 CFR 1926 Subpart P, Appendix A.
//
//   Type A    cohesive, unconfined compressive strength 1.5 ton/ft2 or more, and nothing that bars it
//   Type B    more than 0.5 and less than 1.5 ton/ft2; would-be Type A that is barred; dry unstable rock
//   Type C    0.5 ton/ft2 or less; granular soil; water seeping freely or standing; and whatever nobody has classified
//
// Barred from Type A: fissured, subject to vibration, previously disturbed, or in layers that dip toward the cut. A pit
// over an old main stands in the main's own backfill (disturbed), and one in a traveled street shakes (vibration), so
// a tap pit is hardly ever Type A. Layers that dip toward the cut at 4 horizontal to 1 vertical or steeper make Type C,
// and so does water.
//
// What the observer claims and what the strength shows are both heard; the weaker governs.
#pragma once

#include <cstddef>
#include <optional>

#include "mainbore/bounded_list.hpp"
#include "mainbore/units.hpp"

namespace mainbore::excavation {

// From the firmest to the weakest, so that "weaker than" is "greater than".
enum class SoilType { stable_rock, type_a, type_b, type_c };

enum class LayerDip { none, gentler_than_4_to_1, at_least_4_to_1 };

struct SoilEvidence {
  std::optional<SoilType> claimed = {};              // by a competent person's visual and manual tests
  std::optional<Pressure> unconfined_strength = {};  // of cohesive soil, by penetrometer, shear vane or laboratory
  bool granular = false;                             // gravel, sand, loamy sand: no cohesion, whatever the reading
  bool fissured = false;
  bool vibration = false;
  bool previously_disturbed = false;
  bool seeping = false;
  bool submerged = false;
  LayerDip layers = LayerDip::none;
};

// The two strengths that part the types; data, because a jurisdiction sets them.
struct SoilLimits {
  Pressure type_a_least;  // Type A at this strength or more
  Pressure type_c_most;   // Type C at this strength or less
};

// What made the soil no firmer than it is.
enum class SoilReason {
  unclassified,
  claimed,
  strength,
  granular,
  fissured,
  vibration,
  previously_disturbed,
  layers,
  seeping,
  submerged,
};
inline constexpr std::size_t soil_reason_count = static_cast<std::size_t>(SoilReason::submerged) + 1;

struct SoilClassification {
  SoilType type = SoilType::type_c;
  BoundedList<SoilReason, soil_reason_count> reasons;  // every one that by itself leads to `type`
};

// Exact at the limits: 1.50 ton/ft2 is Type A and 1.49 is not; 0.50 is Type C and 0.51 is Type B. A strength that came
// through a conversion of units counts as at the limit when it is within one part in a million million.
// Throws std::invalid_argument when the limits are not 0 < type_c_most < type_a_least or a strength is negative.
[[nodiscard]] SoilClassification classify_soil(const SoilEvidence& evidence, const SoilLimits& limits);

}  // namespace mainbore::excavation
