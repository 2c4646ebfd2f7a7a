#include "mainbore/mechanics/clamp.hpp"

#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::mechanics;

TEST_CASE("length of a chain round the pipe, worked cases") {
  const test::ReferenceTable table("mechanics_chain_path.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const auto path = chain_path(2.0 * row.number("radius") * units::inch, Length{},
                                 {row.number("offset") * units::inch, row.number("height") * units::inch});
    REQUIRE(path);
    CHECK(path->free_leg / units::inch == Approx(row.number("free_leg")).margin(table.tolerance()));
    CHECK(path->wrap.degrees() == Approx(row.number("wrap_deg")).margin(0.0006));
    CHECK(path->leg.degrees() == Approx(row.number("leg_deg")).margin(0.0051));
    CHECK(path->length / units::inch == Approx(row.number("length")).margin(table.tolerance()));
  }
}

TEST_CASE("the chain runs at its own mid thickness, and legs from anchors as wide as that are vertical") {
  const auto path = chain_path(6.9 * units::inch, 0.5 * units::inch, {3.7 * units::inch, 4.0 * units::inch});
  REQUIRE(path);
  CHECK(path->length / units::inch == Approx(8.0 + 3.7 * std::numbers::pi));
  CHECK(path->leg.degrees() == Approx(0.0).margin(1e-9));
}

TEST_CASE("anchors within the chain's circle, or a chain that misses the pipe, have no path") {
  const auto path = [](double offset, double height) {
    return chain_path(6.9 * units::inch, Length{}, {offset * units::inch, height * units::inch});
  };
  CHECK_FALSE(path(2.0, 2.0));
  CHECK_FALSE(path(3.45, 0.0));
  CHECK_FALSE(path(3.0, -9.0));  // hung below: the chain passes under the pipe
  CHECK_FALSE(path(-3.45, 4.0));
  CHECK_FALSE(path(std::numeric_limits<double>::quiet_NaN(), 4.0));
  CHECK_FALSE(chain_path(Length{}, Length{}, {units::inch, units::inch}));
}

TEST_CASE("what holds a sealed joint, by the pressure vessel code's own sum") {
  const test::ReferenceTable table("mechanics_gasket_hold.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    constexpr Force kgf = 9.80665 * units::newton;
    const Length gasket = row.number("gasket_mm") * units::mm;
    ClampLoad load;
    load.line = row.number("pressure_kgf_cm2") * (kgf / (100.0 * units::mm * units::mm));
    load.seal_diameter = gasket;
    CHECK(clamp_force_needed(load) / kgf == Approx(row.number("end_kgf")).epsilon(table.tolerance()));
    load.gasket_factor = row.number("factor");
    load.gasket_area = std::numbers::pi * gasket * (row.number("width_mm") * units::mm);
    CHECK(clamp_force_needed(load) / kgf == Approx(row.number("hold_kgf")).epsilon(table.tolerance()));
  }
}

TEST_CASE("torque on a stud for its tension, by a published chart") {
  const test::ReferenceTable table("mechanics_bolt_torque.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Length bolt = row.number("bolt_in") * units::inch;
    const Force clamp = row.number("clamp_lbf") * units::lbf;
    const StudTorque torque = stud_torque(clamp, bolt, {});
    CHECK(torque.usual / units::ft_lbf == Approx(row.number("torque_ft_lbf")).epsilon(table.tolerance()));
    const StudTension tension = stud_tension(row.number("torque_ft_lbf") * units::ft_lbf, bolt, {});
    CHECK(tension.usual / units::lbf == Approx(row.number("clamp_lbf")).epsilon(table.tolerance()));
  }
}

TEST_CASE("tension to hold and to seat") {
  ClampLoad load;
  load.line = 150.0 * units::psi;
  load.seal_diameter = 2.25 * units::inch;
  CHECK(clamp_force_needed(load) / units::lbf == Approx(596).margin(0.6));
  CHECK(*chain_tension_needed(load, Angle{}) / units::lbf == Approx(298).margin(0.6));

  load.thrust = 400.0 * units::lbf;
  load.gasket_factor = 0.5;
  load.gasket_area = 2.0 * units::in2;
  CHECK(clamp_force_needed(load) / units::lbf == Approx(596.4 + 400 + 150).margin(0.6));
  const Force tension = *chain_tension_needed(load, Angle::degrees(60));
  CHECK(tension / clamp_force_needed(load) == Approx(1.0));
  CHECK(clamp_force(tension, Angle::degrees(60)) / clamp_force_needed(load) == Approx(1.0));

  load.seating_stress = 1000.0 * units::psi;
  CHECK(clamp_force_needed(load) == 2000.0 * units::lbf);
  CHECK_FALSE(chain_tension_needed(load, Angle::degrees(90.5)));
  CHECK_FALSE(chain_tension_needed(load, Angle::degrees(-120)));
}

