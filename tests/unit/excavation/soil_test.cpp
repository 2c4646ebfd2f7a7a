#include "mainbore/excavation/soil.hpp"

#include <stdexcept>

#include "support/catch.hpp"
#include "support/reference_table.hpp"
#include "unit/excavation/limits.hpp"

using namespace mainbore;
using namespace mainbore::excavation;

namespace {

SoilEvidence evidence_of(const test::ReferenceRow& row) {
  SoilEvidence evidence;
  if (row.has("claimed")) evidence.claimed = test::soil_named(row.text("claimed"));
  if (row.has("tsf")) evidence.unconfined_strength = row.number("tsf") * units::tsf;
  const std::string& condition = row.text("condition");
  evidence.previously_disturbed = condition == "disturbed";
  evidence.vibration = condition == "vibration";
  evidence.fissured = condition == "fissured";
  evidence.seeping = condition == "seeping";
  evidence.submerged = condition == "submerged";
  evidence.granular = condition == "granular";
  if (condition == "dip") evidence.layers = LayerDip::gentler_than_4_to_1;
  if (condition == "steep dip") evidence.layers = LayerDip::at_least_4_to_1;
  return evidence;
}

}  // namespace

TEST_CASE("soil types of Appendix A") {
  const test::ReferenceTable table("excavation_soil_types.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    CHECK(classify_soil(evidence_of(row), test::appendix_a).type == test::soil_named(row.text("type")));
  }
}

TEST_CASE("a strength in kilopascals meets the limit it equals") {
  // 1.5 ton/ft2 is 143.64 kPa; the value goes through kilopascals and back before it is compared.
  const double kpa = 1.5 * units::tsf / units::kpa;
  CHECK(classify_soil({.unconfined_strength = kpa * units::kpa}, test::appendix_a).type == SoilType::type_a);
  CHECK(classify_soil({.unconfined_strength = 143.6 * units::kpa}, test::appendix_a).type == SoilType::type_b);
  CHECK(classify_soil({.unconfined_strength = 144 * units::kpa}, test::appendix_a).type == SoilType::type_a);
  CHECK(classify_soil({.unconfined_strength = 48 * units::kpa}, test::appendix_a).type == SoilType::type_b);
  CHECK(classify_soil({.unconfined_strength = 47.88 * units::kpa}, test::appendix_a).type == SoilType::type_c);
}

TEST_CASE("every reason that leads to the type is given") {
  const auto reasons = [](const SoilClassification& soil) {
    return std::vector(soil.reasons.begin(), soil.reasons.end());
  };
  const auto old_backfill_in_street =
      classify_soil({.claimed = SoilType::type_a, .vibration = true, .previously_disturbed = true}, test::appendix_a);
  CHECK(old_backfill_in_street.type == SoilType::type_b);
  CHECK(reasons(old_backfill_in_street) == std::vector{SoilReason::vibration, SoilReason::previously_disturbed});
  CHECK(reasons(classify_soil({}, test::appendix_a)) == std::vector{SoilReason::unclassified});
  CHECK(reasons(classify_soil({.fissured = true, .submerged = true}, test::appendix_a)) ==
        std::vector{SoilReason::unclassified, SoilReason::submerged});
}

TEST_CASE("more evidence never makes the soil firmer") {
  for (unsigned mask = 0; mask < 64; ++mask) {
    SoilEvidence evidence{.claimed = SoilType::type_a};
    evidence.fissured = (mask & 1U) != 0;
    evidence.vibration = (mask & 2U) != 0;
    evidence.previously_disturbed = (mask & 4U) != 0;
    evidence.seeping = (mask & 8U) != 0;
    evidence.submerged = (mask & 16U) != 0;
    evidence.granular = (mask & 32U) != 0;
    const SoilType expected = (mask & 56U) != 0  ? SoilType::type_c
                              : (mask & 7U) != 0 ? SoilType::type_b
                                                 : SoilType::type_a;
    CHECK(classify_soil(evidence, test::appendix_a).type == expected);
  }
}

TEST_CASE("soil limits that are out of order are refused") {
  CHECK_THROWS_AS(classify_soil({}, SoilLimits{0.5 * units::tsf, 1.5 * units::tsf}), std::invalid_argument);
  CHECK_THROWS_AS(classify_soil({}, SoilLimits{1.5 * units::tsf, {}}), std::invalid_argument);
  CHECK_THROWS_AS(classify_soil({.unconfined_strength = -units::tsf}, test::appendix_a), std::invalid_argument);
}
