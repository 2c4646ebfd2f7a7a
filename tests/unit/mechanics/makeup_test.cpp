#include "mainbore/mechanics/makeup.hpp"

#include <stdexcept>

#include "npt.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::mechanics;

TEST_CASE("where to stop the tap, worked cases") {
  const test::ReferenceTable table("mechanics_makeup.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const TaperThread thread = test::npt(row.text("size"));
    const Makeup plan = makeup(thread, {row.number("wrench_turns"), row.number("showing")});
    CHECK(plan.stop_past_gauge / units::inch == Approx(row.number("delta")).margin(table.tolerance()));
    CHECK(plan.turns_past_gauge == Approx(row.number("turns")).margin(0.0051));
    CHECK(threads_showing(thread, plan.stop_past_gauge, row.number("wrench_turns")) ==
          Approx(row.number("showing")).margin(1e-9));

    const Length at_gauge = thread.gauge_length + 2.0 * thread.pitch();
    CHECK(protrusion(at_gauge, 0.25 * units::inch) / units::inch ==
          Approx(row.number("protrusion_standard_hole")).margin(0.0006));
  }
}

TEST_CASE("threads left showing by a hole tapped to gauge") {
  const test::ReferenceTable table("mechanics_threads_showing.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const TaperThread thread = test::npt(row.text("size"));
    CHECK(threads_showing(thread, Length{}, row.number("wrench_turns")) ==
          Approx(row.number("showing")).margin(table.tolerance()));
  }
}

TEST_CASE("3/4 NPT, two turns of the wrench and two threads showing") {
  const TaperThread thread = test::npt("3/4");
  const Makeup plan = makeup(thread, {2.0, 2.0});
  CHECK(plan.hand_tight_length / units::inch == Approx(0.2600).margin(0.00006));
  CHECK(plan.hand_tight_turns == Approx(0.2600 * 14).margin(0.001));
  CHECK(plan.engaged_length / units::inch == Approx(0.2600 + 2.0 / 14).margin(0.00006));
  CHECK(hand_tight_length(thread, plan.stop_past_gauge) / units::inch == Approx(0.2600).margin(0.00006));
  CHECK(tap_tip_depth(thread, 0.565 * units::inch, plan.stop_past_gauge) / units::inch == Approx(0.825).margin(0.0006));
  CHECK(makeup(thread, {3.0, 0.0}).interference / units::inch == Approx(0.0134).margin(0.00006));
}

TEST_CASE("the tool and the far wall") {
  // A 1 in tap at gauge stands 1.078 in deep, and a drill may stand further ahead of it.
  const Barrel four_inch{4.80 * units::inch, 0.25 * units::inch};
  CHECK(tool_clearance(four_inch, Length{}, 1.078 * units::inch) / units::inch == Approx(3.472));
  CHECK(tool_clearance(four_inch, 0.0625 * units::inch, 1.078 * units::inch) / units::inch == Approx(3.4095));
  CHECK(tool_clearance(four_inch, Length{}, 4.6 * units::inch) < Length{});
}

TEST_CASE("make-up of nothing is refused") {
  CHECK_THROWS_AS(makeup(TaperThread{}, MakeupGoal{}), std::invalid_argument);
  CHECK_THROWS_AS(makeup(test::npt("1"), (MakeupGoal{-1.0, 2.0})), std::invalid_argument);
  CHECK_THROWS_AS(threads_showing(TaperThread{}, Length{}, 1.0), std::invalid_argument);
}
