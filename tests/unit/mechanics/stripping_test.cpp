#include "mainbore/mechanics/stripping.hpp"

#include <stdexcept>

#include "npt.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::mechanics;

TEST_CASE("tensile stress areas, by a published table") {
  const test::ReferenceTable table("mechanics_tensile_area.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Area area =
        tensile_stress_area(row.number("bolt_in") * units::inch, row.number("threads_per_inch") * units::per_inch);
    CHECK(area / units::in2 == Approx(row.number("area_in2")).margin(table.tolerance()));
  }
}

TEST_CASE("shear and tensile areas of a 1/2-13 thread, worked apart from the program") {
  const ThreadLimits limits{13.0 * units::per_inch, 0.4876 * units::inch, 0.4435 * units::inch, 0.4565 * units::inch,
                            0.4340 * units::inch};
  const ShearAreas areas = shear_areas(limits, 0.5 * units::inch);
  CHECK(areas.external / units::in2 == Approx(0.3895).margin(0.0001));
  CHECK(areas.internal / units::in2 == Approx(0.5617).margin(0.0001));
  CHECK(tensile_stress_area(0.5 * units::inch, 13.0 * units::per_inch) / units::in2 == Approx(0.1419).margin(0.0001));
}

TEST_CASE("taper thread areas, end load and stripping load, worked apart from the program") {
  const TaperThread three_quarter = test::npt("3/4");
  const ShearAreas areas = taper_shear_areas(three_quarter, 0.2098 * units::inch);
  CHECK(areas.external / units::in2 == Approx(0.5907).margin(0.0002));
  CHECK(areas.internal / units::in2 == Approx(0.6632).margin(0.0002));
  CHECK(pressure_end_load(three_quarter, 90.0 * units::psi) / units::lbf == Approx(77.3).margin(0.06));
  CHECK(pressure_end_load(three_quarter, 250.0 * units::psi) / units::lbf == Approx(214.8).margin(0.06));
  CHECK(pressure_end_load(test::npt("1"), 250.0 * units::psi) / units::lbf == Approx(336.0).margin(0.06));

  const ShearStrengths brass_in_gray_iron{26e3 * units::psi, 25e3 * units::psi};
  CHECK(stripping_load(areas, brass_in_gray_iron, 1.0) / units::lbf == Approx(14767).epsilon(0.001));
  CHECK(stripping_load(areas, brass_in_gray_iron, 0.5) / units::lbf == Approx(7384).epsilon(0.001));
  const ShearStrengths brass_in_pvc{4040.0 * units::psi, 25e3 * units::psi};
  CHECK(stripping_load(areas, brass_in_pvc, 1.0) / units::lbf == Approx(2679).epsilon(0.001));
}

TEST_CASE("no length, no area") {
  const ShearAreas none = taper_shear_areas(test::npt("1"), -1.0 * units::inch);
  CHECK(none.external == Area{});
  CHECK(none.internal == Area{});
  CHECK_THROWS_AS(taper_shear_areas(TaperThread{}, units::inch), std::invalid_argument);
  CHECK_THROWS_AS(shear_areas(ThreadLimits{}, units::inch), std::invalid_argument);
}