TEST_CASE("contact pressure and friction round the wrap") {
  CHECK(contact_pressure(1000.0 * units::lbf, 6.9 * units::inch, 1.5 * units::inch) / units::psi ==
        Approx(193.2).margin(0.06));
  CHECK(contact_pressure(500.0 * units::lbf, 4.8 * units::inch, 1.5 * units::inch) / units::psi ==
        Approx(138.9).margin(0.06));
  CHECK_THROWS_AS(contact_pressure(units::lbf, units::inch, Length{}), std::invalid_argument);
  CHECK(wrap_tension_ratio(0.2, Angle::degrees(180)) == Approx(std::exp(0.2 * std::numbers::pi)));
}

TEST_CASE("studs: tension from torque and back, over the band of friction") {
  const StudTension half = stud_tension(40.0 * units::ft_lbf, 0.5 * units::inch, {});
  CHECK(half.low / units::lbf == Approx(3200));
  CHECK(half.usual / units::lbf == Approx(4800));
  CHECK(half.high / units::lbf == Approx(9600));
  CHECK(stud_tension(75.0 * units::ft_lbf, 0.625 * units::inch, {}).usual / units::lbf == Approx(7200));
  CHECK(stud_tension(100.0 * units::ft_lbf, 0.75 * units::inch, {}).usual / units::lbf == Approx(8000));

  const StudTorque back = stud_torque(4800.0 * units::lbf, 0.5 * units::inch, {});
  CHECK(back.low / units::ft_lbf == Approx(20));
  CHECK(back.usual / units::ft_lbf == Approx(40));
  CHECK(back.high / units::ft_lbf == Approx(60));
  CHECK_THROWS_AS(stud_torque(units::lbf, Length{}, {}), std::invalid_argument);
  CHECK_THROWS_AS(stud_torque(units::lbf, units::inch, (NutFactors{0.3, 0.2, 0.1})), std::invalid_argument);
}

TEST_CASE("breaking load of roller chain") {
  const test::ReferenceTable table("mechanics_roller_chain.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const double load = roller_chain_breaking_load(row.number("pitch") * units::inch) / units::lbf;
    // The list rounds to 10 lbf and, for the two larger, 100.
    CHECK(load == Approx(row.number("breaking_load")).epsilon(0.001).margin(5.0));
  }
}

TEST_CASE("just over the lowest anchor there is a path, just under it none") {
  const Length od = 9.04 * units::inch;
  const Length link = 0.5 * units::inch;
  for (const double offset : {0.0, 1.0, 3.5, 4.7}) {
    INFO(offset);
    const Length out = offset * units::inch;
    const Length lowest = lowest_anchor(od, link, out);
    CHECK(chain_path(od, link, {out, lowest + 1e-6 * units::inch}));
    CHECK_FALSE(chain_path(od, link, {out, lowest - 1e-6 * units::inch}));
  }
  CHECK(lowest_anchor(od, link, 6.0 * units::inch) == Length());
  CHECK_THROWS_AS(lowest_anchor(Length(), link, link), std::invalid_argument);
}

TEST_CASE("stress of a stud") {
  CHECK(stud_stress(1000.0 * units::lbf, 2.0 * units::inch) / units::psi == Approx(318.31).margin(0.005));  // 1000/pi
  CHECK_THROWS_AS(stud_stress(units::lbf, Length()), std::invalid_argument);
}

TEST_CASE("ring stiffness of plastic pipe") {
  const test::ReferenceTable table("pvc_pipe_stiffness.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Barrel pipe{6.90 * units::inch, 6.90 * units::inch / row.number("dr")};
    const auto stiffness = [&](double modulus) { return ring_stiffness(pipe, modulus * units::psi) / units::psi; };
    if (row.has("published")) CHECK(stiffness(4e5) == Approx(row.number("published")).epsilon(0.003));
    if (row.has("pvc")) CHECK(stiffness(4e5) == Approx(row.number("pvc")).margin(table.tolerance()));
    if (row.has("pe_110k")) CHECK(stiffness(1.1e5) == Approx(row.number("pe_110k")).margin(table.tolerance()));
  }
}

TEST_CASE("ovality under a band load of 100 lbf per inch") {
  const test::ReferenceTable table("mechanics_ovality.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Length od = row.number("od") * units::inch;
    const Barrel pipe{od, od / row.number("dr")};
    const Pressure modulus = row.number("modulus") * units::psi;
    CHECK(ring_stiffness(pipe, modulus) / units::psi == Approx(row.number("stiffness")).margin(0.06));
    CHECK(100 * ovality(pipe, modulus, 200.0 * units::lbf, 2.0 * units::inch) ==
          Approx(row.number("ovality_percent")).margin(table.tolerance()));
  }
  CHECK_THROWS_AS(ovality({}, units::psi, units::lbf, units::inch), std::domain_error);
  CHECK_THROWS_AS(ovality({6.9 * units::inch, 0.4 * units::inch}, units::psi, units::lbf, Length{}),
                  std::invalid_argument);
}
