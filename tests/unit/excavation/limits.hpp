// The federal figures of 29 CFR 1926 Subpart P, as the tests pass them in.
#pragma once

#include <stdexcept>
#include <string>

#include "mainbore/excavation/slope.hpp"
#include "mainbore/excavation/soil.hpp"
#include "mainbore/excavation/thresholds.hpp"

namespace mainbore::test {

inline constexpr excavation::ExcavationThresholds federal{
    .protective_system_depth = 5 * units::foot,
    .egress_depth = 4 * units::foot,
    .egress_travel = 25 * units::foot,
    .ladder_extension = 3 * units::foot,
    .atmosphere_depth = 4 * units::foot,
    .engineer_depth = 20 * units::foot,
    .short_term_depth = 12 * units::foot,
    .short_term_open = 24 * units::hour,
    .spoil_setback = 2 * units::foot,
    .guardrail_depth = 6 * units::foot,
};

inline constexpr excavation::SlopeTable table_b1{
    .stable_rock = 0.0,
    .type_a = 0.75,
    .type_a_short_term = 0.5,
    .type_b = 1.0,
    .type_c = 1.5,
    .distress_flattening = 0.5,
};

inline constexpr excavation::SoilLimits appendix_a{.type_a_least = 1.5 * units::tsf, .type_c_most = 0.5 * units::tsf};

inline excavation::SoilType soil_named(const std::string& name) {
  if (name == "stable_rock") return excavation::SoilType::stable_rock;
  if (name == "type_a") return excavation::SoilType::type_a;
  if (name == "type_b") return excavation::SoilType::type_b;
  if (name == "type_c") return excavation::SoilType::type_c;
  throw std::runtime_error("no soil named " + name);
}

}  // namespace mainbore::test
