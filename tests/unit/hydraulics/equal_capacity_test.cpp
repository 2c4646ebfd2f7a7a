#include "mainbore/hydraulics/equal_capacity.hpp"

#include <stdexcept>
#include <string>

#include "mainbore/nominal_size.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "unit/hydraulics/tables.hpp"

using namespace mainbore;
using namespace mainbore::hydraulics;

TEST_CASE("the published equation of pipes to the printed digit") {
  const test::ReferenceTable table("hydraulics_equation_of_pipes.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const double n = equal_capacity(row.number("large_in") / row.number("small_in"), 2.65);
    CHECK(n == Approx(row.number("n")).margin(table.tolerance() * test::last_digit(row.text("n"))));
  }
}

TEST_CASE("each exponent, and the taps it takes") {
  const test::ReferenceTable table("hydraulics_equal_taps.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const double ratio = row.number("large") / row.number("small");
    for (const std::string exponent : {"2.0", "2.5", "2.63", "2.65"}) {
      CHECK(equal_capacity(ratio, std::stod(exponent)) ==
            Approx(row.number("n_e" + exponent)).margin(table.tolerance()));
    }
    CHECK(taps_needed(equal_capacity(ratio, 2.65)) == static_cast<int>(row.number("taps_at_2.65")));
  }
}

TEST_CASE("taps are rounded up, but not for the last bits of a computation") {
  CHECK(taps_needed(4.0) == 4);
  CHECK(taps_needed(4.0000001) == 4);
  CHECK(taps_needed(3.9999999) == 4);
  CHECK(taps_needed(4.00001) == 5);
  CHECK(taps_needed(6.28) == 7);
  CHECK(taps_needed(0.3) == 1);
  CHECK(taps_needed(equal_capacity(NominalSize::inches(1.5).number() / NominalSize::inches(0.75).number(), 2.0)) == 4);
  CHECK_THROWS_AS(taps_needed(0.0), std::invalid_argument);
  CHECK_THROWS_AS(taps_needed(2e6), std::invalid_argument);
  CHECK_THROWS_AS(equal_capacity(0.0, 2.0), std::invalid_argument);
  CHECK_THROWS_AS(equal_capacity(2.0, 0.0), std::invalid_argument);
}

TEST_CASE("room on the barrel for a row of taps") {
  CHECK(barrel_needed(4, 18 * units::inch, 24 * units::inch) == 102 * units::inch);
  CHECK(barrel_needed(4, 24 * units::inch, 12 * units::inch) == 96 * units::inch);
  CHECK(barrel_needed(1, 18 * units::inch, 24 * units::inch) == 48 * units::inch);
  CHECK_THROWS_AS(barrel_needed(0, 18 * units::inch, 24 * units::inch), std::invalid_argument);
}
