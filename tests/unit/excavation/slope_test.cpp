#include "mainbore/excavation/slope.hpp"

#include <stdexcept>

#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"
#include "unit/excavation/limits.hpp"

using namespace mainbore;
using namespace mainbore::excavation;

namespace {

double run_of(SoilType soil, bool distress = false) {
  return allowed_slope({.soil = soil, .depth = 8 * units::foot, .open_for = 48 * units::hour, .distress = distress},
                       test::table_b1, test::federal)
      ->run;
}

}  // namespace

TEST_CASE("Table B-1 and the angles printed there") {
  const test::ReferenceTable table("excavation_slopes.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    CHECK(slope_angle(row.number("run")).degrees() == Approx(row.number("degrees")).margin(table.tolerance()));
    if (row.text("soil") == "type_a_short_term") {
      const auto slope =
          allowed_slope({.soil = SoilType::type_a, .depth = 12 * units::foot, .open_for = 24 * units::hour},
                        test::table_b1, test::federal);
      REQUIRE(slope.has_value());
      CHECK(slope->short_term);
      CHECK(slope->run == row.number("run"));
    } else {
      CHECK(run_of(test::soil_named(row.text("soil"))) == row.number("run"));
    }
  }
  CHECK(slope_angle(1.5).degrees() == Approx(33.69).margin(0.005));
}

TEST_CASE("ground in distress is cut back flatter") {
  CHECK(run_of(SoilType::type_a, true) == 1.25);
  CHECK(run_of(SoilType::type_b, true) == 1.5);
  CHECK(run_of(SoilType::type_c, true) == 2.0);
  CHECK(run_of(SoilType::stable_rock, true) == 2.0);
  const auto shallow =
      allowed_slope({.soil = SoilType::type_a, .depth = 6 * units::foot, .open_for = 4 * units::hour, .distress = true},
                    test::table_b1, test::federal);
  CHECK(shallow->run == 1.25);
  CHECK_FALSE(shallow->short_term);
}

TEST_CASE("a slope is never steeper for weaker soil, more depth or more time") {
  double weaker = 0.0;
  for (const SoilType soil : {SoilType::stable_rock, SoilType::type_a, SoilType::type_b, SoilType::type_c}) {
    CHECK(run_of(soil) >= weaker);
    weaker = run_of(soil);
    double deeper = 0.0;
    for (double feet = 1; feet <= 20; feet += 0.25) {
      const auto slope = allowed_slope({.soil = soil, .depth = feet * units::foot, .open_for = 8 * units::hour},
                                       test::table_b1, test::federal);
      REQUIRE(slope.has_value());
      CHECK(slope->run >= deeper);
      deeper = slope->run;
    }
  }
}

TEST_CASE("slopes refuse what makes no sense") {
  CHECK_THROWS_AS(allowed_slope({.depth = -units::foot, .open_for = {}}, test::table_b1, test::federal),
                  std::invalid_argument);
  CHECK_THROWS_AS(allowed_slope({.depth = units::foot, .open_for = {}}, test::table_b1, ExcavationThresholds{}),
                  std::invalid_argument);
  SlopeTable negative = test::table_b1;
  negative.type_b = -1;
  CHECK_THROWS_AS(allowed_slope({.depth = units::foot, .open_for = {}}, negative, test::federal),
                  std::invalid_argument);
}
