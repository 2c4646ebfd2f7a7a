#include "mainbore/mechanics/boring.hpp"

#include <cmath>
#include <stdexcept>
#include <string>

#include "npt.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::mechanics;

namespace {

const Pressure kNewtonPerMm2 = units::newton / (units::mm * units::mm);

}  // namespace

TEST_CASE("push of the line on a bar") {
  const test::ReferenceTable table("mechanics_bar_push.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    CHECK(bar_push(row.number("pressure") * units::psi, row.number("bar") * units::inch) / units::lbf ==
          Approx(row.number("push")).margin(table.tolerance()));
  }
}

TEST_CASE("drill point") {
  const auto point = [](double angle) { return drill_point_length(units::inch, Angle::degrees(angle)) / units::inch; };
  CHECK(point(90) == Approx(0.5000).margin(0.00006));
  CHECK(point(118) == Approx(0.3004).margin(0.00006));
  CHECK(point(135) == Approx(0.2071).margin(0.00006));
  CHECK(point(140) == Approx(0.1820).margin(0.00006));
  CHECK(point(180) == Approx(0.0).margin(1e-12));
  CHECK_THROWS_AS(point(0), std::domain_error);
  CHECK_THROWS_AS(point(181), std::domain_error);
}

TEST_CASE("stroke of a drill through 6 in ductile iron") {
  const Barrel six_inch{6.90 * units::inch, 0.25 * units::inch};
  const auto stroke = [&](double diameter, double clearance) {
    return *drill_stroke(six_inch, diameter * units::inch, Angle::degrees(118), clearance * units::inch) / units::inch;
  };
  CHECK(stroke(45.0 / 64, 0) == Approx(0.481).margin(0.0006));
  CHECK(stroke(29.0 / 32, 0) == Approx(0.555).margin(0.0006));
  CHECK(stroke(1 + 9.0 / 64, 0) == Approx(0.644).margin(0.0006));
  CHECK(stroke(29.0 / 32, 0.05) == Approx(0.605).margin(0.0006));
  CHECK_FALSE(drill_stroke(six_inch, 6.5 * units::inch, Angle::degrees(118), Length{}));
  CHECK_FALSE(drill_stroke({}, units::inch, Angle::degrees(118), Length{}));

  CHECK(bar_travel(2.0 * units::inch, 0.6 * units::inch, 1.1 * units::inch) == 3.1 * units::inch);
  CHECK(bar_travel(2.0 * units::inch, 1.5 * units::inch, 1.1 * units::inch) == 3.5 * units::inch);
}

TEST_CASE("drilling factors of the handbook are powers of diameter and feed") {
  const test::ReferenceTable table("mechanics_drill_factors.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const double d = row.number("diameter");
    const double f = row.number("feed");
    // With no chisel edge and all factors one, thrust is 2 Ff FT and torque Ff FM.
    const DrillLoad load = handbook_drill_load({d * units::inch, f * units::inch}, 1.0, 1.0, {1.0, 1.0, 0.0});
    CHECK(std::pow(f, 0.8) == Approx(row.number("Ff")).margin(table.tolerance()));
    CHECK(load.thrust / units::lbf / 2 / std::pow(f, 0.8) == Approx(row.number("FT")).margin(table.tolerance()));
    CHECK(load.torque / units::in_lbf / std::pow(f, 0.8) == Approx(row.number("FM")).margin(table.tolerance()));
  }
}

TEST_CASE("thrust and torque of drilling iron, by both methods") {
  const test::ReferenceTable table("mechanics_drilling.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const DrillCut cut{row.number("diameter") * units::inch, row.number("feed") * units::inch};
    const auto check = [&](const DrillLoad& load, const std::string& columns, double relative) {
      if (!row.has(columns + "_thrust")) return;
      CHECK(load.thrust / units::lbf == Approx(row.number(columns + "_thrust")).epsilon(relative).margin(0.6));
      CHECK(load.torque / units::ft_lbf == Approx(row.number(columns + "_torque")).epsilon(relative).margin(0.06));
    };
    check(cast_iron_drill_load(cut, 1.00), "k100", 0.0);
    check(cast_iron_drill_load(cut, 1.39), "k139", 0.0);
    check(cast_iron_drill_load(cut, 1.88), "k188", 0.0);
    // Worked with the table's feed factor, of two figures.
    check(handbook_drill_load(cut, 14000, 1.0, standard_point), "hb", 0.04);
  }
}

TEST_CASE("a 7/8 drill at 0.005 in, and the range of the two methods") {
  const DrillCut cut{22.225 * units::mm, 0.127 * units::mm};
  const DrillLoad iron = cast_iron_drill_load(cut, 1.0);
  CHECK(iron.thrust / units::newton == Approx(2192.6).margin(0.06));
  CHECK(iron.torque / units::newton_meter == Approx(13.68).margin(0.006));

  // The printed feed factor, 0.014, is 3 % under 0.005^0.8.
  const DrillLoad handbook = handbook_drill_load(cut, 14000, 1.0, standard_point);
  CHECK(handbook.thrust / units::lbf == Approx(799).epsilon(0.035));
  CHECK(handbook.torque / units::in_lbf == Approx(167).epsilon(0.035));
  // Steel of 200 HB, feed 0.008, wear 1.30: worked apart from the program with the printed factors.
  const DrillLoad steel = handbook_drill_load({0.875 * units::inch, 0.008 * units::inch}, 24000, 1.30, standard_point);
  CHECK(steel.thrust / units::lbf == Approx(2313).epsilon(0.02));
  CHECK(steel.torque / units::in_lbf == Approx(559).epsilon(0.02));

  const DrillLoadRange range = drill_load_range(handbook, iron);
  CHECK(range.low.thrust == iron.thrust);
  CHECK(range.high.thrust == handbook.thrust);
  CHECK(range.low.torque == iron.torque);
  CHECK(range.high.torque == handbook.torque);
  CHECK(handbook_drill_load(cut, 14000, 1.0, split_point).thrust < handbook.thrust);

  CHECK_THROWS_AS(cast_iron_drill_load(DrillCut{}, 1.0), std::invalid_argument);
  CHECK_THROWS_AS(handbook_drill_load(cut, 0.0, 1.0, standard_point), std::invalid_argument);
}

TEST_CASE("tapping torque in gray iron") {
  const test::ReferenceTable table("mechanics_tapping_torque.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const TaperThread thread = test::npt(row.text("size"));
    const TorqueRange range = tapping_torque_range(thread, row.number("drill") * units::inch, 1250.0 * kNewtonPerMm2,
                                                   2900.0 * kNewtonPerMm2, 1.25);
    CHECK(range.low / units::newton_meter == Approx(row.number("simple")).margin(table.tolerance()));
    CHECK(range.high / units::newton_meter == Approx(row.number("full")).margin(table.tolerance()));
  }
  CHECK(full_tapping_torque(2900.0 * kNewtonPerMm2, 1.25, test::npt("1"), 2.0 * units::inch) == Torque{});
}
