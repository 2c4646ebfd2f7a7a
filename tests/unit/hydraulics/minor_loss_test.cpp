#include "mainbore/hydraulics/minor_loss.hpp"

#include <array>
#include <stdexcept>

#include "support/approx.hpp"
#include "support/catch.hpp"
#include "unit/hydraulics/tables.hpp"

using namespace mainbore;
using namespace mainbore::hydraulics;

TEST_CASE("loss coefficients against an independent library") {
  const test::ReferenceTable table("hydraulics_fluids.csv");
  const Length small = 0.75 * units::inch;
  const Length large = 1.0 * units::inch;
  int checked = 0;
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const std::string& quantity = row.text("quantity");
    double value = 0.0;
    if (quantity == "contraction_0.75_to_1") {
      value = sudden_contraction_coefficient(small, large);
    } else if (quantity == "expansion_0.75_to_1") {
      value = sudden_expansion_coefficient(small, large);
    } else if (quantity == "cv_20_in_1_in_k") {
      value = measured_loss_coefficient(20 * units::gpm, units::psi, large, 62.37 * units::lbf_per_ft3);
    } else {
      continue;
    }
    ++checked;
    // The other library's flow coefficient rests on a rounded density; 0.1 % covers it.
    CHECK(value == Approx(row.number("value")).epsilon(quantity.starts_with("cv") ? 1e-3 : 1e-12));
  }
  CHECK(checked == 3);
}

TEST_CASE("a corporation stop worth 9 ft of one-inch pipe is a K of about 2.2") {
  const double k = loss_coefficient(9 * units::foot, 0.0205, 0.995 * units::inch);
  CHECK(k == Approx(2.2).epsilon(0.02));
  CHECK(equivalent_length(k, 0.0205, 0.995 * units::inch) / units::foot == Approx(9.0));
}

TEST_CASE("no change of bore loses nothing, and a wrong order is refused") {
  CHECK(sudden_contraction_coefficient(units::inch, units::inch) == 0.0);
  CHECK(sudden_expansion_coefficient(units::inch, units::inch) == 0.0);
  CHECK_THROWS_AS(sudden_contraction_coefficient(2 * units::inch, units::inch), std::invalid_argument);
  CHECK_THROWS_AS(sudden_expansion_coefficient({}, units::inch), std::invalid_argument);
}

TEST_CASE("meter losses at and between the rows") {
  const test::ReferenceTable table("hydraulics_meter_losses.csv");
  for (const char* size : {"5/8", "3/4", "1", "1-1/2", "2", "3", "4"}) {
    const auto points = test::meter_table(size);
    const Meter meter{points, points.back().flow};
    for (const auto& point : points) CHECK(meter_loss(meter, point.flow).loss == point.loss);
    CHECK_FALSE(meter_loss(meter, points.back().flow).over_safe_maximum);
    CHECK(meter_loss(meter, points.back().flow * 1.01).over_safe_maximum);
    CHECK(meter_loss(meter, {}).loss == Pressure{});
    CHECK(meter_loss(meter, points.back().flow * 2.0).loss / points.back().loss == Approx(4.0));

    Pressure before;
    for (double share = 0.001; share < 1.5; share += 0.001) {
      const Pressure loss = meter_loss(meter, share * points.back().flow).loss;
      CHECK(loss >= before);
      // The table itself has a square law in the upper half of each column.
      if (share > 0.6 && share < 1.0) {
        CHECK(loss / points.back().loss == Approx(share * share).epsilon(table.tolerance() + 0.02));
      }
      before = loss;
    }
  }
  // 35 gpm lies between 2.4 psi at 34 and 2.7 at 36.
  const auto points = test::meter_table("1-1/2");
  CHECK(meter_loss({points, 100 * units::gpm}, 35 * units::gpm).loss / units::psi == Approx(2.55));
  CHECK(meter_loss({points, 100 * units::gpm}, 8 * units::gpm).loss / units::psi == Approx(0.2));
}

TEST_CASE("safe maximum capacities are those of the meter standard") {
  CHECK(test::meter_table("5/8").back().flow == 20 * units::gpm);
  CHECK(test::meter_table("3/4").back().flow == 30 * units::gpm);
  CHECK(test::meter_table("1").back().flow == 50 * units::gpm);
  CHECK(test::meter_table("1-1/2").back().flow == 100 * units::gpm);
  CHECK(test::meter_table("2").back().flow == 160 * units::gpm);
}

TEST_CASE("a meter table that is out of order is refused") {
  const std::array falling{MeterPoint{1 * units::gpm, 2 * units::psi}, MeterPoint{2 * units::gpm, 1 * units::psi}};
  const std::array repeated{MeterPoint{1 * units::gpm, 1 * units::psi}, MeterPoint{1 * units::gpm, 2 * units::psi}};
  CHECK_THROWS_AS(meter_loss({falling, units::gpm}, units::gpm), std::invalid_argument);
  CHECK_THROWS_AS(meter_loss({repeated, units::gpm}, units::gpm), std::invalid_argument);
  CHECK_THROWS_AS(meter_loss({{}, units::gpm}, units::gpm), std::invalid_argument);
  CHECK_THROWS_AS(meter_loss({repeated, units::gpm}, -units::gpm), std::invalid_argument);
}
