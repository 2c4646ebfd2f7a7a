#include <stdexcept>

#include "mainbore/excavation/tolerance_zone.hpp"
#include "mainbore/excavation/traffic_taper.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::excavation;

TEST_CASE("taper lengths of the traffic manual") {
  const test::ReferenceTable table("excavation_tapers.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const auto length = [&](TaperKind kind) {
      return taper_length(kind, row.number("width_ft") * units::foot, row.number("mph") * units::mph) / units::foot;
    };
    CHECK(length(TaperKind::merging) == Approx(row.number("merging_ft")).margin(table.tolerance()));
    CHECK(length(TaperKind::shifting) == Approx(row.number("shifting_ft")).margin(table.tolerance()));
    CHECK(length(TaperKind::shoulder) == Approx(row.number("shoulder_ft")).margin(table.tolerance()));
  }
}

TEST_CASE("between 40 and 45 mph the longer taper is taken") {
  const auto merging = [](Velocity speed) {
    return taper_length(TaperKind::merging, 12 * units::foot, speed) / units::foot;
  };
  CHECK(merging(40 * units::mph) == Approx(320));
  CHECK(merging(42 * units::mph) == Approx(504));
  CHECK(merging(64.37376 / 3.6 * units::m_per_s) == Approx(320));  // 40 mph in km/h
  CHECK_THROWS_AS(merging(-units::mph), std::invalid_argument);
}

TEST_CASE("tolerance zones") {
  const Length od = 9.05 * units::inch;
  CHECK(tolerance_zone_width(od, 18 * units::inch) / units::inch == Approx(45.05));
  CHECK(tolerance_zone_width(24 * units::inch, 24 * units::inch) == 72 * units::inch);
  CHECK(inside_tolerance_zone(-36 * units::inch, 24 * units::inch, 24 * units::inch));
  CHECK_FALSE(inside_tolerance_zone(36.1 * units::inch, 24 * units::inch, 24 * units::inch));
}
