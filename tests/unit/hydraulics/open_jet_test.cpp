#include "mainbore/hydraulics/open_jet.hpp"

#include <stdexcept>

#include "mainbore/hydraulics/pipe.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::hydraulics;

namespace {

constexpr UnitWeight water_weight = 62.37 * units::lbf_per_ft3;

}  // namespace

TEST_CASE("flow of an open hole") {
  const test::ReferenceTable table("hydraulics_jet_flow.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Flow flow = open_jet_flow(row.number("bore_in") * units::inch, row.number("psi") * units::psi,
                                    row.number("cd"), water_weight);
    CHECK(flow / units::gpm == Approx(row.number("gpm")).epsilon(table.tolerance()));
  }
  CHECK(jet_velocity(60 * units::psi, water_weight) / units::ft_per_s == Approx(94.4).margin(0.05));
  CHECK(jet_velocity(150 * units::psi, water_weight) / units::ft_per_s == Approx(149.3).margin(0.05));
  CHECK(open_jet_flow(units::inch, {}, 0.61, water_weight) == Flow{});
}

TEST_CASE("push of a jet") {
  const test::ReferenceTable table("hydraulics_jet_force.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Length bore = row.number("bore_in") * units::inch;
    const Pressure pressure = row.number("psi") * units::psi;
    const double close = table.tolerance();
    CHECK(bore_area(bore) * pressure / units::lbf == Approx(row.number("blocked_lbf")).margin(close));
    CHECK(jet_force(bore, pressure, 1.0, 1.0) / units::lbf == Approx(row.number("ideal_lbf")).margin(close));
    CHECK(jet_force(bore, pressure, 0.61, 0.98) / units::lbf == Approx(row.number("sharp_hole_lbf")).margin(close));
    CHECK(jet_force(bore, pressure, 0.8, 0.8) / units::lbf == Approx(row.number("short_tube_lbf")).margin(close));
  }
  const test::ReferenceTable si("hydraulics_jet_thrust_si.csv");
  for (const auto& row : si.rows()) {
    INFO(row.where());
    const Force force = jet_force(row.number("bore_mm") * units::mm, row.number("kpa") * units::kpa, 1.0, 1.0);
    CHECK(force / units::newton == Approx(row.number("newton")).epsilon(si.tolerance()));
  }
}

TEST_CASE("the jet's push is its momentum") {
  const Length bore = units::inch;
  const Pressure pressure = 90 * units::psi;
  const Velocity velocity = jet_velocity(pressure, water_weight);
  const Force momentum =
      water_weight / units::standard_gravity * open_jet_flow(bore, pressure, 1.0, water_weight) * velocity;
  CHECK(jet_force(bore, pressure, 1.0, 1.0) / momentum == Approx(1.0));
}

TEST_CASE("time for a pit to fill") {
  // A pit of 4.5 x 6 x 6 ft (1212 gal) under a clean one-inch hole at 100 psi: 6.6 minutes.
  const Flow inflow = open_jet_flow(units::inch, 100 * units::psi, 0.62, water_weight);
  CHECK(inflow / units::gpm == Approx(185.0).epsilon(0.001));
  const Volume pit = 4.5 * 6 * 6 * units::ft3;
  CHECK(pit / units::gallon == Approx(1212).epsilon(0.001));
  CHECK(*time_to_fill(pit, inflow) / units::minute == Approx(6.6).margin(0.06));
  CHECK(*time_to_fill(6 * 6 * units::ft3, inflow) / units::minute == Approx(1.5).margin(0.06));
  // A pump that takes half the inflow doubles the time; one that keeps up ends it.
  CHECK(*time_to_fill(pit, inflow, 0.5 * inflow) / *time_to_fill(pit, inflow) == Approx(2.0));
  CHECK_FALSE(time_to_fill(pit, inflow, inflow).has_value());
}

TEST_CASE("an open jet refuses what makes no sense") {
  CHECK_THROWS_AS(open_jet_flow(units::inch, -units::psi, 0.6, water_weight), std::invalid_argument);
  CHECK_THROWS_AS(open_jet_flow(units::inch, units::psi, 0.0, water_weight), std::invalid_argument);
  CHECK_THROWS_AS(open_jet_flow(units::inch, units::psi, 1.1, water_weight), std::invalid_argument);
  CHECK_THROWS_AS(jet_velocity(units::psi, {}), std::invalid_argument);
}
