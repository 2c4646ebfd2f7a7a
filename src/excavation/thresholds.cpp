#include "mainbore/excavation/thresholds.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "excavation/compare.hpp"

namespace mainbore::excavation {
namespace {

void require_positive(const ExcavationThresholds& limits) {
  for (const Length limit : {limits.protective_system_depth, limits.egress_depth, limits.atmosphere_depth,
                             limits.engineer_depth, limits.spoil_setback, limits.guardrail_depth}) {
    if (!(limit > Length{})) throw std::invalid_argument("duties_at: a threshold must be positive");
  }
}

ProtectiveSystem protective_system(const Opening& opening, Length limit) {
  if (opening.soil == SoilType::stable_rock && opening.finding != GroundFinding::sign) {
    return ProtectiveSystem::not_required;
  }
  if (detail::at_least(opening.depth, limit) || opening.finding == GroundFinding::sign) {
    return ProtectiveSystem::required;
  }
  return opening.finding == GroundFinding::no_sign ? ProtectiveSystem::not_required : ProtectiveSystem::needs_finding;
}

}  // namespace

ExcavationDuties duties_at(const Opening& opening, const ExcavationThresholds& thresholds) {
  require_positive(thresholds);
  const Length depth = opening.depth;
  if (depth < Length{}) throw std::invalid_argument("duties_at: the depth must not be negative");
  return {
      .protective_system = protective_system(opening, thresholds.protective_system_depth),
      .egress = detail::at_least(depth, thresholds.egress_depth),
      .atmosphere_test = opening.atmosphere_hazard_expected && detail::exceeds(depth, thresholds.atmosphere_depth),
      .engineer_design = detail::exceeds(depth, thresholds.engineer_depth),
      .guardrail = opening.public_crossing && detail::at_least(depth, thresholds.guardrail_depth),
      .spoil_too_near = opening.spoil_distance && !detail::at_least(*opening.spoil_distance, thresholds.spoil_setback),
  };
}

int ladders_needed(Length trench_length, Length travel) {
  if (trench_length < Length{} || !(travel > Length{})) {
    throw std::invalid_argument("ladders_needed: the length must not be negative and the travel positive");
  }
  const double spans = trench_length / (2.0 * travel);
  return std::max(1, static_cast<int>(std::ceil(spans * (1.0 - detail::conversion_slack))));
}

}  // namespace mainbore::excavation
