#include "mainbore/hydraulics/water.hpp"

#include <stdexcept>

#include "support/approx.hpp"
#include "support/catch.hpp"
#include "unit/hydraulics/tables.hpp"

using namespace mainbore;
using namespace mainbore::hydraulics;
using test::ft2_per_s;
using test::trade_weight;

TEST_CASE("the elevation example of the plumbing code") {
  CHECK(pressure_of_head(20 * units::foot, trade_weight) / units::psi == Approx(8.66).margin(1e-9));
  CHECK(head_of_pressure(8.66 * units::psi, trade_weight) / units::foot == Approx(20.0));
}

TEST_CASE("allowable head loss of the published sample problem") {
  const test::ReferenceTable table("hydraulics_allowable_head.csv");
  const UnitWeight weight = units::psi / (2.31 * units::foot);
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Length needed = head_of_pressure(row.number("needed_psi") * units::psi, weight);
    const Length allowable = (row.number("tank_ft") - row.number("service_ft")) * units::foot - needed;
    CHECK(allowable / units::foot == Approx(row.number("allowable_ft")).margin(table.tolerance()));
  }
}

TEST_CASE("water properties follow the published table and an independent one") {
  const auto points = test::water_table();
  const test::ReferenceTable table("hydraulics_water_properties.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Water water = water_at(Temperature::fahrenheit(row.number("degF")), points);
    CHECK(water.weight / units::lbf_per_ft3 == Approx(row.number("weight_lbf_ft3")).epsilon(1e-12));
    CHECK(water.viscosity / ft2_per_s * 1e5 == Approx(row.number("nu_other_set")).epsilon(table.tolerance()));
  }
  const Water between = water_at(Temperature::fahrenheit(45), points);
  CHECK(between.viscosity / ft2_per_s * 1e5 == Approx((1.664 + 1.410) / 2));
  // 10 degC is 50 degF: 1.3101 cSt and 0.99973 g/cm3 by the International Critical Tables.
  const Water ten_celsius = water_at(Temperature::celsius(10), points);
  CHECK(ten_celsius.viscosity / (units::mm * units::mm / units::second) == Approx(1.3101).epsilon(0.005));
  CHECK(ten_celsius.density() / units::slug_per_ft3 == Approx(0.99973 * 1.940320).epsilon(0.001));
}

TEST_CASE("outside its table water keeps the end rows") {
  const auto points = test::water_table();
  CHECK(water_at(Temperature::fahrenheit(20), points).viscosity == points.front().water.viscosity);
  CHECK(water_at(Temperature::fahrenheit(120), points).weight == points.back().water.weight);
  CHECK_THROWS_AS(water_at(Temperature::fahrenheit(50), {}), std::invalid_argument);
  auto unordered = points;
  std::swap(unordered[1], unordered[2]);
  CHECK_THROWS_AS(water_at(Temperature::fahrenheit(50), unordered), std::invalid_argument);
}
