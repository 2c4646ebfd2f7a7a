#include "mainbore/hydraulics/friction.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>

#include "mainbore/hydraulics/minor_loss.hpp"
#include "mainbore/hydraulics/pipe.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"
#include "unit/hydraulics/draw.hpp"

using namespace mainbore;
using namespace mainbore::hydraulics;

namespace {

constexpr UnitWeight weight = 0.4333 * units::psi / units::foot;

std::map<std::string, double> fluids_values() {
  std::map<std::string, double> values;
  const test::ReferenceTable table("hydraulics_fluids.csv");
  for (const auto& row : table.rows()) values[row.text("quantity")] = row.number("value");
  return values;
}

}  // namespace

TEST_CASE("Hazen-Williams against published losses") {
  const test::ReferenceTable table("hydraulics_hazen_williams.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Pressure loss = hazen_williams_loss(row.number("gpm") * units::gpm, row.number("bore_in") * units::inch,
                                              row.number("length_ft") * units::foot, row.number("c"));
    const double printed = row.text("unit") == "psi" ? loss / units::psi : head_of_pressure(loss, weight) / units::foot;
    CHECK(printed == Approx(row.number("loss")).epsilon(row.number("tolerance")));
  }
}

TEST_CASE("Hazen-Williams exponents") {
  const auto loss = [](double gpm, double bore_in, double c) {
    return hazen_williams_loss(gpm * units::gpm, bore_in * units::inch, 100 * units::foot, c);
  };
  // 2^1.852 and 2^4.8704, worked apart.
  CHECK(loss(20, 1, 130) / loss(10, 1, 130) == Approx(3.6100029).epsilon(1e-6));
  CHECK(loss(10, 1, 65) / loss(10, 1, 130) == Approx(3.6100029).epsilon(1e-6));
  CHECK(loss(10, 1, 130) / loss(10, 2, 130) == Approx(29.2507153).epsilon(1e-6));
}

TEST_CASE("both laws against a network solver") {
  const test::ReferenceTable table("hydraulics_epanet.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Flow flow = row.number("gpm") * units::gpm;
    const Length bore = row.number("bore_in") * units::inch;
    const Length length = row.number("length_ft") * units::foot;
    const Water water{weight, 1.1e-5 * (units::foot * units::foot / units::second)};
    const Velocity velocity = mean_velocity(flow, bore);
    const double wall = row.number("c_or_roughness_ft");
    const Pressure friction = row.text("law") == "HW"
                                  ? hazen_williams_loss(flow, bore, length, wall)
                                  : darcy_weisbach_loss(flow, bore, length, wall * units::foot, water);
    const Pressure loss = friction + minor_loss(row.number("k"), velocity, weight);
    CHECK(head_of_pressure(loss, weight) / units::foot == Approx(row.number("loss_ft")).epsilon(table.tolerance()));
    CHECK(velocity / units::ft_per_s == Approx(row.number("velocity_fps")).epsilon(1e-4));
  }
}

TEST_CASE("Darcy-Weisbach against an independent library") {
  auto expected = fluids_values();
  const double close = test::ReferenceTable("hydraulics_fluids.csv").tolerance();
  const Length bore = 25.273 * units::mm;
  const Flow flow = 1.2618 * units::liter_per_s;
  // 999 kg/m3 and 1.1e-3 Pa s.
  const Density density = 999.0 * (units::newton * units::second * units::second / (units::meter * units::m3));
  const Water water{density * units::standard_gravity, 1.1e-3 / 999.0 * (units::meter * units::meter / units::second)};
  const Velocity velocity = mean_velocity(flow, bore);
  const double reynolds = reynolds_number(velocity, bore, water.viscosity);
  const Length roughness = 0.0015 * units::mm;

  CHECK(velocity / units::m_per_s == Approx(expected["velocity_m_s"]).epsilon(close));
  CHECK(reynolds == Approx(expected["reynolds"]).epsilon(close));
  CHECK(colebrook_factor(expected["reynolds"], roughness / bore) == Approx(expected["colebrook"]).epsilon(1e-8));
  // The other library writes (6.97/Re)^0.9, which is 5.7398/Re^0.9.
  CHECK(swamee_jain_factor(expected["reynolds"], roughness / bore) == Approx(expected["swamee_jain"]).epsilon(1e-5));

  const Pressure pipe = darcy_weisbach_loss(flow, bore, 30.48 * units::meter, roughness, water);
  const Pressure fittings = minor_loss(6.5, velocity, water.weight);
  CHECK(pipe / units::psi == Approx(expected["pipe_loss_psi"]).epsilon(close));
  CHECK(fittings / units::psi == Approx(expected["k_6.5_loss_psi"]).epsilon(close));
  CHECK((pipe + fittings) / units::psi == Approx(expected["pipe_and_k_loss_psi"]).epsilon(close));
}

