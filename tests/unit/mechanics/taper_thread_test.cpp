#include "mainbore/mechanics/taper_thread.hpp"

#include <limits>
#include <stdexcept>

#include "npt.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::mechanics;

TEST_CASE("the NPT formulas give the standard's table") {
  const test::ReferenceTable table("npt_dimensions.csv");
  REQUIRE(table.rows().size() == 13);
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const TaperThread thread = test::npt(row.text("size"));
    CHECK(thread.pitch_small_end / units::inch == Approx(row.number("E0")).margin(0.000011));
    CHECK(thread.pitch_gauge / units::inch == Approx(row.number("E1")).margin(0.000011));
    CHECK(thread.effective_length / units::inch == Approx(row.number("L2")).margin(table.tolerance()));
    CHECK(thread.vanish_length / units::inch == Approx(row.number("V")).margin(table.tolerance()));
    CHECK(thread.minor_small_end() / units::inch == Approx(row.number("K0")).margin(table.tolerance()));
  }
}

TEST_CASE("the largest diameter at gauge is a little under the pipe's") {
  CHECK(test::npt("3/4").major_at_gauge() / units::inch == Approx(1.0460).margin(0.0001));
  CHECK(test::npt("2").major_at_gauge() / units::inch == Approx(2.3658).margin(0.0001));
}

TEST_CASE("a tap at gauge reaches its projection past the gauge length") {
  const test::ReferenceTable table("npt_tap_projection.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Length depth = tap_tip_depth_at_gauge(test::npt(row.text("size")), row.number("projection") * units::inch);
    CHECK(depth / units::inch == Approx(row.number("tip_depth")).margin(table.tolerance()));
  }
}

TEST_CASE("ISO 7-1 pitch diameter, and gauge length in turns") {
  const TaperThread r = iso7_thread(26.441 * units::mm, 14.0 * units::per_inch, 9.5 * units::mm, 14.5 * units::mm);
  CHECK(r.pitch_gauge / units::mm == Approx(25.279).margin(0.0006));
  CHECK(r.thread_height / units::mm == Approx(1.162).margin(0.0006));
  CHECK(r.gauge_length / r.pitch() == Approx(5.24).margin(0.006));
  CHECK(r.major_at_gauge() / units::mm == Approx(26.441));
  CHECK(r.pitch_small_end / units::mm == Approx(25.279 - 9.5 / 16).margin(0.0006));
  CHECK(r.flank_tangent == Approx(0.52057).margin(0.00001));
}

TEST_CASE("a thread of no size is refused") {
  const Length inch = units::inch;
  const Length huge = std::numeric_limits<double>::infinity() * units::inch;
  CHECK_THROWS_AS(npt_thread(Length{}, 14.0 * units::per_inch, inch), std::invalid_argument);
  CHECK_THROWS_AS(npt_thread(inch, InverseLength{}, inch), std::invalid_argument);
  CHECK_THROWS_AS(npt_thread(huge, 14.0 * units::per_inch, inch), std::invalid_argument);
  CHECK_THROWS_AS(iso7_thread(inch, 14.0 * units::per_inch, -inch, inch), std::invalid_argument);
}
