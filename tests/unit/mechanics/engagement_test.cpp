#include "mainbore/mechanics/engagement.hpp"

#include <algorithm>

#include "npt.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::mechanics;

namespace {

Barrel barrel(double outside_diameter, double wall) { return {outside_diameter * units::inch, wall * units::inch}; }

}  // namespace

TEST_CASE("threads in a curved wall, worked cases") {
  const test::ReferenceTable table("mechanics_curved_wall.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Barrel pipe = barrel(row.number("od"), row.number("wall"));
    const TaperThread thread = test::npt(row.text("tap"));
    const Engagement hole = engagement(pipe, thread);
    CHECK(hole.fit == HoleFit::complete_rings);
    CHECK(hole.drop / units::inch == Approx(row.number("drop")).margin(table.tolerance()));
    CHECK(hole.complete_ring_length / units::inch == Approx(row.number("ring_length")).margin(table.tolerance()));
    CHECK(hole.complete_threads == Approx(row.number("threads")).margin(0.0051));
    CHECK(hole.axial_along == pipe.wall);
    CHECK(hole.axial_transverse / units::inch == Approx(row.number("transverse")).margin(table.tolerance()));
    CHECK(hole.mean_axial / units::inch == Approx(row.number("mean")).margin(table.tolerance()));
    CHECK(taper_engagement(pipe, thread).complete_threads == Approx(row.number("threads_taper")).margin(0.0051));
  }
}

TEST_CASE("complete threads in ductile-iron class walls") {
  const test::ReferenceTable table("iron_threads_in_class_wall.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where() << " " << row.text("tap"));
    const Engagement hole = engagement(barrel(row.number("od"), row.number("wall")), test::npt(row.text("tap")));
    CHECK(hole.complete_threads == Approx(std::max(0.0, row.number("threads"))).margin(table.tolerance()));
    CHECK(hole.fit == (row.number("threads") > 0 ? HoleFit::complete_rings : HoleFit::no_complete_ring));
  }
}

TEST_CASE("wall needed for complete threads") {
  const test::ReferenceTable table("mechanics_wall_needed.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const auto wall = wall_needed(row.number("od") * units::inch, test::npt(row.text("tap")), row.number("threads"));
    REQUIRE(wall);
    CHECK(*wall / units::inch == Approx(row.number("wall")).margin(table.tolerance()));
  }
}

TEST_CASE("drop, and wall for two, three and four threads") {
  const test::ReferenceTable table("iron_wall_for_threads.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Length od = row.number("od") * units::inch;
    const TaperThread thread = test::npt(row.text("tap"));
    CHECK(*sagitta(od, thread.major) / units::inch == Approx(row.number("drop")).margin(table.tolerance()));
    CHECK(*wall_needed(od, thread, 2) / units::inch == Approx(row.number("t2")).margin(table.tolerance()));
    CHECK(*wall_needed(od, thread, 3) / units::inch == Approx(row.number("t3")).margin(table.tolerance()));
    CHECK(*wall_needed(od, thread, 4) / units::inch == Approx(row.number("t4")).margin(table.tolerance()));
  }
}

TEST_CASE("pit-cast and least walls, and cases at two threads where the radius assumed decides") {
  CHECK(engagement(barrel(7.10, 0.48), test::npt("1")).complete_threads == Approx(4.814).margin(0.0006));
  CHECK(engagement(barrel(7.10, 0.48), test::npt("3/4")).complete_threads == Approx(6.174).margin(0.0006));
  CHECK(engagement(barrel(6.90, 0.20), test::npt("3/4")).complete_threads == Approx(2.237).margin(0.0006));
  CHECK(engagement(barrel(6.90, 0.20), test::npt("1")).complete_threads == Approx(1.573).margin(0.0006));

  const TaperThread full = test::npt("1-1/4");
  CHECK(engagement(barrel(9.05, 0.25), full).complete_threads == Approx(1.992).margin(0.0006));
  const ThreadForm at_pitch{full.pitch_gauge, full.threads_per_inch, full.taper};
  CHECK(engagement(barrel(9.05, 0.25), at_pitch).complete_threads == Approx(2.072).margin(0.0006));
  CHECK(engagement(barrel(13.20, 0.28), test::npt("2")).complete_threads == Approx(1.981).margin(0.0006));
}

TEST_CASE("a steeper taper hardly moves the count") {
  ThreadForm thread{1.315 * units::inch, 11.5 * units::per_inch, 0.75 / 12};
  CHECK(taper_engagement(barrel(6.90, 0.25), thread).complete_ring_length / units::inch == Approx(0.1871).margin(6e-5));
  thread.taper = 1.75 / 12;
  CHECK(taper_engagement(barrel(6.90, 0.25), thread).complete_ring_length / units::inch == Approx(0.1876).margin(6e-5));
}

TEST_CASE("a hole that does not fit says how") {
  const auto n = 11.5 * units::per_inch;
  const auto hole = [&](double diameter) { return ThreadForm{diameter * units::inch, n, 1.0 / 16}; };
  const Barrel two_inch = barrel(2.5, 0.25);  // bore 2.0

  CHECK(engagement(two_inch, hole(0.6)).fit == HoleFit::complete_rings);
  CHECK(engagement(two_inch, hole(1.99)).fit == HoleFit::no_complete_ring);
  CHECK(engagement(two_inch, hole(2.0)).fit == HoleFit::wider_than_bore);
  CHECK(engagement(two_inch, hole(2.49)).fit == HoleFit::wider_than_bore);
  CHECK(engagement(two_inch, hole(2.5)).fit == HoleFit::wider_than_pipe);
  CHECK(engagement(two_inch, hole(9.0)).fit == HoleFit::wider_than_pipe);
  CHECK(engagement(two_inch, hole(0.0)).fit == HoleFit::undefined);
  CHECK(engagement(barrel(2.5, 1.25), hole(0.6)).fit == HoleFit::undefined);
  CHECK(engagement(barrel(2.5, 0.0), hole(0.6)).fit == HoleFit::undefined);

  // A very thick wall may close rings over a hole that never clears the bore.
  const Engagement thick = engagement(barrel(2.0, 0.5), hole(1.1));
  CHECK(thick.fit == HoleFit::wider_than_bore);
  CHECK(thick.complete_threads > 1.0);

  CHECK_FALSE(wall_needed(1.3 * units::inch, hole(1.315), 2));
  CHECK_FALSE(wall_needed(3.96 * units::inch, hole(1.315), 40));
  CHECK_FALSE(wall_needed(3.96 * units::inch, hole(1.315), -1));
  CHECK_FALSE(sagitta(2.0 * units::inch, 2.1 * units::inch));
  CHECK(*sagitta(2.0 * units::inch, 2.0 * units::inch) == 1.0 * units::inch);
}