TEST_CASE("Colebrook satisfies its own equation over its whole range") {
  test::Draw draw(20240611);
  for (int i = 0; i < 2000; ++i) {
    const double reynolds = draw.logarithmic(2000, 1e8);
    const double roughness = draw.coin() ? draw.logarithmic(1e-7, 0.05) : 0.0;
    const double f = colebrook_factor(reynolds, roughness);
    INFO("Re " << reynolds << " e/d " << roughness << " f " << f);
    const double right = -2.0 * std::log10(roughness / 3.7 + 2.51 / (reynolds * std::sqrt(f)));
    CHECK(1.0 / std::sqrt(f) == Approx(right).epsilon(1e-11));
  }
}

TEST_CASE("Swamee-Jain stays within 3 % of Colebrook over its stated range") {
  test::Draw draw(7);
  for (int i = 0; i < 2000; ++i) {
    const double reynolds = draw.logarithmic(5000, 1e8);
    const double roughness = draw.logarithmic(1e-6, 0.05);
    INFO("Re " << reynolds << " e/d " << roughness);
    CHECK(swamee_jain_factor(reynolds, roughness) == Approx(colebrook_factor(reynolds, roughness)).epsilon(0.03));
  }
}

TEST_CASE("the friction factor is laminar, then joined without a step, then Colebrook") {
  CHECK(friction_factor(1000, 0.01) == 0.064);
  CHECK(friction_factor(2000, 0.01) == 0.032);
  for (const double roughness : {0.0, 1e-5, 0.001, 0.05}) {
    for (const double limit : {laminar_limit, turbulent_limit}) {
      const double below = friction_factor(limit * (1 - 1e-9), roughness);
      const double above = friction_factor(limit * (1 + 1e-9), roughness);
      CHECK(below == Approx(above).epsilon(1e-7));
    }
    // f Re^2 is what the loss follows: it never falls as the flow rises.
    double before = 0.0;
    for (double reynolds = 10; reynolds < 1e6; reynolds *= 1.01) {
      const double loss = friction_factor(reynolds, roughness) * reynolds * reynolds;
      CHECK(loss > before);
      before = loss;
    }
  }
  CHECK(friction_factor(1e5, 0.0) == colebrook_factor(1e5, 0.0));
}

TEST_CASE("laminar flow loses what Hagen and Poiseuille say") {
  const Water water{62.4 * units::lbf_per_ft3, 1.217e-5 * (units::foot * units::foot / units::second)};
  const Flow flow = 0.1 * units::gpm;
  const Length bore = 0.5 * units::inch;
  const Length length = 100 * units::foot;
  const Pressure loss = darcy_weisbach_loss(flow, bore, length, 0.0015 * units::mm, water);
  const double exact = 128.0 / 3.14159265358979 *
                       (water.viscosity * water.density() * length * flow / (bore * bore * bore * bore) / units::psi);
  CHECK(loss / units::psi == Approx(exact).epsilon(1e-9));
}

TEST_CASE("friction at no flow, and what it refuses") {
  const Length inch = units::inch;
  const Length foot = units::foot;
  const Water water{62.4 * units::lbf_per_ft3, 1.2e-5 * (foot * foot / units::second)};
  CHECK(hazen_williams_loss({}, inch, foot, 130) == Pressure{});
  CHECK(darcy_weisbach_loss({}, inch, foot, {}, water) == Pressure{});
  CHECK_THROWS_AS(hazen_williams_loss(units::gpm, {}, foot, 130), std::invalid_argument);
  CHECK_THROWS_AS(hazen_williams_loss(units::gpm, inch, foot, 0), std::invalid_argument);
  CHECK_THROWS_AS(hazen_williams_loss(-units::gpm, inch, foot, 130), std::invalid_argument);
  CHECK_THROWS_AS(darcy_weisbach_loss(units::gpm, inch, foot, -inch, water), std::invalid_argument);
  CHECK_THROWS_AS(darcy_weisbach_loss(units::gpm, inch, foot, {}, Water{water.weight, {}}), std::invalid_argument);
  CHECK_THROWS_AS(colebrook_factor(1000, 0), std::invalid_argument);
  CHECK_THROWS_AS(friction_factor(0, 0), std::invalid_argument);
}
