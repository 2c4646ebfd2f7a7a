#include "mainbore/excavation/soil.hpp"

#include <algorithm>
#include <stdexcept>

#include "excavation/compare.hpp"
#include "mainbore/bounded_list.hpp"

namespace mainbore::excavation {
namespace {

SoilType type_by_strength(Pressure strength, const SoilLimits& limits) {
  if (detail::at_least(strength, limits.type_a_least)) return SoilType::type_a;
  if (detail::at_most(strength, limits.type_c_most)) return SoilType::type_c;
  return SoilType::type_b;
}

}  // namespace

SoilClassification classify_soil(const SoilEvidence& evidence, const SoilLimits& limits) {
  if (!(limits.type_c_most > Pressure{}) || !(limits.type_c_most < limits.type_a_least)) {
    throw std::invalid_argument("classify_soil: the limits must be positive and that of Type C the lower");
  }
  if (evidence.unconfined_strength && *evidence.unconfined_strength < Pressure{}) {
    throw std::invalid_argument("classify_soil: the strength must not be negative");
  }

  // Each piece of evidence sets the firmest type the soil can still be; the weakest of these governs.
  struct Cap {
    SoilType type = SoilType::stable_rock;
    SoilReason reason = SoilReason::claimed;
  };
  BoundedList<Cap, soil_reason_count> caps;
  const auto cap = [&caps](bool applies, SoilType type, SoilReason reason) {
    if (applies) caps.push_back({type, reason});
  };

  cap(!evidence.claimed && !evidence.unconfined_strength, SoilType::type_c, SoilReason::unclassified);
  if (evidence.claimed) cap(true, *evidence.claimed, SoilReason::claimed);
  if (evidence.unconfined_strength) {
    cap(true, type_by_strength(*evidence.unconfined_strength, limits), SoilReason::strength);
  }
  cap(evidence.granular, SoilType::type_c, SoilReason::granular);
  cap(evidence.fissured, SoilType::type_b, SoilReason::fissured);
  cap(evidence.vibration, SoilType::type_b, SoilReason::vibration);
  cap(evidence.previously_disturbed, SoilType::type_b, SoilReason::previously_disturbed);
  cap(evidence.layers == LayerDip::gentler_than_4_to_1, SoilType::type_b, SoilReason::layers);
  cap(evidence.layers == LayerDip::at_least_4_to_1, SoilType::type_c, SoilReason::layers);
  cap(evidence.seeping, SoilType::type_c, SoilReason::seeping);
  cap(evidence.submerged, SoilType::type_c, SoilReason::submerged);

  SoilClassification result{.type = SoilType::stable_rock, .reasons = {}};
  for (const Cap& each : caps) result.type = std::max(result.type, each.type);
  for (const Cap& each : caps) {
    if (each.type == result.type) result.reasons.push_back(each.reason);
  }
  return result;
}

}  // namespace mainbore::excavation
