#include "mainbore/hydraulics/demand.hpp"

#include <array>
#include <stdexcept>

#include "support/approx.hpp"
#include "support/catch.hpp"
#include "unit/hydraulics/tables.hpp"

using namespace mainbore;
using namespace mainbore::hydraulics;

TEST_CASE("demand of whole houses") {
  const auto rows = test::demand_curve("gpm_flush_tank");
  const FixtureCurve curve(rows);
  const test::ReferenceTable table("hydraulics_house_demand.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const auto count = [&](const char* column) { return static_cast<int>(row.number(column)); };
    const std::array fixtures{FixtureGroup{3.6, count("bath_groups")}, FixtureGroup{1.4, count("kitchen_sinks")},
                              FixtureGroup{1.4, count("dishwashers")}, FixtureGroup{1.4, count("clothes_washers")}};
    const double units_total = total_fixture_units(fixtures);
    CHECK(units_total == Approx(row.number("units")));
    CHECK(fixture_demand(units_total, curve).flow / units::gpm == Approx(row.number("gpm")).margin(table.tolerance()));
  }
}

TEST_CASE("both published demand curves are read back at every row and rise between rows") {
  for (const char* column : {"gpm_flush_tank", "gpm_flush_valve"}) {
    const auto rows = test::demand_curve(column);
    const FixtureCurve curve(rows);
    Flow before;
    for (const auto& point : rows) {
      INFO(column << " at " << point.fixture_units);
      const FixtureDemand read = fixture_demand(point.fixture_units, curve);
      CHECK(read.flow == point.flow);
      CHECK(read.coverage == CurveCoverage::within);
      CHECK(fixture_demand(point.fixture_units + 0.5, curve).flow > before);
      before = read.flow;
    }
  }
}

TEST_CASE("beyond a demand curve the reading is on the safe side and says so") {
  const auto valve_rows = test::demand_curve("gpm_flush_valve");
  const FixtureCurve valves(valve_rows);
  CHECK(fixture_demand(0, valves).flow == Flow{});
  CHECK(fixture_demand(3, valves).flow == 15.0 * units::gpm);
  CHECK(fixture_demand(3, valves).coverage == CurveCoverage::below);
  // The last slope of the published table is 68 gpm in 1000 units.
  const FixtureDemand above = fixture_demand(6000, valves);
  CHECK(above.flow / units::gpm == Approx(593.0 + 68.0));
  CHECK(above.coverage == CurveCoverage::above);
}

TEST_CASE("continuous draws and sprinklers") {
  const auto rows = test::demand_curve("gpm_flush_tank");
  const FixtureCurve curve(rows);
  const Flow domestic = domestic_demand(11.4, curve, 5 * units::gpm);
  CHECK(domestic / units::gpm == Approx(20.64));
  // Two heads at 13 gpm govern over one at 18, and 5 gpm is added on a pipe shared by dwellings.
  const SprinklerFlows flows{18 * units::gpm, 13 * units::gpm};
  CHECK(sprinkler_demand(flows, {}) == 26 * units::gpm);
  CHECK(sprinkler_demand(flows, 5 * units::gpm) == 31 * units::gpm);
  CHECK(sprinkler_demand({18 * units::gpm, 8 * units::gpm}, {}) == 18 * units::gpm);
  CHECK(service_demand(domestic, 26 * units::gpm) == 26 * units::gpm);
  CHECK(service_demand(domestic, 18 * units::gpm) == domestic);
}

TEST_CASE("demand refuses broken input") {
  const auto rows = test::demand_curve("gpm_flush_tank");
  const FixtureCurve curve(rows);
  CHECK_THROWS_AS(fixture_demand(-1, curve), std::invalid_argument);
  CHECK_THROWS_AS(FixtureCurve(std::span(rows).first(1)), std::invalid_argument);
  const std::array falling{DemandPoint{5, 1 * units::gpm}, DemandPoint{5, 2 * units::gpm}};
  CHECK_THROWS_AS(FixtureCurve(falling), std::invalid_argument);
  CHECK_THROWS_AS(total_fixture_units(std::array{FixtureGroup{1.0, -1}}), std::invalid_argument);
}
