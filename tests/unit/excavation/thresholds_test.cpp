#include "mainbore/excavation/thresholds.hpp"

#include <stdexcept>

#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"
#include "unit/excavation/limits.hpp"

using namespace mainbore;
using namespace mainbore::excavation;

namespace {

GroundFinding finding_named(const std::string& name) {
  if (name == "sign") return GroundFinding::sign;
  if (name == "no_sign") return GroundFinding::no_sign;
  return GroundFinding::not_examined;
}

const char* name_of(ProtectiveSystem system) {
  switch (system) {
    case ProtectiveSystem::not_required:
      return "no";
    case ProtectiveSystem::needs_finding:
      return "finding";
    case ProtectiveSystem::required:
      return "yes";
  }
  return "";
}

const char* yes_or_no(bool value) { return value ? "yes" : "no"; }

}  // namespace

TEST_CASE("duties and slopes at the boundaries") {
  const test::ReferenceTable table("excavation_thresholds.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where() << " " << row.text("id"));
    Opening opening{.depth = row.number("depth_ft") * units::foot,
                    .soil = test::soil_named(row.text("soil")),
                    .finding = finding_named(row.text("finding")),
                    .atmosphere_hazard_expected = row.text("hazard") == "yes"};
    if (row.has("spoil_ft")) opening.spoil_distance = row.number("spoil_ft") * units::foot;
    const ExcavationDuties duties = duties_at(opening, test::federal);
    CHECK(name_of(duties.protective_system) == row.text("system"));
    CHECK(yes_or_no(duties.egress) == row.text("egress"));
    CHECK(yes_or_no(duties.atmosphere_test) == row.text("atmosphere"));
    CHECK(yes_or_no(duties.engineer_design) == row.text("engineer"));
    CHECK(yes_or_no(duties.spoil_too_near) == row.text("spoil_too_near"));

    const auto slope =
        allowed_slope({.soil = opening.soil, .depth = opening.depth, .open_for = row.number("open_h") * units::hour},
                      test::table_b1, test::federal);
    if (row.text("slope") == "none") {
      CHECK_FALSE(slope.has_value());
    } else {
      REQUIRE(slope.has_value());
      CHECK(slope->run == row.number("slope"));
    }
  }
}

TEST_CASE("a depth that came through meters meets the limit it equals") {
  for (const double feet : {4.0, 5.0, 6.0, 12.0, 20.0}) {
    INFO(feet << " ft");
    const Length depth = feet * 0.3048 * units::meter;
    const Opening opening{.depth = depth, .atmosphere_hazard_expected = true, .public_crossing = true};
    const ExcavationDuties duties = duties_at(opening, test::federal);
    CHECK(duties.egress);
    CHECK(duties.atmosphere_test == (feet > 4.0));
    CHECK((duties.protective_system == ProtectiveSystem::required) == (feet >= 5.0));
    CHECK(duties.guardrail == (feet >= 6.0));
    CHECK_FALSE(duties.engineer_design);
  }
  // A tenth of a millimeter either way is a real difference.
  CHECK_FALSE(duties_at({.depth = 1219.1 * units::mm}, test::federal).egress);
  CHECK(duties_at({.depth = 6096.1 * units::mm}, test::federal).engineer_design);
}

TEST_CASE("a state's lower threshold is obeyed") {
  ExcavationThresholds state = test::federal;
  state.protective_system_depth = 4 * units::foot;
  const Opening opening{.depth = 4.5 * units::foot, .finding = GroundFinding::no_sign};
  CHECK(duties_at(opening, state).protective_system == ProtectiveSystem::required);
  CHECK(duties_at(opening, test::federal).protective_system == ProtectiveSystem::not_required);
}

TEST_CASE("rock with a sign of cave-in is not stable") {
  const Opening opening{.depth = 3 * units::foot, .soil = SoilType::stable_rock, .finding = GroundFinding::sign};
  CHECK(duties_at(opening, test::federal).protective_system == ProtectiveSystem::required);
}

TEST_CASE("ladders") {
  const auto ladders = [](double feet) { return ladders_needed(feet * units::foot, 25 * units::foot); };
  CHECK(ladders(60) == 2);
  CHECK(ladders(50) == 1);
  CHECK(ladders(50.1) == 2);
  CHECK(ladders(100) == 2);
  CHECK(ladders(6) == 1);
  CHECK(ladders(0) == 1);
  CHECK(ladders_needed(6 * 2.6 * units::meter, 2.6 * units::meter) == 3);  // computes to just above 3
  CHECK_THROWS_AS(ladders_needed(units::foot, {}), std::invalid_argument);
}

TEST_CASE("duties refuse a missing threshold and a negative depth") {
  ExcavationThresholds missing = test::federal;
  missing.egress_depth = {};
  CHECK_THROWS_AS(duties_at({.depth = units::foot}, missing), std::invalid_argument);
  CHECK_THROWS_AS(duties_at({.depth = -units::foot}, test::federal), std::invalid_argument);
}
